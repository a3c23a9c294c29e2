package model_test

import (
	"encoding/json"
	"fmt"

	"pegwright/geom/model"
	"pegwright/samples/trial"
)

func Example() {
	f, faults := trial.Solve("gate.yaml", trial.Gate)
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
