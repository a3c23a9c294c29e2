package peg_test

import (
	"fmt"

	"pegwright/geom/peg"
)

// Two holes of 25 mm set off by 7 mm leave an opening 18 mm wide and
// sqrt(25² - 7²) = 24 mm high: a peg's lead must be thinner than that.
func Example() {
	seen := peg.Through(25, 7)
	fmt.Printf("%.0f x %.0f\n", seen.Width, seen.Height)
	// Output: 18 x 24
}
