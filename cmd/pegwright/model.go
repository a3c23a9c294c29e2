package main

import "pegwright/geom/model"

const modelUsage = `pegwright model [FRAME.yaml] [--set name=value]

Prints the solved frame as JSON (pegwright-model/1, millimetres): blanks, cuts,
bores, joints and pegs, enough to rebuild every timber in any solid modeller.
Findings go to the error stream. No FRAME: the built-in sample. "-" reads
standard input.

  --set name=value   replace a parameter of the description; may be repeated

  pegwright model store.yaml > store.json
`

func runModel(s *streams, args []string) int {
	f := flags("model")
	sets := frameFlags(f)
	if code, done := s.parse(f, args); done {
		return code
	}
	fr, code := s.load(f.Args(), *sets)
	if fr == nil {
		return code
	}
	out, err := model.JSON(fr.frame, fr.finds)
	if err != nil {
		return s.fail("internal fault: %s", err)
	}
	s.data(out)
	s.errs.Write([]byte(findingsText(fr.finds)))
	return codeFor(fr.finds)
}
