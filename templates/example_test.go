package templates_test

import (
	"fmt"

	"pegwright/geom/solve"
	"pegwright/geom/spec"
	"pegwright/templates"
)

const gate = `frame: Gate
units: in
timbers:
  hanging-post: {role: post, section: 6 x 6, from: [0, 0, 0], to: [0, 0, 5'], faces: [south, west]}
  rail: {role: tie, section: 6 x 6, from: [0, 6", 4'], to: [0, 6', 4'], faces: [top, west]}
joints:
  - {kind: mortise and tenon, of: rail, end: start, into: hanging-post}
`

// A hole has a template for the face that the bit enters and one for the face
// where it comes out.
func Example() {
	d, faults := spec.Read("gate.yaml", []byte(gate), nil)
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
