package spec_test

import (
	"fmt"

	"pegwright/geom/spec"
)

// A key that the language does not have is answered with its place and a mend.
func Example() {
	text := "frame: Shed\nunits: in\nrevison: B\nbuilding: {span: 8', bays: [10'], eave: 7'}\n"
	_, faults := spec.Read("shed.yaml", []byte(text), nil)
	fmt.Println(faults[0].At)
	fmt.Println(faults[0].Mend)
	// Output:
	// shed.yaml:3:1
	// did you mean revision?
}
