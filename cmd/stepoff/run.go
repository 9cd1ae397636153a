package main

import (
	"fmt"
	"io"
	"strings"

	"github.com/urfave/cli/v2"
)

// The streams a command reads and writes.
type streams struct {
	in       io.Reader
	out, err io.Writer
}

// commands are the commands in the order help lists them. A command is a file
// of its own that holds its options and its action; it joins here.
func commands(std streams) []*cli.Command {
	return []*cli.Command{
		newCommand(std),
		figureCommand(std),
		layoutCommand(std),
		checkCommand(std),
		templatesCommand(std),
		lessonCommand(std),
		exercisesCommand(std),
		punchCommand(std),
		calibrateCommand(std),
		codesCommand(std),
		schemaCommand(std),
	}
}

// run carries out one command line, the program's name first, and returns the
// exit status.
func run(args []string, std streams) int {
	app := newApp(std)
	ordered, err := order(app, args[1:])
	if err == nil {
		err = app.Run(ordered)
	}
	return tell(std.err, err)
}

// newApp sets the library up to parse and to print help, and nothing more:
// order has put the arguments right and tell speaks about errors.
func newApp(std streams) *cli.App {
	app := &cli.App{
		Name:                      "stepoff",
		HelpName:                  "stepoff",
		Usage:                     "lay out stairs and print full-size templates for their stringers",
		Version:                   version(),
		Commands:                  commands(std),
		HideHelpCommand:           true,
		DisableSliceFlagSeparator: true,
		CustomAppHelpTemplate:     appHelp,
		Reader:                    std.in,
		Writer:                    std.out,
		ErrWriter:                 std.err,
		ExitErrHandler:            func(*cli.Context, error) {}, // the library would leave the program
		OnUsageError:              func(_ *cli.Context, err error, _ bool) error { return err },
	}
	for _, command := range app.Commands {
		command.HideHelpCommand = true // or a job file named help would be taken for it
		command.CustomHelpTemplate = commandHelp
		command.OnUsageError = app.OnUsageError
	}
	return app
}

// usage is a command in one line.
func usage(command *cli.Command) string {
	return strings.TrimRight(fmt.Sprintf("stepoff %s %s", command.Name, command.ArgsUsage), " ")
}

// Help goes to standard output, as the library's own templates would, in the
// words of the rest: tabs are turned into columns.
const (
	appHelp = `stepoff: {{.Usage}}

usage: stepoff COMMAND [options] ...
{{range .VisibleCommands}}
  {{.Name}}{{"\t"}}{{.Usage}}{{end}}

stepoff COMMAND --help lists a command's options
stepoff --version says which version this is
`
	commandHelp = `{{.HelpName}}: {{.Usage}}

usage: {{.HelpName}} {{.ArgsUsage}}
{{if .Description}}
{{.Description}}
{{end}}{{if .VisibleFlags}}
{{range .VisibleFlags}}  {{.}}
{{end}}{{end}}`
)

func unknownCommand(app *cli.App, word string) error {
	names := commandNames(app)
	return mistake(fmt.Sprintf("unknown command %q", word), nearest(word, names, "the commands are "+strings.Join(names, ", "))...)
}

func commandNames(app *cli.App) []string {
	var names []string
	for _, command := range app.Commands {
		names = append(names, command.Name)
	}
	return names
}
