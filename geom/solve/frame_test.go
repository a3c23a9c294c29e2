package solve_test

import (
	"os"

	"pegwright/geom"
	"pegwright/geom/vec"
)

const inch = 25.4

// long reports whether all cases are asked for, and not only the few of an
// ordinary run: PEGWRIGHT_LONG is set.
func long() bool { return os.Getenv("PEGWRIGHT_LONG") != "" }

// corners returns the corners of a timber's net wood, in the frame.
func corners(tm *geom.Timber) []vec.V {
	var r []vec.V
	for _, c := range tm.Net.Cells() {
		for _, v := range c.V {
			r = append(r, tm.Place.Out(v))
		}
	}
	return r
}
