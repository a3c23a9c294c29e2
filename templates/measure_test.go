package templates

import (
	"math"
	"slices"
	"testing"

	"pegwright/geom"
	"pegwright/geom/vec"
)

// within 0.02 mm: the accuracy that is promised for 1:1 sheets.
const promised = 0.02

// TestPlacesInTheRenderedFiles measures every template of every sample in the
// SVG and in the PDF (read by PDFium) and holds it against the bores of the
// timbers and the planes of the joints. Nothing of the layout is used: each
// expected number comes from the frame, in timber or frame axes.
func TestPlacesInTheRenderedFiles(t *testing.T) {
	for _, d := range all(t) {
		d.holdAll(t)
	}
}

// holdAll measures every template of a frame.
func (d drawn) holdAll(t *testing.T) {
	t.Helper()
	for _, g := range d.groups {
		_, word := g.title()
		id := g.joint.ID + "-" + word
		read := d.read[id]
		if read == nil {
			read = joined(t, d.read, id+"-tile-")
		}
		for _, fd := range read {
			for _, q := range g.serves {
				holdAgainstFrame(t, fd, g, q)
			}
		}
	}
	if len(d.groups) == 0 {
		t.Errorf("%s has no templates", d.name)
	}
}

// boreOf returns the bore of a peg in a timber.
func boreOf(t *testing.T, tm *geom.Timber, joint, peg string) geom.Bore {
	t.Helper()
	for _, b := range tm.Bores {
		if b.Joint == joint && b.Peg == peg {
			return b
		}
	}
	t.Fatalf("%s has no bore of %s", tm.ID, peg)
	return geom.Bore{}
}

// holdAgainstFrame measures the sheet of group g for the joint of plan q.
func holdAgainstFrame(t *testing.T, fd found, g, q plan) {
	t.Helper()
	switch q.kind {
	case "flap":
		holdFlap(t, fd, g.joint, q.joint)
		return
	case "end":
		holdEnd(t, fd, g, q)
		return
	}
	for i := range q.joint.Pegs {
		a, b := g.joint.Pegs[i], q.joint.Pegs[i]
		if q.part.of > 0 && !q.bores(b.ID) {
			continue // in another part
		}
		switch q.kind {
		case "tenon":
			holdTenon(t, fd, g.joint, q.joint, a.ID, b.ID, q.v.face)
		case "mate":
			holdMate(t, fd, g.joint, q.joint, a.ID, b.ID, q.part.from)
		case "through":
			holdThrough(t, fd, g.joint, q.joint, a.ID, b.ID)
		default:
			if b.Exit != 0 {
				holdHole(t, fd, g.joint, q.joint, a.ID, b.ID, q.kind, q.part.from)
			}
		}
	}
}

// bores reports whether the template shows the hole of a peg.
func (p plan) bores(peg string) bool {
	return slices.ContainsFunc(p.holes, func(h hole) bool { return h.peg.ID == peg })
}

// holdHole: distance from the register arris and from the line that the sheet is
// laid on, which is from mm off the main line, as the sheet says; and that it
// shows the face from outside and not its mirror image.
func holdHole(t *testing.T, fd found, first, j *geom.Joint, firstPeg, pegID, kind string, from float64) {
	t.Helper()
	b := boreOf(t, j.Into, j.ID, pegID)
	c := fd.hole(t, "hole:"+kind+":"+first.ID+":"+firstPeg, b.Diameter)
	dir := b.To.Sub(b.From).Unit()
	out := dir.Neg() // the near face's outward normal, timber axes
	if kind == "far" {
		out = dir
	}
	// The reference face that stands along the bore is y = 0 or z = 0.
	into, ref := vec.V{Y: 1}, b.From.Y
	if math.Abs(dir.Y) > 0.5 {
		into, ref = vec.V{Z: 1}, b.From.Z
	}
	var main geom.Line
	for _, l := range j.Lines {
		if l.Main {
			main = l
		}
	}
	agree(t, fd, "hole to register arris", math.Abs(fd.off(t, "line:register:"+first.ID, c)), ref)
	agree(t, fd, "hole to line J", math.Abs(fd.off(t, "line:joint:"+first.ID, c)), math.Abs(b.From.X-main.X-from))
	holdHands(t, fd, first, c, (vec.V{X: -1}).Cross(into).Dot(out), main.X+from-b.From.X)
}

