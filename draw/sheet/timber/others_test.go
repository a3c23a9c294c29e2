package timber

import (
	"testing"

	"pegwright/draw"
	"pegwright/draw/scene"
	"pegwright/draw/sheet/tidy"
	"pegwright/geom"
	"pegwright/samples/trial"
)

// Timber sheets keep their layout in other frames, and tell every cut of every
// timber.
func TestOtherTimbers(t *testing.T) {
	trial.EachOther(t, func(t *testing.T, f *geom.Frame) {
		var sheets []*draw.Sheet
		for _, g := range scene.AllSticks(f) {
			list := Sheets(f, g, nil)
			everyCut(t, g.First(), list)
			sheets = append(sheets, list...)
		}
		tidy.Sheets(t, sheets)
	})
}
