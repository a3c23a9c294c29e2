package setout_test

import (
	"fmt"

	"pegwright/draw/setout"
	"pegwright/samples/trial"
)

func Example() {
	f, faults := trial.Solve("gate.yaml", trial.Gate)
	if len(faults) > 0 {
		fmt.Println(faults)
		return
	}
	_, top, _ := setout.Heights(f, "post")
	fmt.Println("tops of posts:", f.Units.Format(top.Hi))
	fmt.Println("45° is", setout.Slope(f.Units, 45))
	// Output:
	// tops of posts: 5'-0"
	// 45° is 12 in 12
}
