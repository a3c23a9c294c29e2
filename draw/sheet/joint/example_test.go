package joint_test

import (
	"fmt"

	"pegwright/draw/scene"
	"pegwright/draw/sheet/joint"
	"pegwright/samples/trial"
)

func Example() {
	f, faults := trial.Solve("gate.yaml", trial.Gate)
	if len(faults) > 0 {
		fmt.Println(faults)
		return
	}
	for _, g := range scene.Groups(f) {
		for _, s := range joint.Sheets(f, g, nil) {
			fmt.Println(s.ID+":", s.Title)
		}
	}
	// Output:
	// rail-into-hanging-post: Mortise and tenon: I rail into hanging-post
	// rail-into-hanging-post-halves: Mortise and tenon, both halves: I rail into hanging-post
}
