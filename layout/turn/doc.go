// Package turn is the plan geometry of what stands between flights: where a
// landing lies, where the next flight begins and which way it heads; tapered
// treads, their depths, their boards and what they are framed with. It takes
// plain values: millimetres in the plan frame, x and y in the floor plane,
// headings in degrees counter-clockwise from +x.
//
// CurveSteps frames a curved flight: Framing gives plates, studs and bearers of
// its walls, Strings its strings unrolled, and Bend how one is laminated. Pieces
// are placed in plan on the Laid of the same curve.
package turn
