package wood_test

import (
	"fmt"

	"pegwright/geom/wood"
)

// Eastern white pine shrinks 6.1 percent along the rings and 2.1 across them,
// green to oven-dry (Wood Handbook, FPL-GTR-282, table 4-3).
func Example() {
	pine, ok := wood.Lookup("white pine")
	fmt.Println(pine.Name, ok)
	fmt.Println(pine.Tangential, pine.Radial)
	// Output:
	// eastern white pine true
	// 6.1 2.1
}
