// Package source reads texts that people write, keeping every value's place:
// job files, code files, measured stairs. What is wrong is collected as
// Mistakes, all of one file at once, each with file, line and column, what is
// wrong and what would be right, the line itself and a caret.
//
// It knows YAML, tables as CSV and plain text, and nothing of what the values mean.
package source