// holdHands: the sheet shows the face from outside, and the hole on its side of
// line J. Wood is the handedness in the timber of start, into and outward;
// back is how far line J lies from the hole away from the start.
func holdHands(t *testing.T, fd found, first *geom.Joint, c vec.P, wood, back float64) {
	t.Helper()
	// Handedness: start, into the timber, and outward are a right-handed or a
	// left-handed three in the wood, and so must they be on paper.
	arrow := fd.lines["arrow:start"]
	start := arrow[0].Sub(arrow[1])
	paper := start.Cross(toward(fd.lines["line:register:"+first.ID], c))
	if paper*wood <= 0 {
		t.Errorf("%s: the face is shown mirrored", fd.name)
	}
	// The hole lies on the right side of line J.
	l := fd.lines["line:joint:"+first.ID]
	if d := toward(l, c).Dot(start); math.Abs(back) > 0.1 && d*back <= 0 {
		t.Errorf("%s: the hole is on the wrong side of line J", fd.name)
	}
}

// toward returns the way from the line to p, square to the line.
func toward(l [2]vec.P, p vec.P) vec.P {
	n := l[1].Sub(l[0]).Unit().Left()
	return n.Mul(n.Dot(p.Sub(l[0])))
}

// holdThrough: a blind peg on the timber that is bored through.
func holdThrough(t *testing.T, fd found, first, j *geom.Joint, firstPeg, pegID string) {
	t.Helper()
	b := boreOf(t, j.Of, j.ID, pegID)
	c := fd.hole(t, "hole:through:"+first.ID+":"+firstPeg, b.Diameter)
	ref := b.From.Y
	if math.Abs(b.To.Y-b.From.Y) > 1 {
		ref = b.From.Z
	}
	agree(t, fd, "hole to register arris", math.Abs(fd.off(t, "line:register:"+first.ID, c)), ref)
	// Line J is one of the corners that the joint cuts across the underside:
	// a corner of one of its cuts on the face that the bore leaves.
	got := math.Abs(fd.off(t, "line:joint:"+first.ID, c))
	best := math.Inf(1)
	face := j.Of.IdealPlane(b.Exit)
	for _, cut := range j.Of.Cuts {
		if cut.Joint != j.ID || cut.Name == "reduction" {
			continue
		}
		for _, f := range cut.Solid.Faces {
			// The plane meets the underside at one x: the rafter crosses its seat square.
			if f.Role == "" || math.Abs(f.Plane.N.X) < 1e-6 {
				continue
			}
			p := face.N.Mul(face.D)
			x := (f.Plane.D - f.Plane.N.Dot(p)) / f.Plane.N.X
			best = math.Min(best, math.Abs(math.Abs(x-b.From.X)-got))
		}
	}
	agree(t, fd, "hole to the seat's corner, nearest of the cut's", best, 0)
}

// holdMate: the hole of the enterer against its bore, from the reference face
// that runs along the bore and from the joint's first place on the enterer, or
// from the line that lies from mm off it.
func holdMate(t *testing.T, fd found, first, j *geom.Joint, firstPeg, pegID string, from float64) {
	t.Helper()
	b := boreOf(t, j.Of, j.ID, pegID)
	c := fd.hole(t, "hole:mate:"+first.ID+":"+firstPeg, b.Diameter)
	dir := b.To.Sub(b.From).Unit()
	into, ref := vec.V{Y: 1}, b.From.Y
	if math.Abs(dir.Y) > 0.5 {
		into, ref = vec.V{Z: 1}, b.From.Z
	}
	x := math.NaN()
	for _, p := range j.Places {
		if p.On == j.Of && math.IsNaN(x) {
			x = p.X + from
		}
	}
	agree(t, fd, "hole to register arris", math.Abs(fd.off(t, "line:register:"+first.ID, c)), ref)
	agree(t, fd, "hole to line J", math.Abs(fd.off(t, "line:joint:"+first.ID, c)), math.Abs(b.From.X-x))
	holdHands(t, fd, first, c, (vec.V{X: -1}).Cross(into).Dot(dir.Neg()), x-b.From.X)
}

