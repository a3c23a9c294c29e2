package sheet

import (
	"strings"
	"testing"

	"pegwright/draw"
	"pegwright/draw/block"
	"pegwright/draw/dim"
	"pegwright/draw/page"
	"pegwright/draw/scene"
	"pegwright/draw/view"
	"pegwright/geom"
	"pegwright/geom/vec"
	"pegwright/samples/trial"
)

// walker walks along lines of sight through the wood of timbers.
type walker struct {
	timbers []*geom.Timber
	lo, hi  []vec.V // of each timber's wood, timber axes
}

func newWalker(timbers []*geom.Timber) *walker {
	w := &walker{timbers: timbers}
	for _, t := range timbers {
		lo, hi := t.Net.Bounds()
		w.lo, w.hi = append(w.lo, lo), append(w.hi, hi)
	}
	return w
}

// first walks back from the front of a picture in steps of 4 mm and returns the
// id of the first timber whose wood it meets, by the cells of the timbers alone.
func (w *walker) first(cam view.Camera, p vec.P, gone func(vec.V) bool) string {
	near, far := 0.0, 0.0
	for i, t := range w.timbers {
		d := cam.Depth(t.Place.Out(w.lo[i].Lerp(w.hi[i], 0.5)))
		r := w.hi[i].Sub(w.lo[i]).Len()
		near, far = max(near, d+r), min(far, d-r)
	}
	for d := near; d > far; d -= 4 {
		q := cam.Flat(p).Add(cam.Toward.Mul(d))
		if gone(q) {
			continue
		}
		for i, t := range w.timbers {
			if !outside(t.Place.In(q), w.lo[i], w.hi[i]) && scene.WoodAt(t, q) {
				return t.ID
			}
		}
	}
	return ""
}

func outside(q, lo, hi vec.V) bool {
	return q.X < lo.X || q.Y < lo.Y || q.Z < lo.Z || q.X > hi.X || q.Y > hi.Y || q.Z > hi.Z
}

// The places at which a name may point to a timber show that timber's wood: by
// walking along the line of sight.
func TestNamesPointAtTheirWood(t *testing.T) {
	eachSurvey(t, func(t *testing.T, f *geom.Frame, s *survey) {
		p := &surveyPage{survey: s, f: f}
		if !p.measure() {
			t.Fatal("nothing to see")
		}
		gone := func(q vec.V) bool {
			for _, pl := range s.cuts {
				if pl.Height(q) > 0 {
					return true
				}
			}
			return false
		}
		var drawn []*geom.Timber
		for _, part := range s.whole {
			drawn = append(drawn, f.Timber(part.Owner))
		}
		w := newWalker(drawn)
		for _, n := range p.names() {
			if id := w.first(s.cam, n.Spots[0].At.Mul(1/p.k), gone); id != n.Owner {
				t.Errorf("%s points at %q", n.Text, id)
			}
		}
	})
}

// leadFaults tells which leaders of names on a sheet run through a word, cross
// another leader or cross a line of a dimension. The thin lines that lead to
// heights in their column are none of these: a leader may cross one.
func leadFaults(s *draw.Sheet) []string {
	var out []string
	var leads []*draw.Path
	for _, it := range s.Items {
		l, ok := it.(*draw.Path)
		if !ok || !leader(l) {
			continue
		}
		a, b := l.Pts[0], l.Pts[1]
		for _, o := range leads {
			if dim.Cross(a, b, o.Pts[0], o.Pts[1]) {
				out = append(out, s.ID+": the leader of "+l.Owner+" crosses another")
			}
		}
		leads = append(leads, l)
		for _, it := range s.Items {
			switch x := it.(type) {
			case *draw.Text:
				if page.Crosses(a, b, dim.BoxOf(x)) {
					out = append(out, s.ID+": the leader of "+l.Owner+" runs through "+x.S)
				}
			case *draw.Path:
				if x.Class == draw.Dimension && x.Owner == "" && x.Mark != "level" && !x.Closed && crossesPath(a, b, x) {
					out = append(out, s.ID+": the leader of "+l.Owner+" crosses a dimension")
				}
			}
		}
	}
	return out
}

// leader reports whether a line leads from a name to its timber.
func leader(l *draw.Path) bool {
	return l.Class == draw.Dimension && l.Owner != "" && !l.Closed && len(l.Pts) == 2
}

func crossesPath(a, b vec.P, l *draw.Path) bool {
	for i := 1; i < len(l.Pts); i++ {
		if dim.Cross(a, b, l.Pts[i-1], l.Pts[i]) {
			return true
		}
	}
	return false
}

// No leader of a name runs through a word, crosses another leader or crosses a
// line of a dimension.
func TestLeadersRunClear(t *testing.T) {
	f := trial.Sample(t, "cart-barn")
	n := 0
	for _, s := range append(append(Views(f), Apart(f)...), Surveys(f)...) {
		for _, fault := range leadFaults(s) {
			t.Error(fault)
		}
		for _, it := range s.Items {
			if l, ok := it.(*draw.Path); ok && leader(l) {
				n++
			}
		}
	}
	if n < 20 {
		t.Errorf("only %d leaders found", n)
	}
}

// The rules for leaders are in force: each of three faults that are put on a
// sheet is found, and a sheet without them passes.
func TestLeaderRules(t *testing.T) {
	s, _ := block.New("letter", true, "plan", "x", block.Title{Frame: "f", Sheet: "s"})
	lead := func(x0, y0, x1, y1 float64) { s.Line(draw.Dimension, vec.At(x0, y0), vec.At(x1, y1)).Owner = "post" }
	lead(100, 100, 120, 110)
	dim.Stack(s, dim.Below, 90, []dim.Request{{From: vec.At(100, 90), To: vec.At(160, 90), Text: "60"}})
	if got := leadFaults(s); got != nil {
		t.Errorf("a clear sheet: %q", got)
	}
	lead(100, 110, 120, 100)
	lead(150, 100, 150, 78)
	s.Text(vec.At(60, 100), 3, "word")
	lead(55, 101, 90, 101)
	got := strings.Join(leadFaults(s), "\n")
	for _, want := range []string{"crosses another", "crosses a dimension", "runs through word"} {
		if !strings.Contains(got, want) {
			t.Errorf("%q is not found: %s", want, got)
		}
	}
}
