package main

import (
	"pegwright/cmd/pegwright/plain"
	"pegwright/geom/model"
)

func checkCommand() command {
	return command{name: "check", short: "say what is wrong with the frame, and how to mend it", operands: "[FRAME.yaml]",
		about: "Solves the frame and prints what was found: stops (do not cut), warnings and notes, each with its line of the description, the numbers and how to mend it. " + readsFrame + "\n" +
			"Exit code 0: no stop. 1: at least one stop. 2: the description cannot be used; then the faults go to the error stream.",
		options:  []option{asOption("text", "json"), setOption()},
		examples: []string{"pegwright check store.yaml", `pegwright check store.yaml --set "width=9'" --as json`}, run: runCheck}
}

func runCheck(s *streams, a given) int {
	s.machine = a.text("as") == "json"
	fr, code := s.load(a)
	if fr == nil {
		return code
	}
	if s.machine {
		out, err := model.Findings(fr.finds)
		if err != nil {
			return s.fail("internal fault: %s", err)
		}
		s.data(out)
	} else {
		s.data([]byte(findingsText(pageFor(s.out), fr)))
		if len(a.rest) == 1 && a.rest[0] != "-" && codeFor(fr.finds) == exitDone {
			s.data([]byte("next: pegwright view " + plain.Typed(plain.Visible(a.rest[0])) + ", or pegwright draw\n"))
		}
	}
	return codeFor(fr.finds)
}
