// Package booklet sets lessons and exercises as pages: which drawings and texts a
// booklet holds, in what order. The pages go to paper, or to one HTML file.
package booklet
