package templates

import (
	"maps"
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"pegwright/draw"
	"pegwright/draw/measured"
	"pegwright/draw/svg"
	"pegwright/geom"
	"pegwright/geom/vec"
)

// within 0.02 mm: the accuracy that is promised for 1:1 sheets.
const promised = 0.02

// found is a rendered sheet read back: circles and straight lines by mark.
type found struct {
	name  string
	holes map[string]measured.Circle
	lines map[string][2]vec.P
	runs  map[string][][2]vec.P // every straight piece of a mark
}

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

// joined lays the tiles of a template diamond on diamond, as a framer does, and
// returns them as one sheet, once as read from SVG and once from PDF.
func joined(t *testing.T, sheets map[string][]found, id string) []found {
	t.Helper()
	if sheets[id+"1"] == nil || sheets[id+"2"] == nil {
		t.Fatalf("no sheet %s", id)
	}
	var out []found
	for k := range 2 {
		whole := sheets[id+"1"][k].copied()
		for n := 2; sheets[id+strconv.Itoa(n)] != nil; n++ {
			whole.lay(t, sheets[id+strconv.Itoa(n)][k])
		}
		out = append(out, whole)
	}
	return out
}

func (fd found) copied() found {
	return found{fd.name, maps.Clone(fd.holes), maps.Clone(fd.lines), maps.Clone(fd.runs)}
}

// lay adds a tile whose diamonds are laid on those that are there.
func (fd found) lay(t *testing.T, tile found) {
	t.Helper()
	shift, n := vec.P{}, 0
	for m, l := range tile.lines {
		o, same := fd.lines[m]
		if !same || !strings.HasPrefix(m, "match:") {
			continue
		}
		if d := o[0].Sub(l[0]); n > 0 && d.Dist(shift) > promised {
			t.Errorf("%s: the diamonds do not agree: %v and %v", tile.name, d, shift)
		}
		shift, n = o[0].Sub(l[0]), n+1
	}
	if n < 2 {
		t.Fatalf("%s: %d diamonds to lay on those of the tiles before", tile.name, n)
	}
	for m, c := range tile.holes {
		c.C = c.C.Add(shift)
		fd.holes[m] = c
	}
	for m, ls := range tile.runs {
		for _, l := range ls {
			fd.runs[m] = append(fd.runs[m], [2]vec.P{l[0].Add(shift), l[1].Add(shift)})
		}
	}
	for m, l := range tile.lines {
		if _, there := fd.lines[m]; !there || strings.HasPrefix(m, "line:") {
			fd.lines[m] = [2]vec.P{l[0].Add(shift), l[1].Add(shift)}
		}
	}
}

// empty returns a sheet on which nothing was found yet.
func empty(name string) found {
	return found{name, map[string]measured.Circle{}, map[string][2]vec.P{}, map[string][][2]vec.P{}}
}

func fromSVG(s *draw.Sheet) (found, error) {
	data, err := svg.Render(s, svg.Options{})
	if err != nil {
		return found{}, err
	}
	p, err := measured.SVG(data)
	return fromMarks("svg "+s.ID, p), err
}

// fromMarks finds the shapes of a page by their marks.
func fromMarks(name string, p measured.Page) found {
	fd := empty(name)
	for _, c := range p.Circles {
		fd.holes[c.Mark] = c
	}
	for _, l := range p.Lines() {
		if _, there := fd.lines[l.Mark]; !there {
			fd.lines[l.Mark] = [2]vec.P{l.A, l.B}
		}
		fd.runs[l.Mark] = append(fd.runs[l.Mark], [2]vec.P{l.A, l.B})
	}
	return fd
}

// fromPDF finds the marked shapes of a sheet on its PDF page, which has no
// marks, by what lies nearest; their places are those of the page.
func fromPDF(s *draw.Sheet, p measured.Page) found {
	fd := empty("pdf " + s.ID)
	lines := p.Lines()
	for _, it := range s.Items {
		m := it.Head().Mark
		switch x := it.(type) {
		case *draw.Circle:
			if d, c := p.Near(x.C, x.R); d < 0.5 {
				fd.holes[m] = c
			}
		case *draw.Path:
			if m == "" || x.Filled {
				continue
			}
			for i := range x.Pts {
				if i+1 == len(x.Pts) && (!x.Closed || i < 2) {
					break
				}
				l, ok := nearestLine(lines, x.Pts[i], x.Pts[(i+1)%len(x.Pts)])
				if !ok {
					continue
				}
				if i == 0 {
					fd.lines[m] = l
				}
				fd.runs[m] = append(fd.runs[m], l)
			}
		}
	}
	return fd
}

// nearestLine returns the line that runs from a to b within half a millimetre.
func nearestLine(lines []measured.Line, a, b vec.P) (at [2]vec.P, ok bool) {
	best := 0.5
	for _, l := range lines {
		if d := l.A.Dist(a) + l.B.Dist(b); d < best {
			best, at, ok = d, [2]vec.P{l.A, l.B}, true
		}
	}
	return at, ok
}

// off returns the distance of p from the line, positive to its left.
func (fd found) off(t *testing.T, line string, p vec.P) float64 {
	t.Helper()
	l, ok := fd.lines[line]
	if !ok {
		t.Fatalf("%s: no line %q", fd.name, line)
	}
	return l[1].Sub(l[0]).Unit().Cross(p.Sub(l[0]))
}

func (fd found) hole(t *testing.T, mark string, dia float64) vec.P {
	t.Helper()
	c, ok := fd.holes[mark]
	if !ok {
		t.Fatalf("%s: no hole %q", fd.name, mark)
	}
	if math.Abs(2*c.R-dia) > promised {
		t.Errorf("%s: %s is %v across, want %v", fd.name, mark, 2*c.R, dia)
	}
	return c.C
}

func agree(t *testing.T, fd found, what string, got, want float64) {
	t.Helper()
	if !(math.Abs(got-want) <= promised) {
		t.Errorf("%s: %s: %.4f mm, want %.4f", fd.name, what, got, want)
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
