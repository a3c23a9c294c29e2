package templates_test

import (
	"fmt"

	"pegwright/geom/solve"
	"pegwright/geom/spec"
	"pegwright/samples/trial"
	"pegwright/templates"
)

// A hole has a template for the face that the bit enters and one for the face
// where it comes out.
func Example() {
	d, faults := spec.Read("gate.yaml", []byte(trial.Gate), nil)
	if len(faults) > 0 {
		fmt.Println(faults)
		return
	}
	f, faults := solve.Solve(d)
	if len(faults) > 0 {
		fmt.Println(faults)
		return
	}
	for _, s := range templates.Sheets(f, nil) {
		if s.Kind == "hole" {
			fmt.Println(s.ID, s.FullScale)
		}
	}
	// Output:
	// rail-into-hanging-post-near true
	// rail-into-hanging-post-far true
}
