package vec_test

import (
	"fmt"

	"pegwright/geom/vec"
)

// A framing square: 3 along, 4 up, 5 across the corner.
func Example() {
	rafter := vec.V{X: 3, Z: 4}
	fmt.Println(rafter.Len(), rafter.Unit().Z)
	// Output: 5 0.8
}
