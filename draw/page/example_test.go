package page_test

import (
	"fmt"

	"pegwright/draw"
	"pegwright/draw/block"
	"pegwright/draw/page"
)

func Example() {
	next := func(n int) (*draw.Sheet, block.Field) {
		return draw.NewSheet("notes", fmt.Sprintf("notes-%d", n), "Notes", 100, 60), block.Field{X1: 100, Y1: 60}
	}
	w := page.NewFlow(2, next)
	for i := 1; i <= 12; i++ {
		w.Item(fmt.Sprint(i), "Lay out from the reference arris and from the start end.")
	}
	for _, s := range w.Sheets {
		fmt.Println(s.ID, len(s.Items), "texts")
	}
	fmt.Println("rows on each sheet:", page.Breaks([]float64{10, 10, 10, 10, 10}, 20, 40))
	// Output:
	// notes-1 32 texts
	// notes-2 16 texts
	// rows on each sheet: [2 3]
}
