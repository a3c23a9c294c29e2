package check_test

import (
	"fmt"

	"pegwright/geom/check"
	"pegwright/geom/finding"
	"pegwright/geom/solve"
	"pegwright/geom/spec"
)

const railAndPost = `frame: Gate
units: in
timbers:
  hanging-post: {role: post, section: 6 x 6, from: [0, 0, 0], to: [0, 0, 5'], faces: [south, west]}
  rail: {role: tie, section: 6 x 6, from: [0, 6", 4'], to: [0, 6', 4'], faces: [top, west]}
joints:
  - {kind: mortise and tenon, of: rail, end: start, into: hanging-post, bore: 1", drawbore: 3/8"}
`

// A softwood receiver is torn by an offset above a quarter of the bore (common
// practice, no source): 3/8" in a bore of 1" must not be cut.
func Example() {
	d, faults := spec.Read("gate.yaml", []byte(railAndPost), nil)
	if len(faults) > 0 {
		fmt.Println(faults)
		return
	}
	f, faults := solve.Solve(d)
	if len(faults) > 0 {
		fmt.Println(faults)
		return
	}
	for _, found := range check.Check(f) {
		if found.Severity == finding.Stop {
			fmt.Println(found.Rule, found.Joints)
		}
	}
	// Output:
	// drawbore [rail-into-hanging-post]
}
