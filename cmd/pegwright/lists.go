package main

import (
	"os"
	"slices"
	"strings"

	"pegwright/geom/list"
)

const listsUsage = `pegwright lists [timbers] [pegs] [bores] [FRAME.yaml] [--as text|csv|json]
                [--set name=value]

Prints the lists named, or all of them. No FRAME: the built-in sample. "-" reads
standard input. Findings go to the error stream. Bores and pegs of joints under
a stop finding are marked with its number there: do not bore or make these.

  --as text|csv|json   how to print (text); csv takes exactly one list, and its
                       lengths are decimal inches or millimetres as headed
  --set name=value     replace a parameter of the description; may be repeated

  pegwright lists store.yaml
  pegwright lists bores store.yaml --as csv > bores.csv
`

func runLists(s *streams, args []string) int {
	f := flags("lists")
	as, sets := f.String("as", "text", ""), frameFlags(f)
	if code, done := s.parse(f, args); done {
		return code
	}
	if !slices.Contains([]string{"text", "csv", "json"}, *as) {
		return s.refuse("--as is text, csv or json, not %s", quoted(*as))
	}
	names, rest := listNames(f.Args())
	if *as == "csv" && len(names) != 1 {
		return s.refuse("--as csv prints exactly one list: name %s", strings.Join(list.Names(), ", or "))
	}
	if len(rest) > 1 {
		return s.refuse("%s is not a list; the lists are %s", quoted(rest[0]), strings.Join(list.Names(), ", "))
	}
	if len(rest) == 1 && nearest(rest[0], list.Names()) != "" && !exists(rest[0]) {
		return s.refuse("%s is neither a file nor a list%s", quoted(rest[0]), nearest(rest[0], list.Names()))
	}
	fr, code := s.load(rest, *sets)
	if fr == nil {
		return code
	}
	out, err := printLists(fr, names, *as)
	if err != nil {
		return s.fail("internal fault: %s", err)
	}
	s.data(out)
	s.errs.Write([]byte(findingsText(fr.finds)))
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

func exists(name string) bool {
	_, err := os.Stat(name)
	return err == nil
}
