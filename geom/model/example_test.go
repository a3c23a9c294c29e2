package model_test

import (
	"encoding/json"
	"fmt"

	"pegwright/geom/model"
	"pegwright/geom/solve"
	"pegwright/geom/spec"
)

const gate = `frame: Gate
units: in
timbers:
  hanging-post: {role: post, section: 6 x 6, from: [0, 0, 0], to: [0, 0, 5'], faces: [south, west]}
  rail: {role: tie, section: 6 x 6, from: [0, 6", 4'], to: [0, 6', 4'], faces: [top, west]}
joints:
  - {kind: mortise and tenon, of: rail, end: start, into: hanging-post}
`

func Example() {
	d, faults := spec.Read("gate.yaml", []byte(gate), nil)
	if len(faults) > 0 {
		fmt.Println(faults)
		return
	}
	f, faults := solve.Solve(d)
	if len(faults) > 0 {
		fmt.Println(faults)
		return
	}
	text, err := model.JSON(f, nil)
	var read struct {
		Format  string
		Timbers []struct{ ID string }
	}
	fmt.Println(err, json.Unmarshal(text, &read))
	fmt.Println(read.Format, read.Timbers)
	// Output:
	// <nil> <nil>
	// pegwright-model/1 [{hanging-post} {rail}]
}
