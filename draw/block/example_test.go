package block_test

import (
	"fmt"

	"pegwright/draw/block"
)

// A4 on its side, and the field that is left within the border.
func Example() {
	s, f := block.New("a4", true, "note", "one", block.Title{Frame: "Gate", Sheet: "Rail", Scale: "1:8"})
	fmt.Println(s.W, s.H, f.W() < s.W && f.H() < s.H)
	// Output:
	// 297 210 true
}
