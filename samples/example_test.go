package samples_test

import (
	"fmt"

	"pegwright/samples"
)

func Example() {
	text, ok := samples.Source(samples.Default())
	fmt.Println(samples.Default(), ok, len(text) > 0)
	// Output:
	// apiary-store true true
}
