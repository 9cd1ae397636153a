package main

import (
	"bytes"
	"errors"

	"github.com/urfave/cli/v2"

	"stepoff/spec/rules"
)

func codesCommand(std streams) *cli.Command {
	return &cli.Command{
		Name:        "codes",
		Usage:       "list the building codes, or the limits of one",
		ArgsUsage:   "[options] [NAME]",
		Description: "Without a name the codes there are; with one, or with a code file of your own,\nevery limit with its section, how it is measured and how it came to be known.",
		Flags:       []cli.Flag{jsonOption()},
		Action:      func(c *cli.Context) error { return runCodes(std, &line{Context: c}) },
	}
}

func runCodes(std streams, l *line) error {
	if l.Args().Len() > 1 {
		l.mistake("codes takes one name, or none")
	}
	if err := l.err(); err != nil {
		return err
	}
	var result bytes.Buffer
	err := writeCodes(std, l, &result)
	if unknown := (unknownCode("")); errors.As(err, &unknown) {
		l.mistake(unknown.Error())
		return l.err()
	}
	if err != nil {
		return err
	}
	return std.print(result.Bytes())
}

func writeCodes(std streams, l *line, result *bytes.Buffer) error {
	asJSON := l.Bool("json")
	if !l.Args().Present() {
		if asJSON {
			return rules.ListJSON(result)
		}
		return rules.ListText(result)
	}
	code, err := codeNamed(std, l.Args().First())
	if err != nil {
		return err
	}
	if asJSON {
		return code.JSON(result)
	}
	return code.Text(result)
}
