package dim_test

import (
	"fmt"

	"pegwright/draw/dim"
)

// Two labels, each 10 long, want the same place; 2 is left between them, and each
// gives way as far as the other.
func Example() {
	at, ok := dim.Spread([]dim.Want{{At: 50, Size: 10}, {At: 50, Size: 10}}, 2, 0, 100)
	fmt.Println(at, ok)
	// Output:
	// [44 56] true
}
