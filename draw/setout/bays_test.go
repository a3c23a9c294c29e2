package setout

import (
	"fmt"
	"math"
	"slices"
	"testing"
)

// Parts of a row of bays, by counting: every bay is in one part, in order, none has
// more than one bay more than another and those with more come first; only the two
// ends of the building have nothing beyond them.
func TestInBays(t *testing.T) {
	const bays, pitch, beyond = 7, 3000.0, 400.0
	var lines []Line
	for i := range bays + 1 {
		lines = append(lines, Line{fmt.Sprint(i + 1), float64(i) * pitch})
	}
	shuffled := slices.Clone(lines)
	slices.Reverse(shuffled)
	for n := 1; n <= bays; n++ {
		list := InBays(shuffled, beyond, n)
		if len(list) != n {
			t.Fatalf("%d parts, want %d", len(list), n)
		}
		at, most := 0.0, bays
		for i, x := range list {
			has := int(math.Round((x.Last.At - x.First.At) / pitch))
			if x.First.At != at || has < bays/n || has > most || x.N != i+1 || x.Of != n {
				t.Errorf("in %d: part %d from %s to %s", n, x.N, x.First.Name, x.Last.Name)
			}
			at, most = x.Last.At, has
			lo, hi := x.First.At-beyond, x.Last.At+beyond
			if i == 0 {
				lo = math.Inf(-1)
			}
			if i == n-1 {
				hi = math.Inf(1)
			}
			if x.Lo != lo || x.Hi != hi || x.Open != [2]bool{i > 0, i < n-1} {
				t.Errorf("in %d: part %d shows %g to %g, open %v", n, x.N, x.Lo, x.Hi, x.Open)
			}
		}
		if at != bays*pitch {
			t.Errorf("in %d: the parts end at %g", n, at)
		}
	}
}

// Dimensions between grid lines, by hand: each space, all of more than one, and from
// outside to outside where that is more than the grid.
func TestGridDims(t *testing.T) {
	at := func(xs ...float64) []Line {
		var out []Line
		for _, x := range xs {
			out = append(out, Line{At: x})
		}
		return out
	}
	for name, c := range map[string]struct {
		lines  []Line
		lo, hi float64
		want   []Stretch
	}{
		"two lines at the ends": {at(0, 3000), 0, 3000, []Stretch{{0, 3000, 0, ""}}},
		"within a millimetre":   {at(0, 3000), -0.5, 3000.5, []Stretch{{0, 3000, 0, ""}}},
		"three, overhanging":    {at(4000, 0, 1000), -300, 4300, []Stretch{{0, 1000, 0, ""}, {1000, 4000, 0, ""}, {0, 4000, 0, ""}, {-300, 4300, 0, ""}}},
		"none":                  {nil, 0, 500, []Stretch{{0, 500, 0, ""}}},
	} {
		if got := GridDims(c.lines, c.lo, c.hi); !slices.Equal(got, c.want) {
			t.Errorf("%s: %v, want %v", name, got, c.want)
		}
	}
}
