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
			length("nosing", "overhang of the treads, a `LENGTH` (default: 1 in, and not judged)"),
			length("riser", "thickness of the riser boards, a `LENGTH` (default: 3/4 in)"),
			length("floor-depth", "upper floor down to the ceiling below, a `LENGTH`"),
			length("opening", "head plumb cut to the far edge of the floor opening, a `LENGTH`"),
			&cli.BoolFlag{Name: "flush", Usage: "the top tread is level with the upper floor", DisableDefaultText: true},
			jsonOption(), unitsOption(), fractionOption(),
		},
		Action: func(c *cli.Context) error { return runFigure(std, &line{Context: c}) },
	}
}

// What is figured with where nothing is said: stringers and treads of 2x12 (PS
// 20), a nosing of 1 in (common practice: 1 to 1 1/4), riser boards of 3/4 in.
const (
	usualStock  = "2x12"
	usualBoards = "2x12"
	usualNosing = measure.Inch
	usualRiser  = 3 * measure.Inch / 4
)

// highest bounds the rise: sixty feet, more than any stairway between two
// floors. What is more is a slip, such as metres for millimetres.
const highest = 60 * measure.Foot

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
	// A rise written in millimetres is answered in them.
	if !style.ownUnits && measure.UnitsOf(l.String("rise")) == measure.Metric {
		style.units, q.Style.Units = measure.Metric, measure.Metric
	}
	read := func(name string, parse func(string, measure.Units) (measure.Length, error)) *measure.Length {
		v, given := value(l, name, func(text string) (measure.Length, error) { return parse(text, style.units) })
		if !given {
			return nil
		}
		return &v
	}
	switch rise := read("rise", positive); {
	case rise == nil:
		l.mistake("--rise is missing: figure must know the total rise", `write it like --rise 8'11" or --rise 2720mm`)
	case *rise > highest:
		l.mistake("--rise: " + q.Style.Format(*rise) + " is more than any stairway between two floors; the most is " + q.Style.Format(highest))
	default:
		q.Rise = *rise
	}
	q.Run, q.Available = read("run", positive), read("available", positive)
	q.FloorDepth, q.Opening = read("floor-depth", positive), read("opening", positive)
	nosing, riser := usualNosing, usualRiser
	if q.Nosing = read("nosing", notNegative); q.Nosing != nil {
		nosing = *q.Nosing
	}
	if given := read("riser", notNegative); given != nil {
		riser = *given
	}
	q.Front = nosing + riser
	stock := usualStock
	if l.IsSet("stock") {
		stock = l.String("stock")
	}
	var known bool
	if q.Stock, known = lumber.Lookup(stock); !known {
		l.mistake("--stock: no lumber is called "+measure.Quote(stock), nearest(stock, lumber.Names(), "write it like 2x12")...)
	}
	boards, _ := lumber.Lookup(usualBoards)
	run := boards.Width - nosing
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

// notNegative reads a length that may be nothing.
func notNegative(text string, units measure.Units) (measure.Length, error) {
	l, err := measure.Parse(text, units)
	if err == nil && l < 0 {
		err = errors.New(measure.Quote(text) + " is less than 0")
	}
	return l, err
}
