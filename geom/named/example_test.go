package named_test

import (
	"fmt"

	"pegwright/geom/named"
	"pegwright/geom/scheme"
	"pegwright/geom/spec"
	"pegwright/samples/trial"
)

// A gate: a post, a rail and the joint that the description names.
func Example() {
	d, faults := spec.Read("gate.yaml", []byte(trial.Gate), nil)
	if len(faults) > 0 {
		fmt.Println(faults)
		return
	}
	s := scheme.New(d)
	named.Lay(s)
	for _, st := range s.Order {
		fmt.Println(st.Timber.ID, st.Timber.Role)
	}
	for _, p := range s.Pacts {
		fmt.Println(p.ID, "at its", p.End)
	}
	// Output:
	// hanging-post post
	// rail tie
	// rail-into-hanging-post at its start
}
