package solid_test

import (
	"fmt"

	"pegwright/geom/solid"
	"pegwright/geom/vec"
)

// A stick of 100 x 100 x 1000 loses a slot of 40 x 100 x 80.
func Example() {
	stick := solid.NewBody(solid.Box(vec.V{}, vec.V{X: 1000, Y: 100, Z: 100}))
	stick.Subtract(solid.Box(vec.V{X: 500, Y: 30, Z: -1}, vec.V{X: 580, Y: 70, Z: 101}), "slot")
	fmt.Printf("%.0f\n", stick.Volume())
	// Output: 9680000
}
