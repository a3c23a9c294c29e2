package sheet_test

import (
	"fmt"

	"pegwright/draw/sheet"
	"pegwright/samples/trial"
)

func Example() {
	f, faults := trial.Solve("gate.yaml", trial.Gate)
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
