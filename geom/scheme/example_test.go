package scheme_test

import (
	"fmt"

	"pegwright/geom"
	"pegwright/geom/finding"
	"pegwright/geom/measure"
	"pegwright/geom/scheme"
	"pegwright/geom/spec"
	"pegwright/geom/vec"
)

// Two posts are laid. The second is tried too near the first, and farther off.
func Example() {
	s := scheme.New(&spec.Description{Units: measure.Metric})
	post := func(id string, x float64) {
		l := scheme.Line{At: vec.V{X: x}, Dir: vec.V{Z: 1}, Out1: vec.V{Y: -1}, Out2: vec.V{X: -1}, Size1: 150, Size2: 150}
		s.Add(id, "post", finding.Pos{}, l, 0, 2400, spec.TimberSettings{})
	}
	post("first", 0)
	for _, x := range []float64{100, 400} {
		if why := s.Attempt(50, func() { post("second", x) }); why != "" {
			fmt.Printf("at %g: %s is in the way\n", x, why)
		}
	}
	fmt.Println(len(s.Order), s.Sticks["second"].At(geom.Finish))
	// Output:
	// at 100: first is in the way
	// 2 {400 0 2400}
}
