package hide_test

import (
	"fmt"

	"pegwright/draw/hide"
	"pegwright/geom/vec"
)

// Two pieces of one line that overlap are drawn as one.
func Example() {
	lines := hide.Merge([]hide.Line{{A: vec.P{}, B: vec.P{X: 60}}, {A: vec.P{X: 40}, B: vec.P{X: 100}}}, 1e-3)
	fmt.Println(len(lines), lines[0].A.Dist(lines[0].B))
	// Output:
	// 1 100
}
