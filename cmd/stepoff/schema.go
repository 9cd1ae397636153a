package main

import (
	"github.com/urfave/cli/v2"

	"stepoff/spec"
)

func schemaCommand(std streams) *cli.Command {
	return &cli.Command{
		Name:  "schema",
		Usage: "print the JSON Schema of the job file, for editors",
		Action: func(c *cli.Context) error {
			l := &line{Context: c}
			l.noNames()
			if err := l.err(); err != nil {
				return err
			}
			return std.print(spec.Schema())
		},
	}
}
