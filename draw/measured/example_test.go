package measured_test

import (
	"fmt"

	"pegwright/draw/measured"
)

func Example() {
	page, err := measured.SVG([]byte(`<svg xmlns="http://www.w3.org/2000/svg" width="210mm" height="297mm" viewBox="0 0 210 297">
<circle cx="100" cy="97" r="12.5" fill="none" stroke="#000" stroke-width="0.35"/>
</svg>`))
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, c := range page.Circles { // millimetres from the lower left corner
		fmt.Printf("%.1f, %.1f: radius %.1f\n", c.C.X, c.C.Y, c.R)
	}
	// Output:
	// 100.0, 200.0: radius 12.5
}
