// Package geom is plane geometry in float64 millimetres: points, straight and
// circular edges, paths, polygons. Nothing in here knows what a stair is.
//
// Angles are radians, counter-clockwise from +x, y up.
package geom
