package strength_test

import (
	"fmt"

	"pegwright/geom/strength"
	"pegwright/samples/trial"
)

// The hole, 1" wide, lies 1 1/2" off the shoulder and so 1 1/2" from the edge of
// the post. That is nearer than published tests ask for (four diameters), so no
// value is given.
func Example() {
	f, faults := trial.Solve("gate.yaml", trial.Gate)
	if len(faults) > 0 {
		fmt.Println(faults)
		return
	}
	c := strength.Of(f, f.Joints[0])
	fmt.Println(c.Pegs, c.Tension)
	fmt.Println(c.Reason)
	// Output:
	// 1 0
	// no reference value: edge 1.5D of 4D
}
