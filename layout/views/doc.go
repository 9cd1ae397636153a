// Package views draws a stairway laid out: the stringer on its blank, the pitch
// board, the story pole, the side elevation. A view is a drawing on no device;
// which of them go on paper, and how, is decided above.
package views
