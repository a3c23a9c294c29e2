package drawbore

import (
	"fmt"
	"math"

	"pegwright/draw"
	"pegwright/draw/block"
	"pegwright/draw/scene"
	"pegwright/draw/view"
	"pegwright/geom"
	"pegwright/geom/measure"
	"pegwright/geom/peg"
	"pegwright/geom/solid"
	"pegwright/geom/vec"
)

// Sheets returns the sheets that show how a group of joints is bored and
// pegged: a true section through the peg's axis and the direction of draw with
// the two ways of working, then the holes seen along the peg, enlarged, with
// what drying leaves of the offset. A joint whose holes lie in line has the
// section alone. A group without a peg that goes through has no sheet.
func Sheets(f *geom.Frame, g scene.Group, stops map[string]int) []*draw.Sheet {
	d, ok := newBored(f, g)
	if !ok {
		return nil
	}
	out := []*draw.Sheet{d.sectionSheet()}
	if d.p.Offset != 0 {
		out = append(out, d.holesSheet())
	}
	g.Warn(stops, out...)
	return out
}

// bored is a joint with the peg that its drawbore sheets show.
type bored struct {
	f      *geom.Frame
	g      scene.Group
	j      *geom.Joint
	p      *geom.Peg
	pegs   []*geom.Peg // all that go through, the one shown first
	dir    vec.V       // along the peg, from its entry face
	up     vec.V       // in the section, from the receiver into the enterer
	out    vec.V       // square out of the entered face
	sin    float64     // of the angle between up and the entered face
	lead   peg.Lead
	enters bool // a lead serves
}

// newBored takes the first peg of the group's first joint that goes through;
// ok is false where there is none.
func newBored(f *geom.Frame, g scene.Group) (d *bored, ok bool) {
	d = &bored{f: f, g: g, j: g.First()}
	for i := range d.j.Pegs {
		if p := &d.j.Pegs[i]; p.Exit != 0 {
			d.pegs = append(d.pegs, p)
		}
	}
	if len(d.pegs) == 0 || d.j.Into.Net == nil || d.j.Of.Net == nil {
		return nil, false
	}
	d.p = d.pegs[0]
	d.dir = d.p.To.Sub(d.p.From).Unit()
	d.out = d.j.Bearing.N
	if d.sloping() {
		d.out = d.j.Axes.W
	}
	d.up = d.out
	switch {
	case d.p.Offset != 0:
		d.up = d.p.Draw.Neg()
	case d.p.AlongBrace && d.j.OfEnd == geom.Start:
		d.up = d.j.Of.Place.X
	case d.p.AlongBrace && d.j.OfEnd == geom.Finish:
		d.up = d.j.Of.Place.X.Neg()
	}
	d.sin = d.up.Dot(d.out)
	if math.Abs(d.up.Dot(d.dir)) > 1e-6 || d.sin < 0.1 {
		return nil, false
	}
	d.lead, d.enters = peg.LeadFor(d.p.Bore, d.p.Bore, d.p.Offset)
	return d, true
}

// sloping reports whether the bearing plane leans to the entered face, as the
// floor of a diminished housing does. All is then drawn and measured square to
// the face.
func (d *bored) sloping() bool {
	n := d.j.Bearing.N.Dot(d.j.Axes.W)
	return !d.j.Broad && n > 0.5 && n < 1-1e-9
}

// slanted reports whether the direction of draw leans to the entered face, so
// that the section cuts the receiver aslant.
func (d *bored) slanted() bool { return d.sin < 1-1e-6 }

// faceCamera looks along the peg from its entry side, the enterer above.
func (d *bored) faceCamera() view.Camera {
	return view.Camera{Right: d.out.Cross(d.dir.Neg()), Up: d.out, Toward: d.dir.Neg()}
}

// cutCamera looks square at the section: the peg enters from the left, the
// enterer is above.
func (d *bored) cutCamera() view.Camera {
	return view.Camera{Right: d.dir, Up: d.up, Toward: d.dir.Cross(d.up)}
}

// bearing returns how far the bearing plane lies above the mortise hole along
// up, mm.
func (d *bored) bearing() float64 { return d.under(d.p.Mortise, d.up) }

// under returns how far the bearing plane lies above a frame point along a
// direction, mm.
func (d *bored) under(p, along vec.V) float64 {
	return -d.j.Bearing.Height(p) / d.j.Bearing.N.Dot(along)
}

// shown returns what is left of a timber, in frame axes, with its bores.
func shown(t *geom.Timber, left *solid.Body) view.Part {
	p := view.Part{Owner: t.ID, Body: left, Bores: make([]view.Bore, len(t.Bores))}
	for i, b := range t.Bores {
		p.Bores[i] = view.Bore{From: t.Place.Out(b.From), To: t.Place.Out(b.To), Diameter: b.Diameter}
	}
	return p
}

// show writes a length as the joint's dimensions are written.
func (d *bored) show(mm float64) string { return d.f.Units.PlainJoint(mm) }

// say writes a length in running text, with its unit.
func (d *bored) say(mm float64) string { return d.f.Units.FormatJoint(mm) }

// signed writes a small length that may be below zero: thousandths of an inch
// or tenths of a millimetre.
func (d *bored) signed(mm float64) string {
	if d.f.Units == measure.Metric {
		return fmt.Sprintf("%+.1f mm", mm)
	}
	return fmt.Sprintf("%+.3f in", mm/25.4)
}

// title returns the title of one of the sheets.
func (d *bored) title(sheet, scale string) block.Title {
	j := d.j
	shows := fmt.Sprintf("%s  %s", j.Mark, j.ID) + d.g.Alike()
	return block.TitleFor(d.f, sheet, shows, scale)
}

// scaleFor returns the largest usual scale at which need fits the room given,
// and how it is written.
func (d *bored) scaleFor(fits func(k float64) bool, from ...float64) (k float64, text string) {
	if len(from) == 0 {
		from = []float64{1, 2, 3, 4, 6, 8}
		if d.f.Units == measure.Metric {
			from = []float64{1, 2, 2.5, 5, 10}
		}
	}
	for _, n := range from {
		if k, text = 1/n, fmt.Sprintf("1:%g", n); fits(k) {
			break
		}
	}
	return k, text
}
