package check_test

import (
	"fmt"

	"pegwright/geom/check"
	"pegwright/geom/finding"
	"pegwright/samples/trial"
)

// A softwood receiver is torn by an offset above a quarter of the bore (common
// practice, no source): 3/8" in a bore of 1" must not be cut.
func Example() {
	const more = "adjust: [{joints: ties into posts, bore: 1, drawbore: 3/8}]\n"
	f, faults := trial.Solve("gate.yaml", trial.Gate+more)
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
