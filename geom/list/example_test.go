package list_test

import (
	"fmt"

	"pegwright/geom/list"
)

// A board foot is 144 cubic inches: a 6 x 8 of ten feet holds forty.
func Example() {
	inch := 25.4
	fmt.Printf("%.0f\n", list.BoardFeet([2]float64{6 * inch, 8 * inch}, 120*inch))
	// Output:
	// 40
}
