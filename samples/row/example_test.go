package row_test

import (
	"fmt"

	"pegwright/geom/solve"
	"pegwright/geom/spec"
	"pegwright/samples/row"
)

func Example() {
	d, faults := spec.Read("row.yaml", row.Source(3), nil)
	f, more := solve.Solve(d)
	fmt.Println(len(faults), len(more), len(f.Timbers) == row.Timbers(3))
	fmt.Println(len(f.Timbers), "timbers,", len(f.Joints), "joints")
	d, _ = spec.Read("unlike.yaml", row.Unlike(3, 3), nil)
	f, _ = solve.Solve(d)
	fmt.Println(len(f.Timbers), "timbers,", len(f.Joints), "joints")
	// Output:
	// 0 0 true
	// 19 timbers, 26 joints
	// 19 timbers, 26 joints
}
