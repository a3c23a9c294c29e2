package crew_test

import (
	"fmt"

	"pegwright/draw/crew"
)

func Example() {
	words := crew.Join([]func() []string{
		func() []string { return []string{"sill", "post"} },
		func() []string { return []string{"tie"} },
	})
	lengths := make([]int, len(words))
	crew.Each(len(words), func(i int) { lengths[i] = len(words[i]) })
	fmt.Println(words, lengths)
	// Output:
	// [sill post tie] [4 4 3]
}
