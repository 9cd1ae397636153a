// Package layout turns a Job into a Stairway: every level, rise and run, every
// stringer on its blank, every board. It knows nothing of paper or files.
//
// Lengths that the job states stay exact (measure.Length); everything computed
// is float64 millimetres, straight from the exact ones, never from a rounded
// one. Levels are heights above the lower finished floor.
package layout
