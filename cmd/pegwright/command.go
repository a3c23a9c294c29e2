package main

import (
	"errors"
	"io"
	"slices"
	"strings"

	"github.com/spf13/pflag"

	"pegwright/cmd/pegwright/plain"
	"pegwright/geom/finding"
	"pegwright/geom/list"
	"pegwright/samples"
)

// command is one word of the command line. The parser, the help, the
// completion of a shell and the manual are all made from it.
type command struct {
	name     string
	short    string // one line for the help screen
	operands string // what follows the name, such as [FRAME.yaml]
	about    string // paragraphs, each on one line; the writers wrap them
	options  []option
	examples []string
	run      func(s *streams, a given) int
}

// option is one flag of a command.
type option struct {
	name     string   // without the dashes
	value    string   // what it takes, in capitals or as a choice; "" for a switch
	words    []string // the choice, where it is closed
	fallback string   // what holds when it is not given
	about    string
	files    bool // the value names a file or folder
}

// setOption is the option of every command that reads a frame.
func setOption() option {
	return option{name: "set", value: "name=value", about: "replace a parameter of the description; may be repeated"}
}

func asOption(words ...string) option {
	return option{name: "as", value: strings.Join(words, "|"), words: words, fallback: words[0], about: "how to print (" + words[0] + ")"}
}

const readsFrame = `Without FRAME the built-in sample is used; "-" reads standard input.`

// commands returns the commands in the order of the help screen.
func commands() []command {
	return []command{
		startCommand(), checkCommand(), viewCommand(), drawCommand(), listsCommand(), modelCommand(), schemaCommand(),
		completeCommand(), manualCommand(), versionCommand(), helpCommand(),
	}
}

func commandNamed(name string) (command, bool) {
	for _, c := range commands() {
		if c.name == name {
			return c, true
		}
	}
	return command{}, false
}

func commandNames() []string {
	var names []string
	for _, c := range commands() {
		names = append(names, c.name)
	}
	return names
}

// given is a command line that was read by the table of its command.
type given struct {
	flags *pflag.FlagSet
	rest  []string // operands
}

// text returns the value of an option, its fallback when it was not given.
func (g given) text(name string) string {
	v, _ := g.flags.GetString(name)
	return v
}

// all returns the values of an option that may be repeated.
func (g given) all(name string) []string {
	v, _ := g.flags.GetStringArray(name)
	return v
}

// has reports whether an option was given.
func (g given) has(name string) bool { return g.flags.Changed(name) }

// perform reads the words after a command's name and runs it.
func (c command) perform(s *streams, args []string) int {
	f := pflag.NewFlagSet(c.name, pflag.ContinueOnError)
	f.SetOutput(io.Discard)
	f.Usage = func() {}
	for _, o := range c.options {
		switch {
		case o.name == "set":
			f.StringArray(o.name, nil, "")
		default:
			f.String(o.name, o.fallback, "")
		}
	}
	switch err := f.Parse(args); {
	case err == pflag.ErrHelp:
		s.data([]byte(c.help()))
		return exitDone
	case err != nil:
		return s.refuse("%s; try: pegwright help %s", c.misused(err), c.name)
	}
	g := given{f, f.Args()}
	for _, o := range c.options {
		if len(o.words) > 0 && !slices.Contains(o.words, g.text(o.name)) {
			return s.refuse("--%s is %s, not %s", o.name, anyOf(o.words), plain.Quoted(g.text(o.name)))
		}
	}
	return c.run(s, g)
}

// misused says why the flags of a command line cannot be read.
func (c command) misused(err error) string {
	var unknown *pflag.NotExistError
	var bare *pflag.ValueRequiredError
	switch {
	case errors.As(err, &bare):
		return "--" + bare.GetSpecifiedName() + " wants a value after it"
	case !errors.As(err, &unknown):
		return "these flags cannot be read"
	}
	name, dashes := unknown.GetSpecifiedName(), "--"
	if short := unknown.GetSpecifiedShortnames(); short != "" {
		name, dashes = short, "-"
	}
	var names []string
	for _, o := range c.options {
		names = append(names, o.name)
	}
	text := c.name + " has no flag " + plain.Quoted(dashes+name)
	if best := finding.Nearest(name, names); best != "" {
		text += " (did you mean --" + best + "?)"
	}
	return text
}

// anyOf writes "text or json", "text, csv or json".
func anyOf(words []string) string {
	last := len(words) - 1
	if last == 0 {
		return words[0]
	}
	return strings.Join(words[:last], ", ") + " or " + words[last]
}

// completions are the words that may stand where an operand of a command does,
// beside names of files.
func (c command) completions() []string {
	switch c.name {
	case "lists":
		return list.Names()
	case "help":
		return commandNames()
	case "complete":
		return shells()
	}
	return nil
}

// optionWords are the words that complete an option's value.
func (o option) optionWords() []string {
	if o.name == "from" {
		return samples.Names()
	}
	return o.words
}
