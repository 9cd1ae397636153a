package main

import (
	"bytes"
	"fmt"
	"strings"

	"github.com/urfave/cli/v2"

	"stepoff/layout/lesson"
	"stepoff/pdfout"
	"stepoff/pdfout/booklet"
	"stepoff/pdfout/html"
	"stepoff/spec"
	"stepoff/spec/measure"
)

func lessonCommand(std streams) *cli.Command {
	return &cli.Command{
		Name:        "lesson",
		Usage:       "tell the layout of a stair step by step, drawn, with its numbers",
		ArgsUsage:   "[options] JOB -o FILE.pdf",
		Description: "A booklet to follow at the bench: the words, every step with its drawing, its\narithmetic and its common mistake, and a checklist to sign. FILE.html is one page\nfor a screen.",
		Flags: []cli.Flag{
			&cli.StringFlag{Name: "o", Usage: "write to `FILE.pdf` or FILE.html; - is standard output, as PDF"},
			&cli.StringFlag{Name: "level", Usage: "tell as much as a `LEVEL` needs: first or full (default: full)"},
			&cli.StringSliceFlag{Name: "model", Usage: "also a practice template for a cardboard model at this `SCALE`: half or quarter; may be repeated"},
			&cli.StringFlag{Name: "paper", Usage: "print on paper of this `SIZE` (default: letter, a4 in metric units)"},
			unitsOption(),
			fractionOption(),
			quietOption(),
			acceptOption(),
		},
		Action: func(c *cli.Context) error { return runLesson(std, &line{Context: c}) },
	}
}

// isHTML tells from a file's name how a booklet is written.
func isHTML(output string) bool {
	name := strings.ToLower(output)
	return strings.HasSuffix(name, ".html") || strings.HasSuffix(name, ".htm")
}

func (l *line) lessonLevel() lesson.Level {
	level, given := value(l, "level", lesson.ParseLevel)
	if !given {
		return lesson.Full
	}
	return level
}

// models are the scales of the models asked for, as one to so many.
func (l *line) models() (scales []int) {
	for _, word := range l.StringSlice("model") {
		scale, ok := booklet.Models[word]
		if !ok {
			l.mistake(fmt.Sprintf("--model: there is no scale %q", word), "write half or quarter")
			continue
		}
		scales = append(scales, scale)
	}
	return scales
}

func runLesson(std streams, l *line) error {
	name := l.job()
	output := l.output()
	l.apart(std, name, output)
	style, level, models := l.style(), l.lessonLevel(), l.models()
	if isHTML(output) && len(models) > 0 {
		l.mistake("--model needs paper: a screen has no true size", "write to a PDF file")
	}
	if err := l.err(); err != nil {
		return err
	}
	job, err := load(std, name)
	if err != nil {
		return err
	}
	printed := style.of(job)
	paper, err := l.pageSize(printed.Units)
	if err != nil {
		return err
	}
	date, err := created(job)
	if err != nil {
		return err
	}
	stair, err := layStair(std, name, job, printed)
	if err != nil {
		return err
	}
	stamp, err := stair.accepted(l)
	if err != nil {
		return err
	}
	doc, err := booklet.Lesson(stair.Stairway, booklet.Options{
		Paper: booklet.Paper(paper), Style: printed, Code: stair.code, Level: level, Models: models, Stamp: stamp, Created: date,
	})
	if err != nil {
		return err
	}
	return std.booklet(l, output, doc)
}

// pageSize is the paper a booklet is printed on: sheets, whose pages are shared out.
func (l *line) pageSize(units measure.Units) (spec.Paper, error) {
	paper, err := l.sheet(units)
	if err == nil && paper.Size.Roll {
		l.mistake("--paper: a booklet has pages, and a roll has none", "name a size of sheet: letter, a4")
		return paper, l.err()
	}
	return paper, err
}

// booklet writes a booklet as its file's name says.
func (std streams) booklet(l *line, output string, doc pdfout.Document) error {
	var result bytes.Buffer
	set := pdfout.Write
	if isHTML(output) {
		set = html.Write
	}
	if err := set(&result, doc); err != nil {
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
