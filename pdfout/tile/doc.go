// Package tile finds which part of a drawing falls on which sheet: the fewest
// windows of a sheet's size, on a grid, that together show everything that
// must be cut or marked.
//
// It moves windows over the drawing and nothing else. A scale cannot be
// expressed here.
package tile
