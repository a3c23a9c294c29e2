package sheet

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"pegwright/draw/legible"
	"pegwright/draw/setout"
	"pegwright/draw/sheet/tidy"
	"pegwright/geom"
	"pegwright/geom/finding"
	"pegwright/geom/vec"
	"pegwright/samples"
	"pegwright/samples/trial"
)

// The cover says what an independent count over the frame's data gives: corner
// points of all blanks bound the frame from outside, and for uncut ends from
// inside; pegs and joints are counted here one by one.
func TestCoverSaysTheFacts(t *testing.T) {
	for _, name := range trial.Drawn() {
		f := trial.Sample(t, name)
		text := legible.Words(Cover(f, nil, nil))
		pegs := map[string]int{}
		for _, j := range f.Joints {
			for _, p := range j.Pegs {
				pegs["pegs Ø "+f.Units.PlainJoint(p.Bore)+" x "+f.Units.PlainJoint(p.Length)]++
			}
		}
		flat := strings.Join(strings.Fields(text), " ")
		for k, n := range pegs {
			if !strings.Contains(flat, k) {
				t.Errorf("%s: no %q", name, k)
			}
			if !strings.Contains(flat, fmt.Sprintf("%d + ", n)) {
				t.Errorf("%s: no count %d of %s", name, n, k)
			}
		}
		lo, hi := math.Inf(1), math.Inf(-1)
		for _, b := range f.Timbers {
			for _, v := range b.Blank.V {
				z := b.Place.Out(v).Z
				lo, hi = min(lo, z), max(hi, z)
			}
		}
		_, _, z := setout.Overall(f, "")
		if z > hi-lo+1e-6 || z < (hi-lo)*0.9 {
			t.Errorf("%s: height %v, blanks %v", name, z, hi-lo)
		}
		if !strings.Contains(flat, f.Units.Format(z)) {
			t.Errorf("%s: height %s is not said", name, f.Units.Format(z))
		}
		for _, must := range []string{"Bow, twist and wane are out of scope", "Cautions", "General notes", "Design criteria as stated"} {
			if !strings.Contains(flat, must) {
				t.Errorf("%s: the cover does not say %q", name, must)
			}
		}
		for _, never := range []string{"approved", "Approved", " safe ", "Safe ", "code compliant", "engineered"} {
			if strings.Contains(flat, never) {
				t.Errorf("%s: the cover says %q", name, never)
			}
		}
	}
}

// A box of known size: the closed form of its rotation bounds.
func TestOverallOfARotatedBox(t *testing.T) {
	f := trial.Sample(t, samples.Default())
	f.Timbers = f.Timbers[:1]
	s := f.Timbers[0]
	c, d := math.Cos(0.3), math.Sin(0.3)
	s.Place = vec.Placement{X: vec.V{X: c, Y: d}, Y: vec.V{X: -d, Y: c}, Z: vec.V{Z: 1}}
	lo, hi := s.Net.Bounds()
	l, w := hi.X-lo.X, hi.Y-lo.Y
	x, y, z := setout.Overall(f, "")
	if x > l*c+w*d+1e-6 || y > l*d+w*c+1e-6 || math.Abs(z-(hi.Z-lo.Z)) > 1e-6 || x < l*c {
		t.Errorf("%v x %v x %v for a %v x %v stick", x, y, z, l, w)
	}
}

// Findings keep their numbers: stops first, and the sheets name them by that
// number.
func TestCoverNumbersFindings(t *testing.T) {
	f := trial.Sample(t, samples.Default())
	list := findings(f)
	text := legible.Words(Cover(f, list, nil))
	order := append([]finding.Finding(nil), list...)
	finding.Sort(order)
	at := -1
	for _, x := range order {
		i := strings.Index(text, strings.ToUpper(x.Severity.String())+" "+x.Text[:12])
		if i <= at {
			t.Errorf("%q is out of order", x.Text)
		}
		at = i
	}
}

