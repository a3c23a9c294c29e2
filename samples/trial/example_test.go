package trial_test

import (
	"fmt"
	"math/rand/v2"

	"pegwright/samples/trial"
)

// One post, one rail and the joint between them.
func Example() {
	f, faults := trial.Solve("gate.yaml", trial.Gate)
	fmt.Println(len(f.Timbers), len(f.Joints), len(faults))
	// Output:
	// 2 1 0
}

// One source of random numbers gives one building after the other.
func ExampleBuilding() {
	r := rand.New(rand.NewPCG(9, 20260501))
	first, second := trial.Building(r), trial.Building(r)
	again := trial.Building(rand.New(rand.NewPCG(9, 20260501)))
	fmt.Println(first == again, first == second)
	// Output:
	// true false
}
