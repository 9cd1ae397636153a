package main

import (
	"bytes"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// split makes an argument of each word; ” is an empty one.
func split(line string) []string {
	words := strings.Fields(line)
	for i, word := range words {
		words[i] = strings.ReplaceAll(word, "''", "")
	}
	return words
}

// TestOrder holds the order of arguments against the contract: options before
// or after the names, - a name, -- the end of options.
func TestOrder(t *testing.T) {
	for _, row := range []struct{ written, want string }{
		{"layout job.yaml", "stepoff layout -- job.yaml"},
		{"layout --json job.yaml", "stepoff layout --json -- job.yaml"},
		{"layout job.yaml --json", "stepoff layout --json -- job.yaml"},
		{"layout -json job.yaml", "stepoff layout --json -- job.yaml"},
		{"layout job.yaml --units metric --json", "stepoff layout --units=metric --json -- job.yaml"},
		{"layout --units=metric job.yaml", "stepoff layout --units=metric -- job.yaml"},
		{"layout -", "stepoff layout -- -"},
		{"layout - --json", "stepoff layout --json -- -"},
		{"layout -- --json", "stepoff layout -- --json"},
		{"layout --json -- -h", "stepoff layout --json -- -h"},
		{"layout a.yaml b.yaml", "stepoff layout -- a.yaml b.yaml"},
		{"layout ''", "stepoff layout -- ''"},
		{"templates job.yaml -o sheets.pdf", "stepoff templates --o=sheets.pdf -- job.yaml"},
		{"templates -o - job.yaml", "stepoff templates --o=- -- job.yaml"},
		{"templates -o=a=b.pdf job.yaml", "stepoff templates --o=a=b.pdf -- job.yaml"},
		{"templates -o '' job.yaml", "stepoff templates --o= -- job.yaml"},
		{"templates -o -x.pdf job.yaml", "stepoff templates --o=-x.pdf -- job.yaml"},
		{"templates --part a,b job.yaml --part c -o x", "stepoff templates --part=a,b --part=c --o=x -- job.yaml"},
		{"templates --accept-failures job.yaml --quiet --quiet -o x", "stepoff templates --accept-failures --quiet --quiet --o=x -- job.yaml"},

		{"--help", "stepoff --help"},
		{"-h", "stepoff --help"},
		{"help", "stepoff --help"},
		{"help --help", "stepoff --help"},
		{"help layout", "stepoff layout --help"},
		{"layout job.yaml --help", "stepoff layout --help"},
		{"layout --nonsense -h", "stepoff layout --help"},
		{"templates -o --help", "stepoff templates --help"},
		{"--version", "stepoff --version"},
	} {
		got, err := order(newApp(streams{}), split(row.written))
		if err != nil {
			t.Errorf("%s: %v", row.written, err)
			continue
		}
		if diff := cmp.Diff(split(row.want), got); diff != "" {
			t.Errorf("%s: want -, got +:\n%s", row.written, diff)
		}
	}
}

// TestOrderMistakes holds what is said about a line that cannot be put in
// order: all of it at once, what would be right, and status 2.
func TestOrderMistakes(t *testing.T) {
	const layoutUsage = "usage: stepoff layout [options] JOB\n"
	for _, row := range []struct{ written, want string }{
		{"", "stepoff: no command given\n" +
			"  the commands are new, figure, layout, check, templates, lesson, exercises, punch, calibrate, codes, schema\n  stepoff --help says what they do\n"},
		{"layot job.yaml", "stepoff: unknown command \"layot\"\n  did you mean layout?\n"},
		{"Layout job.yaml", "stepoff: unknown command \"Layout\"\n  did you mean layout?\n"},
		{"job.yaml", "stepoff: unknown command \"job.yaml\"\n  the commands are new, figure, layout, check, templates, lesson, exercises, punch, calibrate, codes, schema\n"},
		{"help layot", "stepoff: unknown command \"layot\"\n  did you mean layout?\n"},
		{"--json layout", "stepoff: --json stands where the command should\n" +
			"  options follow the command: stepoff COMMAND [options] ...\n  stepoff --help lists the commands\n"},
		{"layout job.yaml --jsn --unit metric", "stepoff: unknown option --jsn\n  did you mean --json?\n" +
			"stepoff: unknown option --unit\n  did you mean --units?\n" + layoutUsage},
		{"layout job.yaml -x", "stepoff: unknown option -x\n  layout takes --json, --units, --fraction\n" + layoutUsage},
		{"layout job.yaml ---json", "stepoff: unknown option ---json\n  did you mean --json?\n" + layoutUsage},
		{"schema --x", "stepoff: unknown option --x\n  schema takes no options\nusage: stepoff schema\n"},
		{"layout job.yaml --units", "stepoff: --units needs a value\n  write --units UNITS\n" + layoutUsage},
		{"layout --units -- job.yaml", "stepoff: --units needs a value\n  write --units UNITS\n" + layoutUsage},
		{"layout --units --json job.yaml", "stepoff: --units needs a value\n  write --units UNITS\n" + layoutUsage},
		{"layout --json=yes job.yaml", "stepoff: --json takes no value\n  write --json alone\n" + layoutUsage},
		{"layout --units metric --units imperial job.yaml", "stepoff: --units is given twice\n  give it once\n" + layoutUsage},
	} {
		var said, out bytes.Buffer
		status := run(append([]string{"stepoff"}, split(row.written)...), streams{in: strings.NewReader(""), out: &out, err: &said})
		if status != statusMistake {
			t.Errorf("%s: status %d, want 2", row.written, status)
		}
		if diff := cmp.Diff(row.want, said.String()); diff != "" {
			t.Errorf("%s: want -, got +:\n%s", row.written, diff)
		}
		if out.Len() > 0 {
			t.Errorf("%s: standard output is for results, and has %q", row.written, out.String())
		}
	}
}

// TestOptionsAreWellMade holds that no command's option takes help's place or
// stands twice, and that each value an option takes has a name in the help.
func TestOptionsAreWellMade(t *testing.T) {
	for _, command := range newApp(streams{}).Commands {
		seen := map[string]bool{"h": true, "help": true}
		for _, flag := range command.Flags {
			for _, name := range flag.Names() {
				if seen[name] {
					t.Errorf("%s: option %s stands twice", command.Name, name)
				}
				seen[name] = true
			}
			if o := findOption(command, dashed(flag.Names()[0])); o.takesValue && o.placeholder == "VALUE" {
				t.Errorf("%s: the value of %s has no name", command.Name, dashed(o.name))
			}
		}
		if command.Usage == "" {
			t.Errorf("%s: help has no word on it", command.Name)
		}
	}
}
