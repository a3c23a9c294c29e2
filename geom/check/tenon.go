package check

import (
	"fmt"

	"pegwright/geom"
	"pegwright/geom/finding"
	"pegwright/geom/solid"
	"pegwright/geom/vec"
)

// tenon proves that a tenon lies inside its mortise and inside its own timber,
// and that the mortise leaves wood round itself.
func (p *proof) tenon(j *geom.Joint) {
	if j.Tenon.Empty() {
		return
	}
	about := finding.Finding{Timbers: []string{j.Of.ID, j.Into.ID}, Joints: []string{j.ID}, At: j.At}
	for _, v := range j.Tenon.V {
		if !j.Mortise.Contains(v, Thick) {
			f := about
			f.Text = fmt.Sprintf("the tenon of %s does not lie inside its mortise in %s", j.Of.ID, j.Into.ID)
			f.Mend = "make the mortise as long and deep as the tenon"
			p.add(finding.Stop, "tenon", f)
			break
		}
	}
	for _, face := range j.Of.Blank.Moved(j.Of.Place).Faces {
		_, hi := j.Tenon.Extent(face.Plane.N)
		if out := hi - face.Plane.D; out > Thick {
			f := about
			f.Text = fmt.Sprintf("the tenon of %s into %s would lie %s outside its own timber, beyond %s", j.Of.ID, j.Into.ID, p.show(out), faceWord(j.Of, face.Role))
			f.Mend = "lay the tenon nearer or farther from the reference face, make it thinner, or move the timber sideways"
			p.add(finding.Stop, "tenon", f)
			break
		}
	}
	p.around(j, about)
}

// faceWord puts the role of a face of a blank into the words of the timber.
func faceWord(t *geom.Timber, role string) string {
	var n int
	if _, err := fmt.Sscanf(role, "face %d", &n); err == nil && n >= 1 && n <= 4 {
		return "face " + t.FaceTitle(n)
	}
	return "its " + role
}

// around proves the wood that a mortise leaves in its receiver.
func (p *proof) around(j *geom.Joint, about finding.Finding) {
	for _, c := range j.Into.Cuts {
		if c.Joint != j.ID || c.Name != "mortise" {
			continue
		}
		p.relish(j, c.Solid, about)
		for n := 1; n <= 4; n++ {
			if n == j.Entered {
				continue
			}
			pl := j.Into.BlankPlane(n)
			_, hi := c.Solid.Extent(pl.N)
			left := pl.D - hi
			f := about
			switch {
			case left < -9 && n == geom.Opposite(j.Entered) && !standsOut(j, pl):
				// A through mortise leaves by the far face.
			case left < Thick:
				f.Text = fmt.Sprintf("the mortise for %s breaks out of %s at face %s", j.Of.ID, j.Into.ID, j.Into.FaceTitle(n))
				f.Mend = "shorten the tenon, or lay the mortise farther from that face"
				p.add(finding.Stop, "stick", f)
			case left < Web:
				f.Text = fmt.Sprintf("the mortise for %s leaves %s of wood at face %s of %s", j.Of.ID, p.show(left), j.Into.FaceTitle(n), j.Into.ID)
				f.Mend = "shorten the tenon, or lay the mortise farther from that face"
				p.add(finding.Warn, "stick", f)
			}
		}
	}
}

// standsOut reports whether the tenon runs out of the receiver's face pl
// (receiver's axes).
func standsOut(j *geom.Joint, pl solid.Plane) bool {
	out := pl.Moved(j.Into.Place)
	_, hi := j.Tenon.Extent(out.N)
	return hi-out.D > j.Proud+Thick
}

// cheeks warns of mortises beside which less wood is left than the tenon is
// thick (common practice, no source): the cheek splits before the peg yields. A
// sixteenth of an inch is forgiven.
func (p *proof) cheeks() {
	f := finding.Finding{Mend: "make the tenon thinner, lay it nearer the middle, or use a thicker receiver"}
	least, tenon := 0.0, 0.0
	for _, j := range p.f.Joints {
		left, thick, ok := cheek(j)
		if !ok || left >= thick-25.4/16 {
			continue
		}
		if len(f.Joints) == 0 {
			f.At = j.At
		}
		if len(f.Joints) == 0 || left/thick < least/tenon {
			least, tenon = left, thick
		}
		f.Joints, f.Timbers = append(f.Joints, j.ID), append(f.Timbers, j.Into.ID)
		f.Also = append(f.Also, others(f.At, append(f.Also, j.At)[len(f.Also):]...)...)
	}
	if len(f.Joints) == 0 {
		return
	}
	f.Also, f.Timbers = others(f.At, f.Also...), once(f.Timbers)
	f.Text = fmt.Sprintf("beside the mortises of %s less wood is left than the tenon is thick: as little as %s beside a tenon of %s",
		counted(len(f.Joints), "joint"), p.show(least), p.show(tenon))
	p.add(finding.Warn, "cheek", f)
}

// cheek returns the least wood of the ideal receiver beside a joint's mortise,
// square to the tenon's cheeks, and the tenon's thickness.
func cheek(j *geom.Joint) (left, thick float64, ok bool) {
	if j.Tenon.Empty() || len(j.Pegs) == 0 {
		return 0, 0, false
	}
	for _, c := range j.Into.Cuts {
		if c.Joint != j.ID || c.Name != "mortise" {
			continue
		}
		v := j.Into.Place.InDir(j.Axes.V)
		lo, hi := c.Solid.Extent(v)
		t0, t1 := j.Tenon.Extent(j.Axes.V)
		side := j.Into.IdealPlane(j.Into.FaceToward(j.Axes.V))
		return min(lo, side.D-hi), t1 - t0, true
	}
	return 0, 0, false
}

// Relish is the least wood along the grain between a mortise and the end of
// its receiver that passes without a word: a little under 2 in (common
// practice, no source). With less, the end splits out when the peg is driven.
const Relish = 48.0

// relish proves the wood between a mortise and the ends of its receiver.
func (p *proof) relish(j *geom.Joint, mortise solid.Convex, f finding.Finding) {
	lo, hi := mortise.Extent(vec.V{X: 1})
	left, end := lo, geom.Start
	if j.Into.Length-hi < left {
		left, end = j.Into.Length-hi, geom.Finish
	}
	f.Mend = fmt.Sprintf("let %s run farther past the joint, or hold the tenon back from that end", j.Into.ID)
	switch {
	case left < Thick:
		f.Text = fmt.Sprintf("the mortise for %s breaks out at the %s of %s: no wood is left before it", j.Of.ID, end, j.Into.ID)
		p.add(finding.Stop, "relish", f)
	case left < Relish:
		f.Text = fmt.Sprintf("the mortise for %s leaves %s of wood before the %s of %s", j.Of.ID, p.show(left), end, j.Into.ID)
		p.add(finding.Warn, "relish", f)
	}
}
