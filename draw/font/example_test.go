package font_test

import (
	"fmt"

	"pegwright/draw/font"
)

// Letters of twice the height are twice as wide.
func Example() {
	w := font.Measure("peg", 3.5, false)
	fmt.Printf("%.4f\n", font.Measure("peg", 7, false)/w)
	fmt.Println(len(font.Missing("1 1/2 in")))
	// Output:
	// 2.0000
	// 0
}
