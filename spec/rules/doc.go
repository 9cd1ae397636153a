// Package rules holds the limits of building codes as data, one file a code,
// and the rules a stair is judged by.
//
// A limit is a number with the section it stands in, how it is measured, and
// how it came to be known: its text was read, it was seen in a secondary
// source, or it is from memory and is to be verified. A rule is what is checked
// with one or more limits; its id names a finding. What is done with a limit is
// for others: nothing is judged here.
//
// A code may build on another and change values, and a user's own file may
// start from any of them.
package rules
