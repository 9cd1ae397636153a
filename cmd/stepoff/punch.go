package main

import (
	"bytes"

	"github.com/urfave/cli/v2"

	"stepoff/layout/asbuilt"
	"stepoff/layout/report"
	"stepoff/pdfout/packet"
	"stepoff/spec"
	"stepoff/spec/measure"
)

func punchCommand(std streams) *cli.Command {
	return &cli.Command{
		Name:        "punch",
		Usage:       "hold a stair that stands, as measured, against a code: what to put right",
		ArgsUsage:   "[options] FILE",
		Description: "FILE (kind: as-built) lists the risers and treads from the bottom up. Each is held\nagainst the code, and the least padding that puts uneven risers right is found.\nExit status 3 when a limit of the code is broken.",
		Flags: []cli.Flag{
			jsonOption(),
			&cli.StringFlag{Name: "o", Usage: "write an inspection sheet to `FILE.pdf` instead; - is standard output"},
			&cli.StringFlag{Name: "paper", Usage: "print the sheet on paper of this `SIZE` (default: letter, a4 in metric units)"},
			unitsOption(),
			fractionOption(),
			quietOption(),
		},
		Action: func(c *cli.Context) error { return runPunch(std, &line{Context: c}) },
	}
}

func runPunch(std streams, l *line) error {
	name := l.job()
	output := l.String("o")
	l.apart(std, name, output)
	if l.IsSet("o") && output == "" {
		l.mistake("-o: the file's name is empty", "-o FILE.pdf names a file, -o - standard output")
	}
	if l.IsSet("o") && l.Bool("json") {
		l.mistake("-o and --json are two results", "give one of them")
	}
	if l.IsSet("paper") && !l.IsSet("o") {
		l.mistake("--paper is for the inspection sheet", "-o FILE.pdf writes one")
	}
	style := l.style()
	if err := l.err(); err != nil {
		return err
	}
	if l.Bool("json") {
		style = plainStyle // the figures are in mm; the words are the file's own
	}
	text, called, err := read(std, name)
	if err != nil {
		return cannotRead(called, err)
	}
	stair, err := spec.LoadAsBuilt(called, text)
	if err != nil {
		return err
	}
	job := &spec.Job{Units: stair.Units, Date: stair.Date, Code: stair.Code} // as much of one as is asked for below
	paper, err := l.sheet(stair.Units)
	if err != nil {
		return err
	}
	date, err := created(job)
	if err != nil {
		return err
	}
	code, err := codeOf(std, name, job)
	if err != nil {
		return err
	}
	printed := style.of(job)
	in, err := asbuilt.Inspect(stair, code, printed)
	if err != nil {
		return err
	}
	var result bytes.Buffer
	switch {
	case l.IsSet("o"):
		err = packet.Inspection(&result, in, packet.Options{Paper: paper, Style: printed, Created: date})
	case l.Bool("json"):
		err = report.PunchJSON(&result, in)
	default:
		err = report.PunchText(&result, in, printed)
	}
	if err != nil {
		return err
	}
	if !l.IsSet("o") {
		output = "-"
	}
	if err := write(std, output, result.Bytes()); err != nil {
		return err
	}
	if output != "-" {
		std.note(l, "wrote %s", output)
	}
	if in.Fails() {
		return checkFails("") // the result has said it
	}
	return nil
}

// sheet is the paper an inspection sheet is printed on.
func (l *line) sheet(units measure.Units) (spec.Paper, error) {
	size := "letter"
	if units == measure.Metric {
		size = "a4"
	}
	usual, err := spec.ParsePaperSize(size, units)
	if err != nil {
		return spec.Paper{}, err
	}
	asked, given := value(l, "paper", func(size string) (spec.PaperSize, error) { return spec.ParsePaperSize(size, units) })
	if given {
		usual = asked
	}
	return spec.Paper{Size: usual, Margin: measure.Inch / 4}, l.err()
}
