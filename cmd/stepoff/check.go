package main

import (
	"bytes"

	"github.com/urfave/cli/v2"

	"stepoff/layout/check"
	"stepoff/layout/choose"
)

func checkCommand(std streams) *cli.Command {
	return &cli.Command{
		Name:        "check",
		Usage:       "hold the stair against its code",
		ArgsUsage:   "[options] JOB",
		Description: "Every finding of code and fit: what fails first, with its section, and what would\nput it right. Exit status 3 when a limit of the code is broken.",
		Flags: []cli.Flag{
			jsonOption(),
			&cli.BoolFlag{Name: "suggest", Usage: "say what change would make the strength hold, the least first", DisableDefaultText: true},
			&cli.StringFlag{Name: "chart", Usage: "write the chart of spans, longest against rise and run, to `FILE.svg`"},
			unitsOption(),
			fractionOption(),
		},
		Action: func(c *cli.Context) error { return runCheck(std, &line{Context: c}) },
	}
}

func runCheck(std streams, l *line) error {
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
	var changes []check.Change
	if l.Bool("suggest") {
		changes = choose.Changes(s.Stairway, s.code)
	}
	var result bytes.Buffer
	if l.Bool("json") {
		err = check.JSON(&result, s.findings, changes)
	} else {
		err = check.Text(&result, s.findings, s.code)
		if err == nil && l.Bool("suggest") {
			err = check.TextChanges(&result, changes)
		}
	}
	if err != nil {
		return err
	}
	if err := std.print(result.Bytes()); err != nil {
		return err
	}
	if check.Fails(s.findings) {
		return checkFails("") // the findings are the message
	}
	return nil
}
