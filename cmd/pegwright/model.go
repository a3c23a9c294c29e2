package main

import "pegwright/geom/model"

func modelCommand() command {
	return command{name: "model", short: "the solved frame as JSON", operands: "[FRAME.yaml]",
		about:   "Prints the solved frame as JSON (pegwright-model/1, millimetres): blanks, cuts, bores, joints, pegs and the order of assembly, enough to rebuild every timber in any solid modeller. Findings go to the error stream. " + readsFrame,
		options: []option{setOption()}, examples: []string{"pegwright model store.yaml > store.json"}, run: runModel}
}

func runModel(s *streams, a given) int {
	fr, code := s.load(a)
	if fr == nil {
		return code
	}
	out, err := model.JSON(fr.frame, fr.finds)
	if err != nil {
		return s.fail("internal fault: %s", err)
	}
	s.data(out)
	s.findings(fr)
	return codeFor(fr.finds)
}
