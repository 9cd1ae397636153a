package layout

// Frame is the framing of a landing.
type Frame struct{}
