// Package stringer lays one stringer out on its blank: outline, marks, throat,
// where the saw stops. It takes plain numbers and knows no job files.
//
// Everything is float64 millimetres unless said otherwise. Two frames are used:
//
//   - elevation: x along the run toward the upper floor, y up, origin where the
//     lower finished floor meets the plumb line of the first riser cut;
//   - blank: s along the board's top edge from the foot end, q square in from
//     that edge. s = 0 is the least s of the outline as first cut, so that every
//     mark can be taped from the squared end of the board.
package stringer
