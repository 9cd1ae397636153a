package main

import (
	"fmt"

	"github.com/urfave/cli/v2"

	"stepoff/spec"
	"stepoff/spec/measure"
)

// The options commands share. Numbers and lengths are strings to the library:
// they are read by the package that knows them.
func jsonOption() cli.Flag {
	return &cli.BoolFlag{Name: "json", Usage: "print JSON, every length in mm at full precision", DisableDefaultText: true}
}

func unitsOption() cli.Flag {
	return &cli.StringFlag{Name: "units", Usage: "print lengths in these `UNITS`: imperial or metric (default: the job's)"}
}

func fractionOption() cli.Flag {
	return &cli.StringFlag{Name: "fraction", Usage: "print inches in `PARTS`: 16, 32 or 64 to the inch (default: 16)"}
}

func quietOption() cli.Flag {
	return &cli.BoolFlag{Name: "quiet", Usage: "say nothing but what is wrong", DisableDefaultText: true}
}

func outputOption(placeholder string) cli.Flag {
	return &cli.StringFlag{Name: "o", Usage: "write to `" + placeholder + "`; - is standard output"}
}

// A line is one command's line, read value by value: what is wrong gathers
// until err is asked.
type line struct {
	*cli.Context
	wrong []*failure
}

// err is everything that was wrong, or nil.
func (l *line) err() error {
	if len(l.wrong) == 0 {
		return nil
	}
	return &misuse{l.Command, l.wrong}
}

func (l *line) mistake(text string, hints ...string) {
	l.wrong = append(l.wrong, mistake(text, hints...))
}

// job is the one name a command takes.
func (l *line) job() string {
	switch names := l.Args().Slice(); {
	case len(names) == 0:
		l.mistake("no job file named", "name one, or - for standard input")
	case len(names) > 1:
		l.mistake(fmt.Sprintf("%s takes one job file, not %d", l.Command.Name, len(names)))
	case names[0] == "":
		l.mistake("the job file's name is empty")
	default:
		return names[0]
	}
	return ""
}

// noNames is for a command that takes options alone.
func (l *line) noNames() {
	if l.Args().Present() {
		l.mistake(fmt.Sprintf("%s takes no file name, and %q is one", l.Command.Name, l.Args().First()))
	}
}

// output is the file -o names.
func (l *line) output() string {
	name := l.String("o")
	if name == "" {
		l.mistake("-o is missing: "+l.Command.Name+" must be told where to write", "-o FILE names a file, -o - standard output")
	}
	return name
}

// A value option is read only where it was given: the zero value otherwise.
func value[T any](l *line, name string, parse func(string) (T, error)) (v T, given bool) {
	if !l.IsSet(name) {
		return v, false
	}
	v, err := parse(l.String(name))
	if err != nil {
		l.mistake("--" + name + ": " + err.Error())
	}
	return v, true
}

// A style is how --units and --fraction want lengths printed: in the job's
// units and 16ths where nothing is said.
type style struct {
	units    measure.Units
	ownUnits bool
	parts    int
}

// plainStyle is the job's units in 16ths.
var plainStyle = style{parts: 16}

func (l *line) style() style {
	s := plainStyle
	s.units, s.ownUnits = value(l, "units", measure.ParseUnits)
	if parts, given := value(l, "fraction", measure.ParseDenominator); given {
		s.parts = parts
	}
	return s
}

func (s style) of(job *spec.Job) measure.Style {
	units := job.Units
	if s.ownUnits {
		units = s.units
	}
	return measure.Style{Units: units, Denominator: s.parts}
}
