package main

import (
	"bytes"
	"fmt"
	"strings"
)

// A description on standard input with a slip in it: nothing on the output
// stream, the fault with its place on the error stream, exit code 2.
func Example() {
	description := `frame: Hut
units: in
sectoins: {post: 6 x 6}
building: {span: 8', bays: [10'], eave: 6' 8"}
`
	var out, errs bytes.Buffer
	code := run([]string{"check", "-"}, strings.NewReader(description), &out, &errs)
	fmt.Print(errs.String())
	fmt.Println(out.Len(), code)
	// Output:
	// standard input:3:1: a description has no such key: sectoins
	//      3 | sectoins: {post: 6 x 6}
	//        | ^^^^^^^^
	//    mend: did you mean sections?
	// 0 2
}
