package view_test

import (
	"fmt"

	"pegwright/draw"
	"pegwright/draw/view"
	"pegwright/geom/solid"
	"pegwright/geom/vec"
)

// A box seen from the front is its outline, at a tenth of its size.
func Example() {
	stick := solid.NewBody(solid.Box(vec.V{}, vec.V{X: 300, Y: 100, Z: 150}))
	items := view.Render(view.Front(), []view.Part{{Owner: "stick", Body: stick}}, view.Options{Scale: 0.1})
	b := draw.NoBox()
	for _, it := range items {
		one := draw.ItemBounds(it)
		b = b.With(one.Min, one.Max)
	}
	fmt.Printf("%d lines, %.0f x %.0f\n", len(items), b.W(), b.H())
	// Output:
	// 4 lines, 30 x 15
}
