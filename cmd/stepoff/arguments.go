package main

import (
	"fmt"
	"slices"
	"strings"

	"github.com/urfave/cli/v2"
)

// order puts the arguments in the only order the command-line library reads:
// command, options, --, names. Options may stand before or after the names:
// - is a name, -- ends the options, an option that takes a value takes it from
// the next argument or after =. What cannot be put in order is reported all at
// once: an unknown command or option, a value that is missing or not wanted,
// an option given twice.
func order(app *cli.App, args []string) ([]string, error) {
	if len(args) == 0 {
		return nil, mistake("no command given", "the commands are "+strings.Join(commandNames(app), ", "), "stepoff --help says what they do")
	}
	word, rest := args[0], args[1:]
	switch word {
	case "-h", "--help":
		return []string{app.Name, "--help"}, nil
	case "-v", "--version":
		return []string{app.Name, "--version"}, nil
	case "help":
		if len(rest) == 0 || wantsHelp(rest) {
			return []string{app.Name, "--help"}, nil
		}
		word, rest = rest[0], []string{"--help"}
	}
	if strings.HasPrefix(word, "-") {
		return nil, mistake(fmt.Sprintf("%s stands where the command should", word),
			"options follow the command: stepoff COMMAND [options] ...",
			"stepoff --help lists the commands")
	}
	command := app.Command(word)
	if command == nil {
		return nil, unknownCommand(app, word)
	}
	if wantsHelp(rest) {
		return []string{app.Name, command.Name, "--help"}, nil
	}
	options, names, wrong := sortOut(command, rest)
	if len(wrong) > 0 {
		return nil, &misuse{command, wrong}
	}
	ordered := append([]string{app.Name, command.Name}, options...)
	return append(append(ordered, "--"), names...), nil
}

// sortOut parts a command's arguments into options, each as --name=value, and
// names.
func sortOut(command *cli.Command, args []string) (options, names []string, wrong []*failure) {
	given := map[string]bool{}
	for i := 0; i < len(args); i++ {
		arg := args[i]
		if arg == "--" {
			names = append(names, args[i+1:]...)
			break
		}
		if !isOption(arg) {
			names = append(names, arg)
			continue
		}
		written, value, hasValue := strings.Cut(arg, "=")
		o := findOption(command, written)
		if o == nil {
			wrong = append(wrong, unknownOption(command, written))
			continue
		}
		if given[o.name] && o.takesValue && !o.repeatable {
			wrong = append(wrong, mistake(fmt.Sprintf("%s is given twice", written), "give it once"))
		}
		given[o.name] = true
		switch {
		case !o.takesValue && hasValue:
			wrong = append(wrong, mistake(fmt.Sprintf("%s takes no value", written), "write "+written+" alone"))
		case !o.takesValue:
			options = append(options, "--"+o.name)
		case hasValue:
			options = append(options, "--"+o.name+"="+value)
		case i+1 == len(args) || args[i+1] == "--" || findOption(command, args[i+1]) != nil:
			wrong = append(wrong, mistake(fmt.Sprintf("%s needs a value", written), "write "+written+" "+o.placeholder))
		default:
			i++
			options = append(options, "--"+o.name+"="+args[i])
		}
	}
	return options, names, wrong
}

// isOption tells an option from a name; a lone - is the name of a stream.
func isOption(arg string) bool { return len(arg) > 1 && arg[0] == '-' }

// An option is what ordering needs to know of one of a command's flags.
type option struct {
	name        string // without dashes
	takesValue  bool
	repeatable  bool
	placeholder string // what the help calls its value: FILE.pdf
}

// findOption looks an option up as it is written, with one dash or two; nil
// when the command has none such.
func findOption(command *cli.Command, written string) *option {
	if !isOption(written) {
		return nil
	}
	written, _, _ = strings.Cut(written, "=")
	bare := strings.TrimPrefix(strings.TrimPrefix(written, "-"), "-")
	for _, flag := range command.Flags {
		for _, name := range flag.Names() {
			if name != bare {
				continue
			}
			o := option{name: flag.Names()[0]}
			if doc, ok := flag.(cli.DocGenerationFlag); ok {
				o.takesValue = doc.TakesValue()
				o.placeholder = placeholder(doc.GetUsage())
			}
			if slice, ok := flag.(cli.DocGenerationSliceFlag); ok {
				o.repeatable = slice.IsSliceFlag()
			}
			return &o
		}
	}
	return nil
}

// unknownOption says which of the command's options was probably meant.
func unknownOption(command *cli.Command, written string) *failure {
	var known []string
	for _, flag := range command.VisibleFlags() {
		known = append(known, dashed(flag.Names()[0]))
	}
	otherwise := command.Name + " takes " + strings.Join(known, ", ")
	if len(known) == 0 {
		otherwise = command.Name + " takes no options"
	}
	return mistake("unknown option "+written, nearest(written, known, otherwise)...)
}

// dashed is an option as help writes it: -o, --paper.
func dashed(name string) string {
	if len(name) == 1 {
		return "-" + name
	}
	return "--" + name
}

// placeholder is the word in back quotes in a flag's usage.
func placeholder(usage string) string {
	if _, after, ok := strings.Cut(usage, "`"); ok {
		word, _, _ := strings.Cut(after, "`")
		return word
	}
	return "VALUE"
}

// wantsHelp tells whether help is asked for before the options end.
func wantsHelp(args []string) bool {
	if end := slices.Index(args, "--"); end >= 0 {
		args = args[:end]
	}
	return slices.Contains(args, "-h") || slices.Contains(args, "--help")
}
