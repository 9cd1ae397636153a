package main

import (
	"fmt"
	"os"
	"path/filepath"
	"strconv"

	"github.com/urfave/cli/v2"

	"stepoff/pdfout/booklet"
	"stepoff/spec/measure"
)

func exercisesCommand(std streams) *cli.Command {
	return &cli.Command{
		Name:        "exercises",
		Usage:       "print practice problems of stair layout, and their answers",
		ArgsUsage:   "[options] --seed N --count N -o FILE.pdf",
		Description: "Every seed is a set of its own, the same for ever: one for each apprentice. Each\nproblem has room to work; --answers writes how each is worked and how near is right. A name that\nends in .html is a page for a screen.",
		Flags: []cli.Flag{
			&cli.StringFlag{Name: "seed", Usage: "which set, a whole `NUMBER` from 0 on"},
			&cli.StringFlag{Name: "count", Usage: "how many problems, a `NUMBER` from 1 to 500 (default: 12)"},
			&cli.StringFlag{Name: "level", Usage: "problems of this `LEVEL`: first or full (default: full)"},
			outputOption("FILE.pdf"),
			&cli.StringFlag{Name: "answers", Usage: "write the answers to `FILE.pdf`, or FILE.html for a screen"},
			&cli.StringFlag{Name: "paper", Usage: "print on paper of this `SIZE` (default: letter, a4 in metric units)"},
			&cli.StringFlag{Name: "units", Usage: "problems in these `UNITS`: imperial or metric (default: imperial)"},
			quietOption(),
		},
		Action: func(c *cli.Context) error { return runExercises(std, &line{Context: c}) },
	}
}

// The bounds of a set: a set larger than that runs out of different problems.
const (
	usualCount = 12
	mostCount  = 500
)

func runExercises(std streams, l *line) error {
	l.noNames()
	seed, given := value(l, "seed", parseSeed)
	if !given {
		l.mistake("--seed is missing: it says which set is printed", "write --seed 1, or any whole number")
	}
	count, given := value(l, "count", parseCount)
	if !given {
		count = usualCount
	}
	units, _ := value(l, "units", measure.ParseUnits)
	level := l.lessonLevel()
	output, answers := l.output(), l.String("answers")
	l.twoFiles(output, answers)
	if err := l.err(); err != nil {
		return err
	}
	paper, err := l.pageSize(units)
	if err != nil {
		return err
	}
	problems, solved, err := booklet.Exercises(booklet.Practice{Seed: seed, Count: count, Level: level, Units: units, Paper: booklet.Paper(paper)})
	if err != nil {
		return err
	}
	// The answers first: where they cannot be written there are no problems without
	// them, and those of before still stand.
	if answers != "" {
		if err := std.booklet(l, answers, solved); err != nil {
			return err
		}
	}
	return std.booklet(l, output, problems)
}

// twoFiles refuses to write problems and answers to one place.
func (l *line) twoFiles(output, answers string) {
	if l.IsSet("answers") && answers == "" {
		l.mistake("--answers: the file's name is empty", "--answers FILE.pdf names a file")
		return
	}
	if output == "" || answers == "" {
		return
	}
	same := output == answers
	if a, err := filepath.Abs(output); err == nil && output != "-" && answers != "-" {
		b, err := filepath.Abs(answers)
		same = err == nil && a == b // however each is written
	}
	if a, err := os.Stat(output); err == nil && output != "-" && answers != "-" {
		if b, err := os.Stat(answers); err == nil && a.Mode().IsRegular() && os.SameFile(a, b) {
			same = true
		}
	}
	if same {
		l.mistake("-o and --answers name one file", "give them two")
	}
}

func parseSeed(text string) (uint64, error) {
	n, err := strconv.ParseUint(text, 10, 64)
	if err != nil {
		return 0, fmt.Errorf("%s is no whole number from 0 on", measure.Quote(text))
	}
	return n, nil
}

func parseCount(text string) (int, error) {
	n, err := strconv.Atoi(text)
	if err != nil || n < 1 || n > mostCount {
		return 0, fmt.Errorf("%s is no number from 1 to %d", measure.Quote(text), mostCount)
	}
	return n, nil
}
