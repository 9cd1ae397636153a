// Package strength works out what stringers and treads carry. It takes plain
// values and knows no job files and no codes.
//
// Units: millimetres, newtons, N/mm2 (MPa), N/mm for loads along a member. Loads
// are per length of the horizontal projection, since that is what codes load a
// stair by; lengths of spans are level. The slope of a member is an angle in
// radians above level.
//
// A sawn stringer is a beam of its net section: its thickness by its throat, the
// teeth ignored. That is no notched member by the NDS, which allows no such
// notches (4.4.3); it is what DCA 6 reckons with too.
package strength
