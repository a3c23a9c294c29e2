package raise_test

import (
	"fmt"

	"pegwright/draw/sheet/raise"
	"pegwright/samples/trial"
)

func Example() {
	f, faults := trial.Solve("gate.yaml", trial.Gate)
	if len(faults) > 0 {
		fmt.Println(faults)
		return
	}
	for _, s := range raise.Sheets(f) {
		fmt.Println(s.ID+":", s.Title)
	}
	// Output:
	// raise-order: Raising: the order of the work
	// raise-order-2: Raising: the order of the work, page 2
	// raise-step-1: Raising: steps 1 and 2
}
