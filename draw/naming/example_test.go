package naming_test

import (
	"fmt"

	"pegwright/draw/block"
	"pegwright/draw/naming"
	"pegwright/draw/scene"
	"pegwright/draw/view"
	"pegwright/geom/vec"
	"pegwright/samples/trial"
)

func Example() {
	f, faults := trial.Solve("gate.yaml", trial.Gate)
	if len(faults) > 0 {
		fmt.Println(faults)
		return
	}
	const k = 0.05 // 1:20
	sight := naming.NewSight(view.Left(), scene.FrameParts(f))
	s, field := block.ForFrame(f, "elevation", "gate", block.TitleFor(f, "Gate", "from the west", "1:20"))
	middle := field.Mid()
	var names []naming.Name
	for _, t := range f.Timbers {
		spots := naming.MovedSpots(sight.Spots(t, vec.V{}, k), middle)
		names = append(names, naming.Name{Text: t.ID, Owner: t.ID, Spots: spots})
	}
	left := naming.Set(s, field, func(p vec.P) string { return sight.Owner(p.Sub(middle).Mul(1 / k)) }, names)
	fmt.Println(len(names)-len(left), "of", len(names), "timbers are named")
	// Output:
	// 2 of 2 timbers are named
}
