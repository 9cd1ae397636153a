// Package spec turns a job file into a Job: what was measured on site and what
// was chosen, every length exact, every default filled in. Every mistake in the
// file is reported at once, each with its place and a right spelling.
package spec
