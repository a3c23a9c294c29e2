package finding_test

import (
	"fmt"

	"pegwright/geom/finding"
)

func Example() {
	words := []string{"post", "plate", "purlin"}
	fmt.Println(finding.Nearest("plat", words))
	fmt.Println(finding.Pos{File: "store.yaml", Line: 12, Col: 3})
	// Output:
	// plate
	// store.yaml:12:3
}
