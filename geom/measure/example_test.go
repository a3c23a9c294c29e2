package measure_test

import (
	"fmt"

	"pegwright/geom/measure"
)

// 7 ft 6 1/2 in is 90.5 in, and an inch is 25.4 mm exactly (NIST SP 811).
func Example() {
	mm, err := measure.ParseLength(`7' 6 1/2"`, measure.Scope{})
	fmt.Println(mm, err)
	fmt.Println(measure.FeetInches(mm, 16))
	// Output:
	// 2298.7 <nil>
	// 7'-6 1/2"
}
