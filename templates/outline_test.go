package templates

import (
	"math"
	"sort"
	"strconv"
	"strings"
	"testing"

	"pegwright/draw"
	"pegwright/geom"
	"pegwright/geom/measure"
	"pegwright/geom/solid"
	"pegwright/geom/vec"
)

// onWood returns a point of the sheet in the timber's own measures: how far it
// lies from line J toward the end away from the start, and how far from the
// register arris into the timber.
func (fd found) onWood(t *testing.T, joint string, p vec.P, into vec.P) vec.P {
	t.Helper()
	start := fd.lines["arrow:start"]
	away := start[1].Sub(start[0]).Unit()
	if start[0] == start[1] { // a line drawn from the tail to the head
		t.Fatalf("%s: no arrow to the start", fd.name)
	}
	l, r := fd.lines["line:joint:"+joint], fd.lines["line:register:"+joint]
	x := math.Copysign(fd.off(t, "line:joint:"+joint, p), toward(l, p).Dot(away))
	y := math.Copysign(fd.off(t, "line:register:"+joint, p), toward(r, p).Dot(into))
	return vec.P{X: x, Y: y}
}

// holdFlap: the mouth of the mortise against the cut's own edges where they
// cross the bearing plane, and the bearing against the enterer's arrises where
// they meet it.
func holdFlap(t *testing.T, fd found, first, j *geom.Joint) {
	t.Helper()
	var main geom.Line
	for _, l := range j.Lines {
		if l.Main {
			main = l
		}
	}
	off := func(p vec.V) float64 { // from the reference face square to the entered one
		if j.Entered == 1 || j.Entered == 3 {
			return p.Z
		}
		return p.Y
	}
	var want []vec.P
	for _, c := range j.Into.Cuts {
		if c.Joint != j.ID || c.Name != "mortise" {
			continue
		}
		pl := solid.PlaneAt(j.Into.Place.In(j.Bearing.N.Mul(j.Bearing.D)), j.Into.Place.InDir(j.Bearing.N))
		for _, f := range c.Solid.Faces {
			for k := range f.Loop {
				a, b := c.Solid.V[f.Loop[k]], c.Solid.V[f.Loop[(k+1)%len(f.Loop)]]
				if ha, hb := pl.Height(a), pl.Height(b); ha*hb < 0 || ha == 0 && hb != 0 {
					q := a.Lerp(b, ha/(ha-hb))
					x := math.Min(math.Max(q.X, 0), j.Into.Length)
					want = append(want, vec.P{X: x - main.X, Y: off(q)})
				}
			}
		}
	}
	box := func(pts []vec.P) [4]float64 {
		b := [4]float64{math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)}
		for _, p := range pts {
			b = [4]float64{math.Min(b[0], p.X), math.Min(b[1], p.Y), math.Max(b[2], p.X), math.Max(b[3], p.Y)}
		}
		return b
	}
	reg := fd.lines["line:register:"+first.ID]
	some := fd.runs["outline:mouth:"+first.ID]
	if len(some) < 4 || len(want) < 4 {
		t.Fatalf("%s: no mouth, or no cut to hold it against", fd.name)
	}
	into := toward(reg, some[0][0].Add(some[len(some)/2][0]).Mul(0.5)).Unit()
	wood := func(mark string) []vec.P {
		var out []vec.P
		for _, l := range fd.runs[mark+first.ID] {
			out = append(out, fd.onWood(t, first.ID, l[0], into), fd.onWood(t, first.ID, l[1], into))
		}
		return out
	}
	got, exp := box(wood("outline:mouth:")), box(want)
	for i, what := range []string{"near end", "near cheek", "far end", "far cheek"} {
		agree(t, fd, "mouth, "+what, got[i], exp[i])
	}
	var land []vec.P
	for i := range 4 {
		// One of the four long arrises of the enterer's ideal section.
		size := j.Of.Section // an end that is not let in keeps its own section
		if j.LetIn > 1e-3 {
			size = j.Of.Ideal
		}
		a := j.Of.Place.Out(vec.V{Y: size[0] * float64(i&1), Z: size[1] * float64(i>>1)})
		u := j.Of.Place.X
		q := j.Into.Place.In(a.Sub(u.Mul(j.Bearing.Height(a) / j.Bearing.N.Dot(u))))
		land = append(land, vec.P{X: math.Min(math.Max(q.X, 0), j.Into.Length) - main.X, Y: off(q)})
	}
	got, exp = box(wood("outline:bearing:")), box(land)
	if got[0] < exp[0]-promised || got[2] > exp[2]+promised || got[1] < exp[1]-promised || got[3] > exp[3]+promised {
		t.Errorf("%s: the bearing %v reaches past the enterer %v", fd.name, got, exp)
	}
}

