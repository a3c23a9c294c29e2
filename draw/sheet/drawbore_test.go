package sheet

import (
	"testing"

	"pegwright/draw"
	"pegwright/draw/block"
	"pegwright/samples"
)

// drawbores returns the drawbore sheets of every group of a sample, numbered.
func drawbores(t *testing.T, name string) []*draw.Sheet {
	f := solved(t, name)
	var out []*draw.Sheet
	for _, g := range Groups(f) {
		out = append(out, Drawbore(f, g, map[string]int{})...)
	}
	for i, s := range out {
		block.Number(s, i+1, len(out), "0123456789ab")
	}
	return out
}

func TestDrawboreLayout(t *testing.T) {
	for _, name := range samples.Names() {
		sheets := drawbores(t, name)
		write(t, "drawbore-"+name, sheets)
		for _, s := range sheets {
			if err := s.Valid(); err != nil {
				t.Error(err)
			}
			checkLayout(t, s)
		}
	}
}
