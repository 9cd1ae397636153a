package main

import (
	"bytes"

	"github.com/urfave/cli/v2"

	"stepoff/layout/check"
	"stepoff/layout/choose"
	"stepoff/layout/drawing/svg"
	"stepoff/layout/views"
)

func checkCommand(std streams) *cli.Command {
	return &cli.Command{
		Name:        "check",
		Usage:       "hold the stair against its code",
		ArgsUsage:   "[options] JOB",
		Description: "Every finding of code, strength and fit: what fails first, with its section, and what\nwould put it right. Exit status 3 when a limit of the code is broken; strength is advice.",
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
	l.apart(std, name, l.String("chart"))
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
	if err := chart(std, l, s); err != nil {
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

// chart writes the chart of spans that --chart asks for: of the first flight that
// has one.
func chart(std streams, l *line, s *stair) error {
	output := l.String("chart")
	if output == "" {
		return nil
	}
	for _, f := range s.Flights() {
		w := s.Strength(f, s.code)
		if w == nil {
			continue
		}
		if d := views.SpanChart(f, w, s.style); d != nil {
			var picture bytes.Buffer
			if err := svg.Write(&picture, d, svg.Options{Margin: chartMargin, Paper: true}); err != nil {
				return err
			}
			return write(std, output, picture.Bytes())
		}
	}
	l.mistake("--chart: no stringer of this job spans and has a verdict on its strength: there is no chart", "stringer: {species, grade} and width make one; stepoff check says what is missing")
	return l.err()
}

// chartMargin is free round a chart, millimetres.
const chartMargin = 8
