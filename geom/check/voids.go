package check

import (
	"fmt"
	"math"

	"pegwright/geom"
	"pegwright/geom/finding"
	"pegwright/geom/solid"
	"pegwright/geom/vec"
)

// void is wood that a joint takes out of a timber, in the timber's own axes: a
// cut, as far as it lies in the ideal timber, or a bore.
type void struct {
	joint   string
	what    string // "mortise", "notch", "bore", …
	peg     string // of a bore
	shape   shape
	box     box
	shallow bool // a housing: joints may share its room
	skin    bool // brings the timber's own end to its shape
}

// skin reports whether a cut of timber t shapes its end where it enters
// another, or brings it to its ideal section.
func (p *proof) skin(t *geom.Timber, c geom.Cut) bool {
	switch c.Name {
	case "end", "reduction", "tail":
		return true
	case "cheek", "tenon edge", "tenon end", "nose", "underside":
		j := p.joint[c.Joint]
		return j != nil && j.Of == t && j.OfEnd != geom.Mid
	}
	return false
}

// voidsOf returns what is taken out of a timber's ideal section.
func (p *proof) voidsOf(t *geom.Timber) []void {
	ideal := geom.BlankOf(t.Length, t.Ideal, t.Ideal)
	var r []void
	for _, c := range t.Cuts {
		if in := solid.Common(c.Solid, ideal); in.Thickness() > 0.1 {
			r = append(r, void{joint: c.Joint, what: c.Name, shape: polyhedron(in), box: cellBox(in), shallow: c.Name == "housing", skin: p.skin(t, c)})
		}
	}
	for _, b := range t.Bores {
		from, to := inside(t, b)
		d := b.Diameter / 2
		ends := cellBox(solid.Convex{V: []vec.V{from, to}})
		r = append(r, void{joint: b.Joint, what: "bore", peg: b.Peg, shape: cylinder(from, to, b.Diameter), box: ends.grown(d)})
	}
	return r
}

// inside returns the part of a bore's axis along which any of the bore lies in
// the timber's blank.
func inside(t *geom.Timber, b geom.Bore) (from, to vec.V) {
	d := b.To.Sub(b.From)
	lo, hi := 0.0, 1.0
	for _, f := range t.Blank.Faces {
		rise := f.Plane.N.Dot(d)
		if math.Abs(rise) < 0.1*d.Len() {
			continue
		}
		slant := rise / d.Len()
		reach := f.Plane.D + b.Diameter/2*math.Sqrt(1-slant*slant)
		at := (reach - f.Plane.N.Dot(b.From)) / rise
		if rise > 0 {
			hi = min(hi, at)
		} else {
			lo = max(lo, at)
		}
	}
	if lo >= hi {
		return b.From, b.To
	}
	return b.From.Add(d.Mul(lo)), b.From.Add(d.Mul(hi))
}

// voids proves that the voids of one timber keep clear of each other. What one
// joint takes may meet; its own holes are the peg window's business.
func (p *proof) voids(t *geom.Timber) {
	vs := p.voidsOf(t)
	boxes := make([]box, len(vs))
	for i, v := range vs {
		boxes[i] = v.box.grown(Web / 2)
	}
	worst := map[[2]string]pair{}
	var order [][2]string
	for _, n := range neighbours(boxes) {
		q := pair{a: vs[n[0]], b: vs[n[1]]}
		if q.a.joint == q.b.joint || q.a.joint == "" || q.b.joint == "" || q.pass() || p.inScarf[p.joint[q.a.joint]] || p.inScarf[p.joint[q.b.joint]] {
			continue
		}
		q.wood = between(q.a.shape, q.b.shape)
		if q.wood >= Web {
			continue
		}
		key := [2]string{min(q.a.joint, q.b.joint), max(q.a.joint, q.b.joint)}
		old, seen := worst[key]
		if !seen {
			order = append(order, key)
		}
		if !seen || q.worse(old) {
			worst[key] = q
		}
	}
	for _, key := range order {
		p.thin(t, worst[key])
	}
}

// pair is two voids of one timber and the least wood between them.
type pair struct {
	a, b void
	wood float64
}

