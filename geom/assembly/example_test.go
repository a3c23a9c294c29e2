package assembly_test

import (
	"fmt"

	"pegwright/geom/assembly"
	"pegwright/geom/solve"
	"pegwright/geom/spec"
)

const railAndPost = `frame: Gate
units: in
timbers:
  hanging-post: {role: post, section: 6 x 6, from: [0, 0, 0], to: [0, 0, 5'], faces: [south, west]}
  rail: {role: tie, section: 6 x 6, from: [0, 6", 4'], to: [0, 6', 4'], faces: [top, west]}
joints:
  - {kind: mortise and tenon, of: rail, end: start, into: hanging-post}
`

// The rail lies north of the post: it goes south into it, and one peg holds it.
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
	steps, stuck := assembly.Plan(f)
	for _, s := range steps {
		fmt.Println(s.Move, s.Onto, s.Direction(), len(s.Pegs))
	}
	fmt.Println(len(stuck))
	// Output:
	// [hanging-post] [] {0 0 -1} 0
	// [rail] [hanging-post] {0 -1 0} 1
	// 0
}
