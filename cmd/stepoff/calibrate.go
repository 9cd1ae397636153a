package main

import (
	"bytes"
	"fmt"

	"github.com/urfave/cli/v2"

	"stepoff/pdfout/packet"
	"stepoff/spec"
	"stepoff/spec/measure"
)

func calibrateCommand(std streams) *cli.Command {
	return &cli.Command{
		Name:        "calibrate",
		Usage:       "print the printer's test page, or work out its two factors",
		ArgsUsage:   "-o FILE.pdf | --measured-x LENGTH --measured-y LENGTH",
		Description: "Print the page at 100 %, measure its two bars, and give back what they measure:\nthe answer is the two scale lines for the job's paper.",
		Flags: []cli.Flag{
			outputOption("FILE.pdf"),
			&cli.StringFlag{Name: "measured-x", Usage: "what the bar across the paper measures, a `LENGTH`"},
			&cli.StringFlag{Name: "measured-y", Usage: "what the bar along the paper measures, a `LENGTH`"},
			&cli.StringFlag{Name: "paper", Usage: "paper of this `SIZE` (default: letter)"},
			&cli.StringFlag{Name: "units", Usage: "bars in whole inches or centimetres, by `UNITS`: imperial or metric (default: imperial)"},
			quietOption(),
		},
		Action: func(c *cli.Context) error { return runCalibrate(std, &line{Context: c}) },
	}
}

func runCalibrate(std streams, l *line) error {
	l.noNames()
	units, _ := value(l, "units", measure.ParseUnits)
	paper := spec.DefaultPaper()
	if size, given := value(l, "paper", func(text string) (spec.PaperSize, error) { return spec.ParsePaperSize(text, units) }); given {
		paper.Size = size
	}
	length := func(text string) (measure.Length, error) { return positive(text, units) }
	x, givenX := value(l, "measured-x", length)
	y, givenY := value(l, "measured-y", length)
	switch {
	case givenX != givenY:
		l.mistake("both bars are needed: the printer's two axes differ", "give --measured-x and --measured-y")
	case givenX && l.IsSet("o"):
		l.mistake("-o prints the page, --measured-x and --measured-y answer what it measured: one or the other")
	case !givenX && !l.IsSet("o"):
		l.output() // says that it is missing
	}
	if err := l.err(); err != nil {
		return err
	}
	if givenX {
		return printFactors(std, l, paper, units, x, y)
	}
	var result bytes.Buffer
	if err := packet.WriteCalibration(&result, paper, units); err != nil {
		return err
	}
	output := l.String("o")
	if err := write(std, output, result.Bytes()); err != nil {
		return err
	}
	if output != "-" {
		std.note(l, "wrote %s: print it at 100 %%, measure both bars, then stepoff calibrate --measured-x L --measured-y L", output)
	}
	return nil
}

// printFactors prints the two lines as they go into a job.
func printFactors(std streams, l *line, paper spec.Paper, units measure.Units, x, y measure.Length) error {
	scaleX, scaleY, errX, errY := packet.Factors(paper, units, x, y)
	if errX != nil {
		l.mistake("--measured-x: " + errX.Error())
	}
	if errY != nil {
		l.mistake("--measured-y: " + errY.Error())
	}
	if err := l.err(); err != nil {
		return err
	}
	return std.print(fmt.Appendf(nil, "  scale_x: %.4f\n  scale_y: %.4f\n", scaleX, scaleY))
}