// holdTenon: shoulder, reference edge and the vector between the two holes.
func holdTenon(t *testing.T, fd found, first, j *geom.Joint, firstPeg, pegID string, face int) {
	t.Helper()
	bt, bm := boreOf(t, j.Of, j.ID, pegID), boreOf(t, j.Into, j.ID, pegID)
	shoulder, edge := "line:shoulder:"+first.ID, "line:edge:"+first.ID
	tenon := fd.hole(t, "hole:tenon:"+first.ID+":"+firstPeg, bt.Diameter)
	pt, pm := j.Of.Place.Out(bt.From), j.Into.Place.Out(bm.From)
	// Along the bore nothing changes: these are distances across it.
	agree(t, fd, "tenon hole to shoulder", math.Abs(fd.off(t, shoulder, tenon)), -j.Bearing.Height(pt))
	across := func(p vec.V) float64 {
		q := j.Of.Place.In(p)
		if face == 1 || face == 3 {
			return q.Z
		}
		return q.Y
	}
	agree(t, fd, "tenon hole to reference edge", math.Abs(fd.off(t, edge, tenon)), math.Abs(across(pt)))
	normal := [5]vec.V{1: {Y: -1}, 2: {Z: -1}, 3: {Y: 1}, 4: {Z: 1}}[face]
	into := vec.V{Y: 1}
	if face == 1 || face == 3 {
		into = vec.V{Z: 1}
	}
	wood := j.Bearing.N.Neg().Cross(j.Of.Place.OutDir(into)).Dot(j.Of.Place.OutDir(normal))
	paper := toward(fd.lines[shoulder], tenon).Cross(toward(fd.lines[edge], tenon))
	if wood*paper <= 0 {
		t.Errorf("%s: the cheek is shown mirrored", fd.name)
	}
	holdOffset(t, fd, first, j, firstPeg, bt, across(pt)-across(pm), pt.Sub(pm))
}

// holdOffset: the vector from the mortise hole to the tenon hole, whole. Up is
// how far it leads away from the reference edge; way is the vector between two
// points of the bores, frame axes.
func holdOffset(t *testing.T, fd found, first, j *geom.Joint, firstPeg string, bt geom.Bore, up float64, way vec.V) {
	t.Helper()
	shoulder, edge := "line:shoulder:"+first.ID, "line:edge:"+first.ID
	tenon := fd.hole(t, "hole:tenon:"+first.ID+":"+firstPeg, bt.Diameter)
	dir := bt.To.Sub(bt.From).Unit()
	shift := j.Of.Place.InDir(way)
	shift = shift.Sub(dir.Mul(shift.Dot(dir)))
	if shift.Len() < 1e-6 {
		return
	}
	mortise := fd.hole(t, "hole:mortise-on-tenon:"+first.ID+":"+firstPeg, bt.Diameter)
	agree(t, fd, "offset", tenon.Dist(mortise), shift.Len())
	// Toward the body by as much as the planes say, and across likewise: with
	// the handedness above this is the vector in full.
	body := toward(fd.lines[shoulder], tenon).Mul(-1).Unit()
	agree(t, fd, "offset toward the shoulder", tenon.Sub(mortise).Dot(body), j.Of.Place.OutDir(shift).Dot(j.Bearing.N))
	away := toward(fd.lines[edge], tenon).Unit()
	agree(t, fd, "offset away from the reference edge", tenon.Sub(mortise).Dot(away), up)
	arrow := fd.lines["arrow:draw"] // its first side runs from the tail to the head
	if d := arrow[1].Sub(arrow[0]); d.Len() < 10 || d.Unit().Dist(tenon.Sub(mortise).Unit()) > 0.01 {
		t.Errorf("%s: the arrow does not point from the mortise hole to the tenon hole: %v", fd.name, d)
	}
	if d := tenon.Sub(mortise).Dot(body); d <= 0 {
		t.Errorf("%s: the offset opens the joint: %v toward the shoulder", fd.name, d)
	}
}
