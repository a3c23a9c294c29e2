package drawbore_test

import (
	"fmt"

	"pegwright/draw/scene"
	"pegwright/draw/sheet/drawbore"
	"pegwright/samples/trial"
)

func Example() {
	f, faults := trial.Solve("gate.yaml", trial.Gate)
	if len(faults) > 0 {
		fmt.Println(faults)
		return
	}
	for _, g := range scene.Groups(f) {
		for _, s := range drawbore.Sheets(f, g, nil) {
			fmt.Println(s.ID+":", s.Title)
		}
	}
	// Output:
	// drawbore-rail-into-hanging-post: Drawbore, section through the peg: I  rail-into-hanging-post
	// drawbore-holes-rail-into-hanging-post: Drawbore, holes along the peg: I  rail-into-hanging-post
}
