package main

import "pegwright/geom/model"

const checkUsage = `pegwright check [FRAME.yaml] [--as text|json] [--set name=value]

Solves the frame and prints what was found: stops (do not cut), warnings and
notes, each with the numbers and how to mend it. No FRAME: the built-in sample.
"-" reads standard input.

  --as text|json     how to print (text)
  --set name=value   replace a parameter of the description; may be repeated

Exit code 0: no stop. 1: at least one stop. 2: the description cannot be used.

  pegwright check store.yaml
  pegwright check store.yaml --set "width=9'" --as json
`

func runCheck(s *streams, args []string) int {
	f := flags("check")
	as, sets := f.String("as", "text", ""), frameFlags(f)
	if code, done := s.parse(f, args); done {
		return code
	}
	if *as != "text" && *as != "json" {
		return s.refuse("--as is text or json, not %s", quoted(*as))
	}
	fr, code := s.load(f.Args(), *sets)
	if fr == nil {
		return code
	}
	if *as == "json" {
		out, err := model.Findings(fr.finds)
		if err != nil {
			return s.fail("internal fault: %s", err)
		}
		s.data(out)
	} else {
		s.data([]byte(findingsText(fr.finds)))
	}
	return codeFor(fr.finds)
}
