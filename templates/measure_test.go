package templates

import (
	"bytes"
	"math"
	"strings"
	"testing"

	"pegwright/draw"
	"pegwright/draw/measured"
	"pegwright/draw/pdf"
	"pegwright/draw/svg"
	"pegwright/geom"
	"pegwright/geom/vec"
	"pegwright/samples"
)

// within 0.02 mm: the accuracy that is promised for 1:1 sheets.
const promised = 0.02

// found is a rendered sheet read back: circles and straight lines by mark.
type found struct {
	name  string
	holes map[string]measured.Circle
	lines map[string][2]vec.P
}

// TestPlacesInTheRenderedFiles measures every template of every sample in the
// SVG and in the PDF (read by PDFium) and holds it against the bores of the
// timbers and the planes of the joints. Nothing of the layout is used: each
// expected number comes from the frame, in timber or frame axes.
func TestPlacesInTheRenderedFiles(t *testing.T) {
	for name, f := range frames(t) {
		groups := gather(plans(f, nil))
		sheets := Sheets(f, nil)
		var b bytes.Buffer
		if err := pdf.Render(&b, pdf.Doc{Title: name, Sheets: sheets}); err != nil {
			t.Fatal(err)
		}
		pages, err := measured.PDF(b.Bytes())
		if err != nil {
			t.Fatal(err)
		}
		bySheet := map[string][]found{}
		for i, s := range sheets {
			bySheet[s.ID] = []found{fromSVG(t, s), fromPDF(s, pages[i])}
		}
		for _, g := range groups {
			_, word := g.title()
			for _, fd := range bySheet[g.joint.ID+"-"+word] {
				for _, q := range g.serves {
					holdAgainstFrame(t, fd, g, q)
				}
			}
		}
		if len(groups) == 0 {
			t.Errorf("%s has no templates", name)
		}
	}
}

func fromSVG(t *testing.T, s *draw.Sheet) found {
	t.Helper()
	data, err := svg.Render(s, svg.Options{})
	if err != nil {
		t.Fatal(err)
	}
	p, err := measured.SVG(data)
	if err != nil {
		t.Fatal(err)
	}
	fd := found{"svg " + s.ID, map[string]measured.Circle{}, map[string][2]vec.P{}}
	for _, c := range p.Circles {
		fd.holes[c.Mark] = c
	}
	for _, l := range p.Lines() {
		fd.lines[l.Mark] = [2]vec.P{l.A, l.B}
	}
	return fd
}

// fromPDF finds the marked shapes of a sheet on its PDF page, which has no
// marks, by what lies nearest; their places are those of the page.
func fromPDF(s *draw.Sheet, p measured.Page) found {
	fd := found{"pdf " + s.ID, map[string]measured.Circle{}, map[string][2]vec.P{}}
	lines := p.Lines()
	for _, it := range s.Items {
		m := it.Head().Mark
		switch x := it.(type) {
		case *draw.Circle:
			if d, c := p.Near(x.C, x.R); d < 0.5 {
				fd.holes[m] = c
			}
		case *draw.Path:
			if len(x.Pts) != 2 {
				continue
			}
			best := 0.5
			for _, l := range lines {
				if d := l.A.Dist(x.Pts[0]) + l.B.Dist(x.Pts[1]); d < best {
					best = d
					fd.lines[m] = [2]vec.P{l.A, l.B}
				}
			}
		}
	}
	return fd
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
	for i := range q.joint.Pegs {
		a, b := g.joint.Pegs[i], q.joint.Pegs[i]
		switch q.kind {
		case "tenon":
			holdTenon(t, fd, g.joint, q.joint, a.ID, b.ID, q.v.face)
		case "through":
			holdThrough(t, fd, g.joint, q.joint, a.ID, b.ID)
		default:
			if b.Exit != 0 {
				holdHole(t, fd, g.joint, q.joint, a.ID, b.ID, q.kind)
			}
		}
	}
}

// holdHole: distance from the register arris and from the main line, and that
// the sheet shows the face from outside and not its mirror image.
func holdHole(t *testing.T, fd found, first, j *geom.Joint, firstPeg, pegID, kind string) {
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
	agree(t, fd, "hole to line J", math.Abs(fd.off(t, "line:joint:"+first.ID, c)), math.Abs(b.From.X-main.X))
	// Handedness: start, into the timber, and outward are a right-handed or a
	// left-handed three in the wood, and so must they be on paper.
	arrow := fd.lines["arrow:start"]
	start := arrow[0].Sub(arrow[1])
	paper := start.Cross(toward(fd.lines["line:register:"+first.ID], c))
	wood := (vec.V{X: -1}).Cross(into).Dot(out)
	if paper*wood <= 0 {
		t.Errorf("%s: the face is shown mirrored", fd.name)
	}
	// The hole lies on the right side of line J.
	l := fd.lines["line:joint:"+first.ID]
	if d := toward(l, c).Dot(start); math.Abs(b.From.X-main.X) > 0.1 && d*(main.X-b.From.X) <= 0 {
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
	dir := bt.To.Sub(bt.From).Unit()
	shift := j.Of.Place.InDir(pt.Sub(pm))
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
	up := toward(fd.lines[edge], tenon).Unit()
	agree(t, fd, "offset away from the reference edge", tenon.Sub(mortise).Dot(up), across(pt)-across(pm))
	if d := tenon.Sub(mortise).Dot(body); d <= 0 {
		t.Errorf("%s: the offset opens the joint: %v toward the shoulder", fd.name, d)
	}
}

// TestBars measures the bars of every sheet and the square of the print check.
// 1 in = 25.4 mm exactly (NIST SP 811).
func TestBars(t *testing.T) {
	for _, f := range frames(t) {
		sheets := Sheets(f, nil)
		var b bytes.Buffer
		if err := pdf.Render(&b, pdf.Doc{Sheets: sheets}); err != nil {
			t.Fatal(err)
		}
		pages, err := measured.PDF(b.Bytes())
		if err != nil {
			t.Fatal(err)
		}
		for i, s := range sheets {
			for _, fd := range []found{fromSVG(t, s), fromPDF(s, pages[i])} {
				for mark, want := range map[string]vec.P{"bar:mm:x": {X: 100}, "bar:mm:y": {Y: 100}, "bar:in:x": {X: 101.6}, "bar:in:y": {Y: 101.6}} {
					l := fd.lines[mark]
					if d := l[1].Sub(l[0]); d.Dist(want) > promised {
						t.Errorf("%s: %s is %v", fd.name, mark, d)
					}
				}
				if i == 0 {
					for _, m := range []string{"bar:diagonal:up", "bar:diagonal:down"} {
						agree(t, fd, m, fd.lines[m][0].Dist(fd.lines[m][1]), 100*math.Sqrt2)
					}
				}
			}
		}
	}
}

// TestMarksNameTheJoint: every hole's mark ends in ids of the frame.
func TestMarksNameTheJoint(t *testing.T) {
	f := sample(t, samples.Default())
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
