// Package stock lays parts on the lengths that boards are sold in: which boards
// to pull, and which part is cut from which. It knows nothing of stairs.
//
// Lengths are exact (measure.Length), and so is every comparison that decides
// whether a part fits or a plan is the best there is. Where the search uses
// floating point, it only proposes: what it proposes is checked in whole
// numbers. The work is bounded by counting steps, never by a clock, so that the
// same order gives the same plan everywhere.
//
// The method: patterns (ways to fill one board) are made as they are needed
// and weighed against each other by linear programming, whose prices on the
// parts give a lower bound on the cost of any plan; the weights are rounded to
// whole boards in several ways, and a bounded search tries to close what gap is
// left. The idea is that of Gilmore and Gomory (A Linear Programming Approach
// to the Cutting-Stock Problem, Operations Research 9, 1961); the bound for
// prices that are not quite settled is Farley's (A Note on Bounding a Class of
// Linear Programming Problems, Operations Research 38, 1990). Both are named
// from memory.
package stock
