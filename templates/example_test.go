package templates_test

import (
	"fmt"

	"pegwright/samples/trial"
	"pegwright/templates"
)

// A hole has a template for the face that the bit enters and one for the face
// where it comes out.
func Example() {
	f, faults := trial.Solve("gate.yaml", trial.Gate)
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