// holdEnd: every full line of the pattern runs along a plane of the blank or of
// a cut that stands square to the face, or along the meeting of two planes; and
// each plane of the joint that is square to the face and aslant has its line.
func holdEnd(t *testing.T, fd found, g, q plan) {
	t.Helper()
	tm := q.v.t
	across := func(n vec.V) (float64, bool) { // the normal's part along the face's y, and whether the plane is square to the face
		if q.v.face == 1 {
			return n.Z, math.Abs(n.Y) < 1e-6
		}
		return n.Y, math.Abs(n.Z) < 1e-6
	}
	var at float64
	for _, p := range q.joint.Places {
		if p.On == tm {
			at = p.X + q.part.from
			break
		}
	}
	var into vec.P
	reg := fd.lines["line:register:"+g.joint.ID]
	lines := fd.runs["edge:part:"+g.joint.ID]
	for _, l := range lines { // the pattern lies on one side of the register
		for _, p := range l {
			if d := toward(reg, p); d.Len() > into.Len() {
				into = d
			}
		}
	}
	type flat struct {
		pl     solid.Plane
		aslant bool
	}
	var flats []flat
	for _, f := range tm.Blank.Faces {
		flats = append(flats, flat{f.Plane, false})
	}
	for _, c := range tm.Cuts {
		for _, f := range c.Solid.Faces {
			steep := c.Joint == q.joint.ID && f.Role != "" && f.Role != geom.RoleReduced && math.Abs(f.Plane.N.X) > 0.05 && math.Abs(f.Plane.N.X) < 0.999
			flats = append(flats, flat{f.Plane, steep && (f.Role == geom.RoleShoulder || f.Role == geom.RoleSeat || f.Role == geom.RoleNose)})
		}
	}
	for i, l := range lines {
		a, b := fd.onWood(t, g.joint.ID, l[0], into), fd.onWood(t, g.joint.ID, l[1], into)
		var gaps []float64
		for _, f := range flats {
			if ny, ok := across(f.pl.N); ok {
				h := func(p vec.P) float64 { return math.Abs((p.X+at)*f.pl.N.X + p.Y*ny - f.pl.D) }
				gaps = append(gaps, math.Max(h(a), h(b)))
			}
		}
		sort.Float64s(gaps)
		if len(gaps) == 0 || gaps[0] > promised {
			t.Errorf("%s: line %d from %v to %v lies on no plane of the timber, nearest %v", fd.name, i, a, b, gaps[:min(2, len(gaps))])
		}
	}
	for _, f := range flats {
		ny, ok := across(f.pl.N)
		if !ok || !f.aslant {
			continue
		}
		drawn := false
		for _, l := range lines {
			a, b := fd.onWood(t, g.joint.ID, l[0], into), fd.onWood(t, g.joint.ID, l[1], into)
			h := func(p vec.P) float64 { return math.Abs((p.X+at)*f.pl.N.X + p.Y*ny - f.pl.D) }
			drawn = drawn || math.Max(h(a), h(b)) <= promised && a.Dist(b) > 3
		}
		if !drawn {
			t.Errorf("%s: no line for the plane %v of %s", fd.name, f.pl, q.joint.ID)
		}
	}
}

// TestPegPatterns measures the peg patterns against the pegs of the joints and
// the geometry of a regular octagon: eight equal sides, opposite ones the flats
// apart, and square stock of that side.
func TestPegPatterns(t *testing.T) {
	for _, d := range all(t) {
		seen := map[string]bool{}
		for _, j := range d.f.Joints {
			for _, p := range j.Pegs {
				for _, size := range d.pegs {
					if math.Abs(size.length-p.Length) < 0.01 && math.Abs(size.bore-p.Bore) < 0.01 && math.Abs(size.head-p.Head) < 0.01 && math.Abs(size.beyond-p.Lead) < 0.01 {
						seen[p.ID] = true
					}
				}
				if !seen[p.ID] {
					t.Errorf("%s: no pattern for %s", d.name, p.ID)
				}
			}
		}
		for i, size := range d.pegs {
			holdPeg(t, d, i+1, size)
		}
	}
}

