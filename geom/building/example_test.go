package building_test

import (
	"fmt"

	"pegwright/geom/building"
	"pegwright/geom/scheme"
	"pegwright/geom/spec"
	"pegwright/samples/trial"
)

// A hut of two bents, before any of its joints is cut.
func Example() {
	d, faults := spec.Read("hut.yaml", []byte(trial.Hut("", "")), nil)
	if len(faults) > 0 {
		fmt.Println(faults)
		return
	}
	s := scheme.New(d)
	building.Lay(s)
	for _, st := range s.Order[:7] {
		fmt.Printf("%s %.0f mm\n", st.Timber.ID, st.Hi-st.Lo)
	}
	fmt.Println(s.Pacts[0].ID)
	// Output:
	// post-1-south 2438 mm
	// post-1-north 2438 mm
	// post-2-south 2438 mm
	// post-2-north 2438 mm
	// plate-south 3251 mm
	// plate-north 3251 mm
	// tie-1 3048 mm
	// post-1-south-into-plate-south
}
