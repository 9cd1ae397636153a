// Package measure holds exact lengths: reading every spelling a carpenter
// writes, printing to the fraction a tape shows, and saying when the printed
// figure is not the whole truth.
package measure
