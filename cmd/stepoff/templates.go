package main

import (
	"bytes"
	"errors"

	"github.com/urfave/cli/v2"

	"stepoff/pdfout/packet"
	"stepoff/spec"
)

func templatesCommand(std streams) *cli.Command {
	return &cli.Command{
		Name:        "templates",
		Usage:       "print full-size sheets to lay on the stock and cut to",
		ArgsUsage:   "[options] JOB -o FILE.pdf",
		Description: "A cover with the numbers and the cut sequence, then every part at full size,\ntiled over the job's paper. Print at 100 %.",
		Flags: []cli.Flag{
			outputOption("FILE.pdf"),
			&cli.StringSliceFlag{Name: "part", Usage: "only this part, by `NAME`: stringer, pitch-board, story-pole, treads ...; may be repeated"},
			&cli.StringFlag{Name: "paper", Usage: "print on paper of this `SIZE` instead of the job's"},
			unitsOption(),
			fractionOption(),
			quietOption(),
			acceptOption(),
		},
		Action: func(c *cli.Context) error { return runTemplates(std, &line{Context: c}) },
	}
}

func runTemplates(std streams, l *line) error {
	name := l.job()
	output := l.output()
	l.apart(std, name, output)
	style := l.style()
	if err := l.err(); err != nil {
		return err
	}
	job, err := load(std, name)
	if err != nil {
		return err
	}
	paper, given := value(l, "paper", func(size string) (spec.PaperSize, error) { return spec.ParsePaperSize(size, job.Units) })
	if err := l.err(); err != nil {
		return err
	}
	if given {
		job.Paper.Size = paper
		if err := job.Paper.Check(job.Units); err != nil {
			l.mistake("--paper: " + err.Error())
			return l.err()
		}
	}
	date, err := created(job)
	if err != nil {
		return err
	}
	stair, err := layStair(std, name, job, style.of(job))
	if err != nil {
		return err
	}
	stamp, err := stair.accepted(l)
	if err != nil {
		return err
	}
	var result bytes.Buffer
	err = packet.Write(&result, stair.Stairway, packet.Options{
		Parts:   l.StringSlice("part"),
		Paper:   job.Paper,
		Style:   stair.style,
		Code:    stair.code,
		Stamp:   stamp,
		Created: date,
	})
	if unknown := (packet.UnknownPart{}); errors.As(err, &unknown) {
		l.mistake(unknown.Error(), nearest(unknown.Name, unknown.Known, "name one of these, or none for all of them")...)
		return l.err()
	}
	if err != nil {
		return err
	}
	if err := write(std, output, result.Bytes()); err != nil {
		return err
	}
	if output != "-" {
		std.note(l, "wrote %s", output)
	}
	return nil
}
