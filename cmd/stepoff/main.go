// Command stepoff lays out stairs from a handful of measurements and prints
// full-size paper templates for their stringers. Nothing is computed here:
// this package reads options and files, hands them to layout and pdfout, and
// writes what comes back.
package main

import "os"

func main() {
	std := streams{in: os.Stdin, out: os.Stdout, err: os.Stderr}
	os.Exit(run(os.Args, std))
}
