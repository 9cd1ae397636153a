// Package asbuilt judges a stair that stands, as measured, and finds the least
// work that puts it right: pads on its treads, as thin as they can be, or why no
// pads will do.
package asbuilt
