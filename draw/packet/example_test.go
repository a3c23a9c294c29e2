package packet_test

import (
	"fmt"

	"pegwright/draw/packet"
	"pegwright/samples/trial"
)

func Example() {
	f, faults := trial.Solve("gate.yaml", trial.Gate)
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
