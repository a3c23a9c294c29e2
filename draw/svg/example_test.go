package svg_test

import (
	"encoding/xml"
	"fmt"

	"pegwright/draw"
	"pegwright/draw/svg"
	"pegwright/geom/vec"
)

func Example() {
	s := draw.NewSheet("note", "one", "One line", 210, 297)
	s.Line(draw.Part, vec.P{X: 20, Y: 20}, vec.P{X: 120, Y: 20})
	text, err := svg.Render(s, svg.Options{})
	var root struct {
		Width string `xml:"width,attr"`
		View  string `xml:"viewBox,attr"`
	}
	fmt.Println(err, xml.Unmarshal(text, &root))
	fmt.Println(root.Width, root.View)
	// Output:
	// <nil> <nil>
	// 210mm 0 0 210 297
}
