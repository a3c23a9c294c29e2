package main

import (
	"slices"
	"strings"

	"pegwright/cmd/pegwright/plain"
	"pegwright/geom/list"
)

func listsCommand() command {
	return command{name: "lists", short: "what to buy, bore and make, as text, CSV or JSON", operands: "[LIST…] [FRAME.yaml]",
		about: "Prints the lists named, or all of them: " + strings.Join(list.Names(), ", ") + ". Findings go to the error stream. Bores and pegs of joints under a stop finding are marked with its number there: do not bore or make these. " + readsFrame + "\n" +
			"As CSV exactly one list is printed, and its lengths are decimal inches or millimetres as headed.",
		options:  []option{asOption("text", "csv", "json"), setOption()},
		examples: []string{"pegwright lists store.yaml", "pegwright lists bores store.yaml --as csv > bores.csv"}, run: runLists}
}

func runLists(s *streams, a given) int {
	as := a.text("as")
	names, rest := listNames(a.rest)
	if as == "csv" && len(names) != 1 {
		return s.refuse("--as csv prints exactly one list: name %s", strings.Join(list.Names(), ", or "))
	}
	if n := len(rest); n > 1 && slices.Contains(list.Names(), rest[n-1]) && exists(rest[0]) {
		return s.refuse("lists come before the frame: pegwright lists %s %s", strings.Join(append(names, rest[1:]...), " "), plain.Typed(rest[0]))
	}
	if len(rest) > 1 {
		return s.refuse("%s is not a list%s; the lists are %s", plain.Quoted(rest[0]), nearest(rest[0], list.Names()), strings.Join(list.Names(), ", "))
	}
	if len(rest) == 1 && nearest(rest[0], list.Names()) != "" && !exists(rest[0]) {
		return s.refuse("%s is neither a file nor a list%s", plain.Quoted(rest[0]), nearest(rest[0], list.Names()))
	}
	a.rest = rest
	fr, code := s.load(a)
	if fr == nil {
		return code
	}
	out, err := printLists(fr, names, as)
	if err != nil {
		return s.fail("internal fault: %s", err)
	}
	s.data(out)
	s.findings(fr)
	return codeFor(fr.finds)
}

// listNames takes the leading names of lists off args, each once.
func listNames(args []string) (names, rest []string) {
	for len(args) > 0 && slices.Contains(list.Names(), args[0]) {
		if !slices.Contains(names, args[0]) {
			names = append(names, args[0])
		}
		args = args[1:]
	}
	return names, args
}

// printLists returns the lists named, all when none is, in the order asked for.
func printLists(fr *solved, names []string, as string) ([]byte, error) {
	if len(names) == 0 {
		names = list.Names()
	}
	all := list.Of(fr.frame, list.Stopped(fr.frame, fr.finds))
	var tables []list.Table
	for _, n := range names {
		if t, ok := list.Find(all, n); ok {
			tables = append(tables, t)
		}
	}
	switch as {
	case "csv":
		return tables[0].CSV(), nil
	case "json":
		return list.JSON(tables)
	}
	var text []string
	for _, t := range tables {
		text = append(text, t.Text())
	}
	return []byte(strings.Join(text, "\n")), nil
}
