package plan

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"pegwright/draw"
	"pegwright/draw/sheet/tidy"
	"pegwright/samples/trial"
)

// byView puts the sheets of a view and of its parts together.
func byView(sheets []*draw.Sheet) map[string][]*draw.Sheet {
	out := map[string][]*draw.Sheet{}
	for _, s := range sheets {
		id, _, _ := strings.Cut(s.ID, "-part-")
		out[id] = append(out[id], s)
	}
	return out
}

// scaleOn reads n of the scale 1:n in a sheet's title block.
func scaleOn(s *draw.Sheet) float64 {
	for _, it := range s.Items {
		if x, ok := it.(*draw.Text); ok {
			if _, n, ok := strings.Cut(x.S, "1:"); ok {
				v, _ := strconv.ParseFloat(n, 64)
				return v
			}
		}
	}
	return 0
}

// A long wall on small paper is drawn whole without names and then in parts: no
// part is under 1/4 in to the foot, all are at one scale, each follows the other
// at a match line that both name, and every timber of the wall is named in the
// part that the overview's table says. No sheet has names alone.
func TestALongWallIsDrawnInParts(t *testing.T) {
	f := trial.LongBarn(t, "letter")
	for _, id := range []string{"wall-south", "wall-north"} {
		list := byView(Of(f).Sheets())[id]
		if len(list) < 3 {
			t.Fatalf("%s takes %d sheets", id, len(list))
		}
		over := tidy.TextsOn(list[:1], "")
		if strings.Contains(over, "\npost-") || scaleOn(list[0]) <= 48 {
			t.Errorf("%s: the overview names timbers or is at 1:%.0f", id, scaleOn(list[0]))
		}
		table := strings.ReplaceAll(over, "\n", " ")
		parts := list[1:]
		for i, s := range parts {
			words := tidy.TextsOn([]*draw.Sheet{s}, "")
			if n := scaleOn(s); n < 1 || n > 48 || n != scaleOn(parts[0]) {
				t.Errorf("%s: at 1:%.0f", s.ID, n)
			}
			for _, k := range []int{i, i + 2} {
				if want := k >= 1 && k <= len(parts); strings.Contains(words, fmt.Sprintf("\nsee part %d\n", k)) != want {
					t.Errorf("%s: match line with part %d: not %v", s.ID, k, want)
				}
			}
			_, row, _ := strings.Cut(table, fmt.Sprintf("Part %d, ", i+1))
			row, _, _ = strings.Cut(row, " Part ")
			for _, x := range f.Timbers {
				if strings.Contains(words, "\n"+x.ID+"\n") != regexp.MustCompile(`[ ,:]`+x.ID+`(,| |$)`).MatchString(row+" ") {
					t.Errorf("%s: %s on the sheet and in the table %q differ", s.ID, x.ID, row)
				}
			}
		}
		for _, x := range f.Timbers {
			if x.Wall == strings.TrimPrefix(id, "wall-") && !strings.Contains(tidy.TextsOn(parts, ""), "\n"+x.ID+"\n") {
				t.Errorf("%s: %s is named on no part", id, x.ID)
			}
		}
	}
}

// A building that its paper holds with all names at no less than the least scale
// is not parted: every view of the cart barn takes one sheet.
func TestAShortWallStaysWhole(t *testing.T) {
	f := trial.Sample(t, "cart-barn")
	for id, list := range byView(Of(f).Sheets()) {
		if len(list) != 1 {
			t.Errorf("%s takes %d sheets", id, len(list))
		}
	}
}

// The parts of a view keep the layout, no two neighbours leave a bay out, and
// their bay dimensions add up to the building's length: the frame's own bays.
func TestPartsCoverTheBuilding(t *testing.T) {
	for _, paper := range []string{"letter", "a4", "tabloid"} {
		f := trial.LongBarn(t, paper)
		for _, v := range surveys(f) {
			if len(v.stations) < 3 {
				continue
			}
			for n := 2; n < len(v.stations); n++ {
				sum := 0.0
				list := v.inBays(n)
				for i, x := range list {
					sum += x.Last.At - x.First.At
					if i > 0 && list[i-1].Last != x.First {
						t.Errorf("%s in %d: part %d begins at %s", v.id, n, x.N, x.First.Name)
					}
				}
				if math.Abs(sum-7*12*304.8) > 1 { // 7 bays of 12 ft, bent line to bent line
					t.Errorf("%s in %d: %.0f mm", v.id, n, sum)
				}
			}
		}
		for _, s := range Of(f).Sheets() {
			tidy.Check(t, s)
			if _, faults := tidy.Leaders(s); len(faults) > 0 {
				t.Error(strings.Join(faults, "\n"))
			}
		}
	}
}
