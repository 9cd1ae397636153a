// Package views draws a stairway laid out: the stringer on its blank, the pitch
// board, the story pole, a flight from the side; the whole stairway in plan,
// unfolded and as an isometric picture; the framing of a landing; and a stair as
// it was measured. A view is a drawing on no device; which of them go on paper,
// and how, is decided above.
package views
