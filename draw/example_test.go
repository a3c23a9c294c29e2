package draw_test

import (
	"fmt"

	"pegwright/draw"
	"pegwright/geom/vec"
)

// A4 is 210 x 297 mm (ISO 216).
func Example() {
	p, _ := draw.PaperNamed("a4")
	s := draw.NewSheet("note", "one", "One line", p.W, p.H)
	s.Line(draw.Part, vec.P{X: 20, Y: 20}, vec.P{X: 120, Y: 20})
	fmt.Println(s.W, s.H, s.Bounds().W(), s.Valid())
	// Output:
	// 210 297 100 <nil>
}