// pass reports whether nothing is asked of the two: housings may run into each
// other and into what shapes the timber's ends, and two joints may share an
// end that both bring to shape.
func (q pair) pass() bool {
	low := func(v void) bool { return v.shallow || v.skin }
	return low(q.a) && low(q.b)
}

// worse reports whether q says more than r about the same two joints: bores
// first where both break through, as they are the easier to move.
func (q pair) worse(r pair) bool {
	if (q.wood < Thick) != (r.wood < Thick) || q.wood >= Thick {
		return q.wood < r.wood
	}
	return q.rank() > r.rank()
}

// rank is higher where both voids are cuts that go deep, and lower where they only
// skim the wood.
func (q pair) rank() int {
	n := 0
	for _, v := range []void{q.a, q.b} {
		switch {
		case v.shallow, v.skin:
			n--
		case v.peg == "":
			n++
		}
	}
	return n
}

// thin says what is wrong with two voids that are less than Web apart.
func (p *proof) thin(t *geom.Timber, q pair) {
	if q.b.peg != "" && q.a.peg == "" {
		q.a, q.b = q.b, q.a
	}
	a, b := p.joint[q.a.joint], p.joint[q.b.joint]
	f := finding.Finding{Timbers: []string{t.ID}, Joints: []string{q.a.joint, q.b.joint}}
	if a != nil {
		f.At = a.At
	}
	if b != nil {
		f.Also = others(f.At, b.At)
	}
	if q.wood >= Thick {
		f.Text = fmt.Sprintf("only %s of wood is left between the %s and the %s in %s", p.show(q.wood), q.a.words(), q.b.words(), t.ID)
		f.Mend = "move one of the two along the timber, or make it shallower"
		p.add(finding.Warn, "voids", f)
		return
	}
	met := p.timbersMeet(a, b)
	if met != nil && !met.tenons {
		return // the timbers themselves run through each other
	}
	f.Text, f.Mend = p.crossed(t, q, b)
	if q.a.peg == "" && met != nil {
		f.Text += ", and their tenons would meet"
		met.said = true
	}
	if q.rank() < 2 && q.a.peg == "" {
		p.add(finding.Warn, "voids", f)
		return
	}
	p.add(finding.Stop, "voids", f)
}

// crossed says that two voids of timber t, the second of joint b, run into
// each other.
func (p *proof) crossed(t *geom.Timber, q pair, b *geom.Joint) (text, mend string) {
	one, two := q.a.words(), q.b.words()
	switch {
	case q.a.peg != "" && q.b.peg != "":
		return fmt.Sprintf("the bores of %s and %s cross in %s", q.a.peg, q.b.peg, t.ID), "move one hole along by two diameters"
	case q.a.peg != "" && b != nil && p.throughTenon(t, q.a, b):
		return fmt.Sprintf("the %s runs through the tenon of %s in %s", one, b.Of.ID, t.ID), "move the hole along, or stagger the two joints"
	case q.a.peg != "":
		return fmt.Sprintf("the %s runs into the %s in %s", one, two, t.ID), "move the hole along, or stagger the two joints"
	}
	return fmt.Sprintf("the %s and the %s run into each other in %s", one, two, t.ID), "stagger the two along the timber, or make them shallower"
}

// words names a void: the bore of a peg, or a cut of a joint.
func (v void) words() string {
	if v.peg != "" {
		return "bore of " + v.peg
	}
	return v.what + " of " + v.joint
}

// throughTenon reports whether a bore of timber t meets the tenon of joint j.
func (p *proof) throughTenon(t *geom.Timber, v void, j *geom.Joint) bool {
	return j.Into == t && !j.Tenon.Empty() && between(v.shape, polyhedron(j.Tenon.Moved(t.Place.Inverse()))) < Thick
}

// timbersMeet returns how the entering timbers of two joints share a space,
// nil when they do not.
func (p *proof) timbersMeet(a, b *geom.Joint) *meeting {
	if a == nil || b == nil || a.Of == b.Of {
		return nil
	}
	return p.meetingOf(a.Of, b.Of)
}
