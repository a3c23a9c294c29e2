package templates

import (
	"math"
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

// offReference is how far a point of j's receiver lies from the reference face
// that stands square to the entered one.
func offReference(j *geom.Joint, p vec.V) float64 {
	if j.Entered == 1 || j.Entered == 3 {
		return p.Z
	}
	return p.Y
}

// onEntered is a point of j's receiver on a flap: along it from line J, no
// farther than its ends, and off the reference face.
func onEntered(j *geom.Joint, p vec.V) vec.P {
	var main geom.Line
	for _, l := range j.Lines {
		if l.Main {
			main = l
		}
	}
	return vec.P{X: math.Min(math.Max(p.X, 0), j.Into.Length) - main.X, Y: offReference(j, p)}
}

// mouth returns where the edges of the mortise's cut cross the bearing plane.
func mouth(j *geom.Joint) []vec.P {
	var out []vec.P
	pl := solid.PlaneAt(j.Into.Place.In(j.Bearing.N.Mul(j.Bearing.D)), j.Into.Place.InDir(j.Bearing.N))
	for _, c := range j.Into.Cuts {
		if c.Joint != j.ID || c.Name != "mortise" {
			continue
		}
		for _, f := range c.Solid.Faces {
			for k := range f.Loop {
				a, b := c.Solid.V[f.Loop[k]], c.Solid.V[f.Loop[(k+1)%len(f.Loop)]]
				if ha, hb := pl.Height(a), pl.Height(b); ha*hb < 0 || ha == 0 && hb != 0 {
					out = append(out, onEntered(j, a.Lerp(b, ha/(ha-hb))))
				}
			}
		}
	}
	return out
}

// landing returns where the four long arrises of the enterer meet the bearing
// plane: those of its ideal section, or of its own where it is not let in.
func landing(j *geom.Joint) []vec.P {
	size := j.Of.Section
	if j.LetIn > 1e-3 {
		size = j.Of.Ideal
	}
	var out []vec.P
	for i := range 4 {
		a := j.Of.Place.Out(vec.V{Y: size[0] * float64(i&1), Z: size[1] * float64(i>>1)})
		u := j.Of.Place.X
		out = append(out, onEntered(j, j.Into.Place.In(a.Sub(u.Mul(j.Bearing.Height(a)/j.Bearing.N.Dot(u))))))
	}
	return out
}

// holdFlap: the mouth of the mortise against the cut's own edges where they
// cross the bearing plane, and the bearing against the enterer's arrises where
// they meet it.
func holdFlap(t *testing.T, fd found, first, j *geom.Joint) {
	t.Helper()
	reg := fd.lines["line:register:"+first.ID]
	some, want := fd.runs["outline:mouth:"+first.ID], mouth(j)
	if len(some) < 4 || len(want) < 4 {
		t.Fatalf("%s: no mouth, or no cut to hold it against", fd.name)
	}
	into := toward(reg, some[0][0].Add(some[len(some)/2][0]).Mul(0.5)).Unit()
	wood := func(mark string) draw.Box {
		out := draw.NoBox()
		for _, l := range fd.runs[mark+first.ID] {
			out = out.With(fd.onWood(t, first.ID, l[0], into), fd.onWood(t, first.ID, l[1], into))
		}
		return out
	}
	got, exp := wood("outline:mouth:"), draw.NoBox().With(want...)
	agree(t, fd, "mouth, near end", got.Min.X, exp.Min.X)
	agree(t, fd, "mouth, near cheek", got.Min.Y, exp.Min.Y)
	agree(t, fd, "mouth, far end", got.Max.X, exp.Max.X)
	agree(t, fd, "mouth, far cheek", got.Max.Y, exp.Max.Y)
	got, exp = wood("outline:bearing:"), draw.NoBox().With(landing(j)...)
	if got.Min.X < exp.Min.X-promised || got.Max.X > exp.Max.X+promised || got.Min.Y < exp.Min.Y-promised || got.Max.Y > exp.Max.Y+promised {
		t.Errorf("%s: the bearing %v reaches past the enterer %v", fd.name, got, exp)
	}
}

// flat is a plane that stands square to the face of an end pattern: the points
// p with p.X*nx + p.Y*ny = d, in the timber's own measures.
type flat struct {
	nx, ny, d float64
	aslant    bool // of the joint, and neither along nor square to the timber
}

// off is how far the farther end of a line lies from the plane.
func (f flat) off(a, b vec.P) float64 {
	h := func(p vec.P) float64 { return math.Abs(p.X*f.nx + p.Y*f.ny - f.d) }
	return math.Max(h(a), h(b))
}

// flats returns the planes of the blank and of all cuts that stand square to the
// face of the pattern.
func flats(q plan) []flat {
	var out []flat
	add := func(pl solid.Plane, aslant bool) {
		along, square := pl.N.Y, pl.N.Z
		if q.v.face == 1 {
			along, square = pl.N.Z, pl.N.Y
		}
		if math.Abs(square) < 1e-6 {
			out = append(out, flat{pl.N.X, along, pl.D, aslant})
		}
	}
	for _, f := range q.v.t.Blank.Faces {
		add(f.Plane, false)
	}
	for _, c := range q.v.t.Cuts {
		for _, f := range c.Solid.Faces {
			steep := c.Joint == q.joint.ID && math.Abs(f.Plane.N.X) > 0.05 && math.Abs(f.Plane.N.X) < 0.999
			add(f.Plane, steep && (f.Role == geom.RoleShoulder || f.Role == geom.RoleSeat || f.Role == geom.RoleNose))
		}
	}
	return out
}

// endLines returns the full lines of an end pattern in the timber's own
// measures. The pattern lies on one side of the register.
func endLines(t *testing.T, fd found, g, q plan) [][2]vec.P {
	t.Helper()
	var at float64
	for _, p := range q.joint.Places {
		if p.On == q.v.t {
			at = p.X + q.part.from
			break
		}
	}
	var into vec.P
	reg, lines := fd.lines["line:register:"+g.joint.ID], fd.runs["edge:part:"+g.joint.ID]
	for _, l := range lines {
		for _, p := range l {
			if d := toward(reg, p); d.Len() > into.Len() {
				into = d
			}
		}
	}
	var out [][2]vec.P
	for _, l := range lines {
		a, b := fd.onWood(t, g.joint.ID, l[0], into), fd.onWood(t, g.joint.ID, l[1], into)
		a.X, b.X = a.X+at, b.X+at
		out = append(out, [2]vec.P{a, b})
	}
	return out
}

// holdEnd: every full line of the pattern runs along a plane of the blank or of
// a cut that stands square to the face, or along the meeting of two planes; and
// each plane of the joint that is square to the face and aslant has its line.
func holdEnd(t *testing.T, fd found, g, q plan) {
	t.Helper()
	lines, planes := endLines(t, fd, g, q), flats(q)
	for i, l := range lines {
		nearest := math.Inf(1)
		for _, f := range planes {
			nearest = math.Min(nearest, f.off(l[0], l[1]))
		}
		if nearest > promised {
			t.Errorf("%s: line %d from %v to %v lies on no plane of the timber, nearest %v", fd.name, i, l[0], l[1], nearest)
		}
	}
	for _, f := range planes {
		drawn := !f.aslant
		for _, l := range lines {
			drawn = drawn || f.off(l[0], l[1]) <= promised && l[0].Dist(l[1]) > 3
		}
		if !drawn {
			t.Errorf("%s: no line for the plane %v of %s", fd.name, f, q.joint.ID)
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
		// Two thirds of the bore, as the trade tapers them, and thinner than the
		// lens; three quarters in a hole that ends in the wood, where the taper
		// must be short (common practice, no source).
		most := min(size.bore*2/3, size.bore-offsetOf(d.f, size))
		if size.blind {
			most = size.bore * 3 / 4
		}
		if 2*tip > most+promised {
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
		if size.blind {
			continue
		}
		agree(t, fd, "beyond the far face", hi-fd.lines["peg:beyond"][0].X, size.beyond)
	}
}

// offsetOf returns the largest offset of the frame's pegs of a size.
func offsetOf(f *geom.Frame, size pegSize) float64 {
	most := 0.0
	for _, j := range f.Joints {
		for _, p := range j.Pegs {
			if math.Abs(p.Length-size.length) < 0.01 && math.Abs(p.Bore-size.bore) < 0.01 {
				most = max(most, math.Abs(p.Offset))
			}
		}
	}
	return most
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
			want := d.f.Units.FormatJoint(abs(g.v.x0-x)) + " from line " + letterOf(g.kind)
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
