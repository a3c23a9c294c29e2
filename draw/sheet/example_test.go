package sheet_test

import (
	"fmt"

	"pegwright/draw/sheet"
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
	last := ""
	for _, s := range sheet.All(f, nil) {
		if s.Kind != last {
			last = s.Kind
			fmt.Println(s.Kind)
		}
	}
	// Output:
	// cover
	// frame
	// elevation
	// plan
	// list
	// timber
	// joint
	// drawbore
	// raise
	// permit
}
