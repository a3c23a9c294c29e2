package geom_test

import (
	"fmt"

	"pegwright/geom"
)

// Faces are numbered round the stick; 1 and 2 are the reference faces.
func Example() {
	fmt.Println(geom.IsReference(1), geom.IsReference(2), geom.IsReference(3))
	fmt.Println(geom.Opposite(1), geom.Opposite(2))
	// Output:
	// true true false
	// 3 4
}
