package packet_test

import (
	"fmt"

	"pegwright/draw/packet"
	"pegwright/geom/solve"
	"pegwright/geom/spec"
	"pegwright/samples/trial"
)

func Example() {
	d, faults := spec.Read("gate.yaml", []byte(trial.Gate), nil)
	if len(faults) > 0 {
		fmt.Println(faults)
		return
	}
	f, faults := solve.Solve(d)
	if len(faults) > 0 {
		fmt.Println(faults)
		return
	}
	p, err := packet.Build(packet.Input{Frame: f, Source: []byte(trial.Gate), Name: "gate"})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, file := range p.Files {
		if file.Path == "packet.pdf" || file.Path == "index.html" {
			fmt.Println(file.Path, len(file.Data) > 0)
		}
	}
	// Output:
	// index.html true
	// packet.pdf true
}
