package main

import (
	"bytes"
	"errors"

	"github.com/urfave/cli/v2"

	"stepoff/layout/choose"
	"stepoff/layout/report"
	"stepoff/spec/lumber"
	"stepoff/spec/measure"
)

func figureCommand(std streams) *cli.Command {
	length := func(name, usage string) cli.Flag {
		return &cli.StringFlag{Name: name, Usage: usage}
	}
	return &cli.Command{
		Name:        "figure",
		Usage:       "weigh every riser count, best first",
		ArgsUsage:   "--rise LENGTH [options]",
		Description: "Each count with its best run: the one given, or the tread board less its nosing,\nwhat the room holds, what 2R+T asks for, the code's least. A length without a unit\nis in inches, or in millimetres with --units metric.",
		Flags: []cli.Flag{
			length("rise", "total rise between the finished floors, a `LENGTH`"),
			length("run", "only this unit run, a `LENGTH`"),
			length("available", "the first nosing to the head plumb cut, a `LENGTH`, as much as there is"),
			&cli.StringFlag{Name: "code", Usage: "under this building code, by `NAME` or file (default: irc-2021)"},
			&cli.StringFlag{Name: "stock", Usage: "cut from boards of this nominal `SIZE` (default: 2x12)"},
			length("nosing", "overhang of the treads, a `LENGTH`"),
			length("floor-depth", "upper floor down to the ceiling below, a `LENGTH`"),
			length("opening", "head plumb cut to the far edge of the floor opening, a `LENGTH`"),
			&cli.BoolFlag{Name: "flush", Usage: "the top tread is level with the upper floor", DisableDefaultText: true},
			jsonOption(), unitsOption(), fractionOption(),
		},
		Action: func(c *cli.Context) error { return runFigure(std, &line{Context: c}) },
	}
}

// What is figured with where nothing is said: stringers and treads of 2x12 (PS
// 20), a nosing of 1 in (common practice: 1 to 1 1/4).
const (
	usualStock  = "2x12"
	usualBoards = "2x12"
	usualNosing = measure.Inch
)

func runFigure(std streams, l *line) error {
	l.noNames()
	q, err := figureRequest(std, l)
	if err != nil {
		return err
	}
	if err := l.err(); err != nil {
		return err
	}
	choices := choose.Choices(q)
	var result bytes.Buffer
	if l.Bool("json") {
		err = report.FigureJSON(&result, q, choices)
	} else {
		err = report.Figure(&result, q, choices)
	}
	if err != nil {
		return err
	}
	if err := std.print(result.Bytes()); err != nil {
		return err
	}
	for _, c := range choices {
		if c.Meets() {
			return nil
		}
	}
	return checkFails("no riser count meets " + q.Code.Name)
}

// figureRequest reads the options. The error is of a code's file; mistakes on
// the line gather in l.
func figureRequest(std streams, l *line) (choose.Request, error) {
	style := l.style()
	q := choose.Request{Style: measure.Style{Units: style.units, Denominator: style.parts}, Flush: l.Bool("flush")}
	optional := func(name string) *measure.Length {
		v, given := value(l, name, func(text string) (measure.Length, error) { return positive(text, style.units) })
		if !given {
			return nil
		}
		return &v
	}
	if rise := optional("rise"); rise != nil {
		q.Rise = *rise
	} else {
		l.mistake("--rise is missing: figure must know the total rise", `write it like --rise 8'11" or --rise 2720mm`)
	}
	q.Run, q.Available, q.Nosing = optional("run"), optional("available"), optional("nosing")
	q.FloorDepth, q.Opening = optional("floor-depth"), optional("opening")
	stock := usualStock
	if l.IsSet("stock") {
		stock = l.String("stock")
	}
	var known bool
	if q.Stock, known = lumber.Lookup(stock); !known {
		l.mistake("--stock: no lumber is called "+measure.Quote(stock), nearest(stock, lumber.Names(), "write it like 2x12")...)
	}
	boards, _ := lumber.Lookup(usualBoards)
	run := boards.Width - usualNosing
	if q.Nosing != nil {
		run = boards.Width - *q.Nosing
	}
	q.BoardRun = &run

	name := "irc-2021"
	if l.IsSet("code") {
		name = l.String("code")
	}
	code, err := codeNamed(std, name)
	if unknown := (unknownCode("")); errors.As(err, &unknown) {
		l.mistake("--code: " + unknown.Error())
		return q, nil
	}
	if err != nil {
		return q, err
	}
	q.Code = code
	return q, nil
}

// positive reads a length of more than nothing.
func positive(text string, units measure.Units) (measure.Length, error) {
	l, err := measure.Parse(text, units)
	if err == nil && l <= 0 {
		err = errors.New(measure.Quote(text) + " is no length to build with: it must be more than 0")
	}
	return l, err
}
