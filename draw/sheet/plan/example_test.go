package plan_test

import (
	"fmt"

	"pegwright/draw/sheet/plan"
	"pegwright/samples/trial"
)

func Example() {
	f, faults := trial.Solve("gate.yaml", trial.Gate)
	if len(faults) > 0 {
		fmt.Println(faults)
		return
	}
	for _, s := range plan.Of(f).Sheets() {
		fmt.Println(s.ID+":", s.Title)
	}
	// Output:
	// view-from-south: Elevation from the south: the whole frame
	// view-from-north: Elevation from the north: the whole frame
	// view-from-west: Elevation from the west: the whole frame
	// view-from-east: Elevation from the east: the whole frame
	// view-from-above: Plan: the whole frame
}
