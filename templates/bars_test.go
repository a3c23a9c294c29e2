package templates

import (
	"math"
	"strings"
	"testing"

	"pegwright/geom"
	"pegwright/geom/vec"
)

// TestBars measures the bars of every sheet and the square of the print check.
// 1 in = 25.4 mm exactly (NIST SP 811).
func TestBars(t *testing.T) {
	want := map[string]vec.P{"bar:mm:x": {X: 100}, "bar:mm:y": {Y: 100}, "bar:in:x": {X: 101.6}, "bar:in:y": {Y: 101.6}}
	for _, d := range all(t) {
		for i, s := range d.sheets {
			for _, fd := range d.read[s.ID] {
				for mark, w := range want {
					l := fd.lines[mark]
					if got := l[1].Sub(l[0]); got.Dist(w) > promised {
						t.Errorf("%s: %s is %v", fd.name, mark, got)
					}
				}
				for _, m := range []string{"bar:diagonal:up", "bar:diagonal:down"} {
					if l := fd.lines[m]; i == 0 {
						agree(t, fd, m, l[0].Dist(l[1]), 100*math.Sqrt2)
					}
				}
			}
		}
	}
}

// TestRelish: the relish that the tenon sheets print is the way from the hole
// along the grain to where it leaves the tenon.
func TestRelish(t *testing.T) {
	for _, d := range all(t) {
		for _, j := range d.f.Joints {
			for _, p := range j.Pegs {
				if p.Exit == 0 || j.Tenon.Empty() || j.OfEnd == geom.Mid && p.Relish == 0 {
					continue // an enterer that runs on has no end behind the hole
				}
				grain := j.Of.Place.X
				if grain.Dot(j.Bearing.N) > 0 {
					grain = grain.Neg()
				}
				way := math.Inf(1)
				for _, f := range j.Tenon.Faces {
					if k := f.Plane.N.Dot(grain); k > 1e-9 {
						way = min(way, -f.Plane.Height(p.Tenon)/k)
					}
				}
				if math.Abs(way-p.Relish) > promised {
					t.Errorf("%s %s: relish %.3f, by the tenon's faces %.3f", d.name, p.ID, p.Relish, way)
				}
				// B is square to the entered face, also where the shoulder slopes.
				if b := -j.Bearing.Height(p.Tenon) / math.Abs(j.Bearing.N.Dot(entered(j))); math.Abs(b-p.B) > promised {
					t.Errorf("%s %s: B %.3f, by the bearing plane %.3f", d.name, p.ID, p.B, b)
				}
			}
		}
	}
}

// entered is the way square out of the face that the enterer comes in through;
// a lap has none, and lands on the plane that it bears on.
func entered(j *geom.Joint) vec.V {
	if j.Broad {
		return j.Bearing.N
	}
	return j.Axes.W
}

// TestMarksNameTheJoint: every hole's mark ends in ids of the frame.
func TestMarksNameTheJoint(t *testing.T) {
	f := sample(t)
	n := 0
	for _, s := range Sheets(f, nil) {
		for _, it := range s.Items {
			m := it.Head().Mark
			if !strings.HasPrefix(m, "hole:") {
				continue
			}
			n++
			p := strings.Split(m, ":")
			if len(p) != 4 || f.Joint(p[2]) == nil {
				t.Errorf("mark %q", m)
			}
		}
	}
	if n == 0 {
		t.Error("no holes")
	}
}

// TestRegisterLinePassesTheHousing: a housing in a reference face takes the
// arris away, so the register line runs at least 3 in past it both ways, and
// the sheet says when to bore.
func TestRegisterLinePassesTheHousing(t *testing.T) {
	n := 0
	for _, d := range all(t) {
		if d.f.Title != "Housed" {
			continue
		}
		j := d.f.Joints[0]
		for _, kind := range []string{"near", "far"} {
			left, right := 0.0, 0.0
			for _, s := range d.sheets {
				if !strings.HasPrefix(s.ID, j.ID+"-"+kind) {
					continue
				}
				n++
				if !strings.Contains(strings.ReplaceAll(textOf(s), "|", " "), "Prick and bore before cutting the housing") {
					t.Errorf("%s does not say when to bore", s.ID)
				}
				lines := d.read[s.ID][0].lines
				reg := lines["line:register:"+j.ID]
				// The housing reaches from one edge of the rail to the other.
				if l, ok := lines["line:joint:"+j.ID]; ok {
					left = max(left, l[0].X-min(reg[0].X, reg[1].X))
				}
				if l, ok := lines["line:other:"+j.ID]; ok {
					right = max(right, max(reg[0].X, reg[1].X)-l[0].X)
				}
			}
			if left < 76.2 || right < 76.2 {
				t.Errorf("%s: the register line runs %.1f and %.1f mm past the housing, want 3 in", kind, left, right)
			}
		}
	}
	if n == 0 {
		t.Error("no sheet was looked at")
	}
}
