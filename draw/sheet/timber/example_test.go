package timber_test

import (
	"fmt"

	"pegwright/draw/scene"
	"pegwright/draw/sheet/timber"
	"pegwright/samples/trial"
)

func Example() {
	f, faults := trial.Solve("gate.yaml", trial.Gate)
	if len(faults) > 0 {
		fmt.Println(faults)
		return
	}
	for _, g := range scene.AllSticks(f) {
		for _, s := range timber.Sheets(f, g, nil) {
			fmt.Println(s.ID+":", s.Title)
		}
	}
	// Output:
	// timber-hanging-post: Timber: no. 1 hanging-post
	// timber-hanging-post-2: Timber, cuts in order: no. 1 hanging-post
	// timber-rail: Timber: no. 2 rail
	// timber-rail-2: Timber, cuts in order: no. 2 rail
}
