package assembly_test

import (
	"fmt"

	"pegwright/geom/assembly"
	"pegwright/samples/trial"
)

// The rail lies north of the post: it goes south into it, and one peg holds it.
func Example() {
	f, faults := trial.Solve("gate.yaml", trial.Gate)
	if len(faults) > 0 {
		fmt.Println(faults)
		return
	}
	steps, stuck := assembly.Plan(f)
	for _, s := range steps {
		fmt.Println(s.Move, s.Onto, s.Direction(), len(s.Pegs))
	}
	fmt.Println(len(stuck))
	// Output:
	// [hanging-post] [] {0 0 -1} 0
	// [rail] [hanging-post] {0 -1 0} 1
	// 0
}