func holdPeg(t *testing.T, d drawn, n int, size pegSize) {
	t.Helper()
	id := "peg-" + string(rune('0'+n))
	read := d.read[id]
	if n > 9 {
		t.Fatalf("%s: more sizes of peg than this test can name", d.name)
	}
	if read == nil {
		read = joined(t, d.read, id+"-tile-")
	}
	for _, fd := range read {
		lo, hi, r, tip := math.Inf(1), math.Inf(-1), 0.0, math.Inf(1)
		var mid float64
		for _, l := range fd.runs["peg:outline"] {
			for _, p := range l {
				lo, hi, mid = math.Min(lo, p.X), math.Max(hi, p.X), mid+p.Y/float64(2*len(fd.runs["peg:outline"]))
			}
		}
		for _, l := range fd.runs["peg:outline"] {
			for _, p := range l {
				r = math.Max(r, math.Abs(p.Y-mid))
				if hi-p.X < 0.05 {
					tip = math.Min(tip, math.Abs(p.Y-mid))
				}
			}
		}
		left := 0.0
		if gap := fd.runs["peg:break"]; len(gap) == 2 { // a stretch is left out, as long as the sheet says
			left = leftOut(t, d, id) - math.Abs(gap[0][0].X-gap[1][0].X)
		}
		agree(t, fd, "length of the peg", hi-lo+left, size.length)
		if r*2 < 0.97*size.bore-promised || r*2 > 0.99*size.bore+promised {
			t.Errorf("%s: %.3f mm across the flats in a bore of %.3f", fd.name, 2*r, size.bore)
		}
		if 2*tip > size.bore*2/3+promised || 2*tip > size.bore-size.offset {
			t.Errorf("%s: a tip of %.3f mm", fd.name, 2*tip)
		}
		eight := fd.runs["peg:octagon"]
		if len(eight) < 8 {
			t.Fatalf("%s: %d sides", fd.name, len(eight))
		}
		for k := range 4 {
			a, b := eight[k], eight[k+4]
			agree(t, fd, "across the flats", a[1].Sub(a[0]).Unit().Cross(b[0].Sub(a[0])), 2*r)
			agree(t, fd, "side of the octagon", a[0].Dist(a[1]), b[0].Dist(b[1]))
			agree(t, fd, "side of the octagon", a[0].Dist(a[1]), eight[0][0].Dist(eight[0][1]))
		}
		sq := fd.runs["peg:square"]
		agree(t, fd, "square stock", sq[0][0].Dist(sq[0][1]), 2*r)
		agree(t, fd, "head", fd.lines["peg:head"][0].X-lo, size.head)
		agree(t, fd, "beyond the far face", hi-fd.lines["peg:beyond"][0].X, size.beyond)
	}
}

// TestLongEndsComeInParts: an end pattern that would be taped from many pages
// comes in parts; every corner of the joint lies in one of them, which the
// measuring test holds against the cuts, and each says how far its line lies
// from line J: the difference of two places in the timber's own axes.
func TestLongEndsComeInParts(t *testing.T) {
	seen := 0
	for _, d := range all(t) {
		for _, g := range d.groups {
			if g.kind != "end" || g.part.of == 0 {
				continue
			}
			seen++
			_, word := g.title()
			id := g.joint.ID + "-" + word
			if d.read[id] == nil {
				id += "-tile-1"
			}
			text := flow(d.sheets, id)
			x, _, _ := endPlace(g.joint, g.v.t)
			want := d.f.Units.FormatJoint(abs(g.v.x0-x)) + " from line J"
			if g.v.x0 != x && !strings.Contains(text, want) {
				t.Errorf("%s %s does not say %q", d.name, id, want)
			}
			for _, e := range g.v.t.Net.Edges() {
				for _, tag := range e.Tags {
					if tag.Joint == g.joint.ID && !(shown(d.groups, g, e.A.X) && shown(d.groups, g, e.B.X)) {
						t.Errorf("%s %s: no part shows the corner at %.1f or %.1f", d.name, id, e.A.X, e.B.X)
					}
				}
			}
		}
	}
	if seen < 4 {
		t.Errorf("%d parts", seen)
	}
}

// shown reports whether a part of the same pattern shows the place x along its
// timber.
func shown(groups []plan, g plan, x float64) bool {
	for _, p := range groups {
		b := draw.NoBox().With(p.need...)
		if p.joint == g.joint && p.v.t == g.v.t && p.kind == "end" && x > p.v.x0+b.Min.X-same && x < p.v.x0+b.Max.X+same {
			return true
		}
	}
	return false
}

// leftOut reads from a peg pattern how long the stretch is that it leaves out.
func leftOut(t *testing.T, d drawn, id string) float64 {
	t.Helper()
	for _, s := range d.sheets {
		for _, it := range s.Items {
			x, ok := it.(*draw.Text)
			if !ok || s.ID != id {
				continue
			}
			if said, ok := strings.CutSuffix(x.S, " left out"); ok {
				n, err := strconv.ParseFloat(strings.TrimSuffix(said, "\""), 64)
				if err != nil {
					t.Fatal(err)
				}
				if d.f.Units != measure.Metric {
					n *= 25.4
				}
				return n
			}
		}
	}
	t.Fatalf("%s does not say what it leaves out", id)
	return 0
}
