package main

import (
	"bytes"

	"github.com/urfave/cli/v2"

	"stepoff/layout/report"
)

func layoutCommand(std streams) *cli.Command {
	return &cli.Command{
		Name:        "layout",
		Usage:       "print the numbers to lay out by",
		ArgsUsage:   "[options] JOB",
		Description: "Levels, marks, cuts and boards as text for the saw horses, or as JSON.",
		Flags:       []cli.Flag{jsonOption(), unitsOption(), fractionOption()},
		Action:      func(c *cli.Context) error { return runLayout(std, &line{Context: c}) },
	}
}

func runLayout(std streams, l *line) error {
	name := l.job()
	style := l.style()
	if err := l.err(); err != nil {
		return err
	}
	if l.Bool("json") {
		style = plainStyle // the figures are in mm; the words are the job's own
	}
	s, err := readStair(std, name, style)
	if err != nil {
		return err
	}
	var result bytes.Buffer
	if l.Bool("json") {
		err = report.JSON(&result, s.Stairway, s.code, s.findings)
	} else {
		err = report.Text(&result, s.Stairway, s.code, s.style)
	}
	if err != nil {
		return err
	}
	return std.print(result.Bytes())
}
