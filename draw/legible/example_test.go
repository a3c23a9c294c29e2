package legible_test

import (
	"fmt"

	"pegwright/draw"
	"pegwright/draw/legible"
	"pegwright/geom/vec"
)

func Example() {
	sheet := &draw.Sheet{ID: "note"}
	sheet.Text(vec.P{X: 20, Y: 20}, 1.8, "too small to read")
	field := draw.Box{Max: vec.P{X: 200, Y: 100}}
	for _, fault := range (legible.Rules{Items: field, Words: field, Least: 2.5}).Faults(sheet) {
		fmt.Println(fault)
	}
	// Output:
	// note: "too small to read" is 1.80 mm high
}
