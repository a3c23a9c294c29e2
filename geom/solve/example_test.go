package solve_test

import (
	"fmt"

	"pegwright/geom/solve"
	"pegwright/geom/spec"
	"pegwright/samples/trial"
)

func Example() {
	d, faults := spec.Read("gate.yaml", []byte(trial.Gate), nil)
	if len(faults) > 0 {
		fmt.Println(faults)
		return
	}
	f, faults := solve.Solve(d)
	if len(faults) > 0 {
		fmt.Println(faults)
		return
	}
	for _, j := range f.Joints {
		fmt.Println(j.Mark, j.ID)
	}
	// Output:
	// I rail-into-hanging-post
}
