package permit_test

import (
	"fmt"

	"pegwright/draw/scene"
	"pegwright/draw/sheet/permit"
	"pegwright/draw/sheet/plan"
	"pegwright/samples/trial"
)

func Example() {
	f, faults := trial.Solve("gate.yaml", trial.Gate)
	if len(faults) > 0 {
		fmt.Println(faults)
		return
	}
	for _, s := range permit.Sheets(f, plan.Of(f), scene.Groups(f)) {
		fmt.Println(s.ID+":", s.Title)
	}
	// Output:
	// permit-cover: P1 Cover of the permit set
	// permit-view-from-south: P2 Elevation from the south: the whole frame
	// permit-view-from-north: P3 Elevation from the north: the whole frame
	// permit-view-from-west: P4 Elevation from the west: the whole frame
	// permit-view-from-east: P5 Elevation from the east: the whole frame
	// permit-view-from-above: P6 Plan: the whole frame
	// permit-foundation: P7 What the frame stands on: no piers or footings described
	// permit-members: P8 Schedule of timbers: sections as ordered, lengths with tenons
	// permit-details: P9 Joint details: one of each kind, pulled apart
	// permit-joints: P10 Joints and reference values: tension along the timber that enters
	// permit-loads: P11 Uplift and lateral load path: blanks for loads and connectors
	// permit-decisions: P12 Wood and decisions: wood and grade, what is left to decide
}