// Every sheet after the cover stands in the drawing list under its own number
// and the list leads to sheets that exist.
func TestDrawingListIsWhole(t *testing.T) {
	f := trial.Sample(t, samples.Default())
	sheets := All(f, findings(f))
	ids, listed := map[string]int{}, map[int]bool{}
	covers := 0
	for i, s := range sheets {
		if ids[s.ID] != 0 {
			t.Errorf("two sheets are called %q", s.ID)
		}
		ids[s.ID] = i + 1
		if s.Kind == "cover" {
			covers++
		}
	}
	for _, e := range entries(sheets[covers:], covers) {
		if ids[e.ID] != e.N {
			t.Errorf("%q is sheet %d, listed as %d", e.ID, ids[e.ID], e.N)
		}
		for n := e.N; n <= e.To; n++ {
			listed[n] = true
		}
	}
	if len(listed) != len(sheets)-covers {
		t.Errorf("%d sheets listed of %d", len(listed), len(sheets)-covers)
	}
	links := 0
	for _, s := range sheets[:covers] {
		for _, l := range s.Links {
			links++
			if ids[l.To] == 0 {
				t.Errorf("link to %q leads nowhere", l.To)
			}
		}
	}
	if links == 0 {
		t.Error("no links")
	}
}

// Every cell of every list is on the list sheets.
func TestListsAreWhole(t *testing.T) {
	for _, name := range trial.Drawn() {
		f := trial.Sample(t, name)
		text := legible.Words(Lists(f, nil))
		bores := 0
		for _, s := range f.Timbers {
			bores += len(s.Bores)
			if !strings.Contains(text, s.ID) {
				t.Errorf("%s: no timber %s", name, s.ID)
			}
		}
		n := 0
		for _, r := range setRows(Lists(f, nil)) {
			if r.list == "Bores" {
				n += len(r.names)
			}
		}
		if n != bores {
			t.Errorf("%s: %d rows of bores, %d bores in the frame", name, n, bores)
		}
	}
}

// Every timber is named on a frame view, also where there are far more than one
// lane holds.
func TestEveryTimberIsNamedInAView(t *testing.T) {
	f := trial.Sample(t, samples.Default())
	few := f.Timbers
	for n := 2; n < 9; n++ {
		for _, b := range few {
			c := *b
			c.ID = fmt.Sprintf("%s-copy-%d", b.ID, n)
			c.Place.O = c.Place.O.Add(vec.V{X: float64(n) * 4000})
			f.Timbers = append(f.Timbers, &c)
		}
	}
	sheets := Views(f)
	text := "\n" + legible.Words(sheets)
	for _, b := range f.Timbers {
		if strings.Count(text, "\n"+b.ID+"\n") != 1 {
			t.Errorf("%s is named %d times", b.ID, strings.Count(text, "\n"+b.ID+"\n"))
		}
	}
	for _, s := range sheets {
		tidy.Check(t, s)
	}
}

// The cover tells the pitch and the eave that the store's description asks for,
// and a tie's height counted from the corner points of the blanks.
func TestCoverTellsTheLevels(t *testing.T) {
	f := trial.Sample(t, "apiary-store")
	text := legible.Line(Cover(f, nil, func(int) []Entry { return []Entry{{N: 2, To: 2, Title: "x", ID: "x"}} }))
	z := func(role string) (lo, hi float64) {
		lo, hi = math.Inf(1), math.Inf(-1)
		for _, b := range f.Timbers {
			for _, v := range b.Blank.V {
				if b.Role == role {
					lo, hi = min(lo, b.Place.Out(v).Z), max(hi, b.Place.Out(v).Z)
				}
			}
		}
		return lo, hi
	}
	_, sill := z("sill")
	under, top := z("tie")
	for _, s := range []string{"9 in 12 (36.9°)", "heights over the sills", "eave, plate top 6'-8\"", "tie, top " + f.Units.Format(top-sill),
		"tie, underside " + f.Units.Format(under-sill), "full-size templates, in templates.pdf, print check first"} {
		if !strings.Contains(text, s) {
			t.Errorf("the cover does not tell %q", s)
		}
	}
	for _, name := range trial.Drawn() {
		f := trial.Sample(t, name)
		var kept []*geom.Timber
		for _, b := range f.Timbers {
			if !strings.HasSuffix(b.Role, "rafter") && b.Role != "plate" && b.Role != "tie" {
				kept = append(kept, b)
			}
		}
		f.Timbers = kept
		bare := legible.Words(Cover(f, nil, nil))
		for _, s := range []string{"roof pitch", "eave, plate", "tie, top"} {
			if strings.Contains(bare, s) {
				t.Errorf("%s: %q of a frame that has none", name, s)
			}
		}
	}
}
