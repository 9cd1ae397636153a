package main

import (
	"embed"
	"fmt"
	"os"
	"slices"
	"strings"

	"github.com/urfave/cli/v2"
)

// A shape is a job file that runs as it is, every line explained.
//
//go:embed shapes/*.yaml
var shapeFiles embed.FS

var shapes = []string{"straight", "landing-l", "landing-u", "landing-double", "winder-l", "curved"}

func newCommand(std streams) *cli.Command {
	return &cli.Command{
		Name:      "new",
		Usage:     "write a commented job file to begin from",
		ArgsUsage: "--shape SHAPE -o JOB",
		Flags: []cli.Flag{
			&cli.StringFlag{Name: "shape", Usage: "the stairway's `SHAPE`: " + strings.Join(shapes, ", ")},
			outputOption("JOB"),
			quietOption(),
		},
		Action: func(c *cli.Context) error { return runNew(std, &line{Context: c}) },
	}
}

func runNew(std streams, l *line) error {
	l.noNames()
	shape := l.shape()
	output := l.output()
	if err := l.err(); err != nil {
		return err
	}
	if old, err := os.Stat(output); output != "-" && err == nil && old.Mode().IsRegular() {
		return cannotWrite(output, reason("it exists, and may hold somebody's measurements"), "give -o another name, or remove it first")
	}
	text, err := shapeFiles.ReadFile("shapes/" + shape + ".yaml")
	if err != nil {
		return cannotRead("the shape "+shape, err)
	}
	if err := write(std, output, text); err != nil {
		return err
	}
	if output != "-" {
		std.note(l, "wrote %s: put your own measurements in, then stepoff layout %[1]s", output)
	}
	return nil
}

// shape is the shape --shape names.
func (l *line) shape() string {
	name := l.String("shape")
	known := "the shapes are " + strings.Join(shapes, ", ")
	switch {
	case slices.Contains(shapes, name):
	case name == "":
		l.mistake("--shape is missing", known)
	default:
		l.mistake(fmt.Sprintf("unknown shape %q", name), nearest(name, shapes, known)...)
	}
	return name
}
