package joint_test

import (
	"fmt"

	"pegwright/geom/joint"
)

// A tail 100 wide that shrinks by three percent is 3 thinner; with a flare of 1 in
// 7 it slips seven times as far before it bites.
func Example() {
	kind, ok := joint.Lookup("half-dovetail lap")
	fmt.Println(kind.Name, ok)
	fmt.Printf("%.1f\n", joint.Slip(100, 0.03, 7))
	// Output:
	// half-dovetail lap true
	// 21.0
}
