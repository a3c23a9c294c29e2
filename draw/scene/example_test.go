package scene_test

import (
	"fmt"

	"pegwright/draw/scene"
	"pegwright/samples/trial"
)

func Example() {
	f, faults := trial.Solve("gate.yaml", trial.Gate)
	if len(faults) > 0 {
		fmt.Println(faults)
		return
	}
	for _, g := range scene.Groups(f) {
		fmt.Println(g.First().ID, "is drawn for", len(g.Joints))
		for _, p := range scene.Exploded(g.First()) {
			fmt.Println(p.Owner)
		}
	}
	// Output:
	// rail-into-hanging-post is drawn for 1
	// hanging-post
	// rail
	// rail-into-hanging-post-peg-1
	// path
}
