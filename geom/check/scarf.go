package check

import (
	"fmt"
	"math"
	"slices"

	"pegwright/geom"
	"pegwright/geom/finding"
	"pegwright/geom/joint"
	"pegwright/geom/solid"
	"pegwright/geom/vec"
)

// scarfs proves the places of scarfs. A joint that stands in one is said here
// and by no other proof.
func (p *proof) scarfs() {
	for _, j := range p.f.Joints {
		if c := j.Of.Place.X.Dot(j.Into.Place.X); j.OfEnd == geom.Mid || c*c < 1-1e-6 {
			continue
		}
		lo, hi, ok := p.taken(j, j.Into.Place.X)
		if !ok {
			continue
		}
		for _, t := range []*geom.Timber{j.Into, j.Of} {
			for _, k := range p.of[t] {
				if k != j {
					p.scarfBy(j, k, lo, hi)
				}
			}
		}
		p.scarfBay(j, (lo+hi)/2)
	}
}

// taken returns the extent along a frame direction of what a joint takes out
// of the ideal section of its receiver, and of its enterer where it is a scarf.
func (p *proof) taken(j *geom.Joint, dir vec.V) (lo, hi float64, ok bool) {
	lo, hi = math.Inf(1), math.Inf(-1)
	for _, t := range []*geom.Timber{j.Into, j.Of} {
		if math.Abs(t.Place.X.Dot(dir)) < 1-1e-6 {
			continue
		}
		ideal := geom.BlankOf(t.Length, t.Ideal, t.Ideal)
		for _, c := range t.Cuts {
			if c.Joint != j.ID || c.Name == "end" {
				continue
			}
			in := solid.Common(c.Solid, ideal)
			if in.Thickness() < 0.1 {
				continue
			}
			a, b := in.Moved(t.Place).Extent(dir)
			lo, hi, ok = min(lo, a), max(hi, b), true
		}
	}
	return lo, hi, ok
}

// scarfBy holds another joint k of one of the two timbers against the scarf j
// that lies from lo to hi.
func (p *proof) scarfBy(j, k *geom.Joint, lo, hi float64) {
	a, b, ok := p.taken(k, j.Into.Place.X)
	if !ok {
		return
	}
	f := finding.Finding{Timbers: []string{j.Of.ID, j.Into.ID, k.Of.ID}, Joints: []string{j.ID, k.ID}, At: j.At, Also: others(j.At, k.At),
		Mend: "move the scarf along, to where nothing else is cut: a fifth of the bay from the post"}
	switch gap := max(a-hi, lo-b); {
	case gap < Thick:
		p.inScarf[k] = true
		f.Text = fmt.Sprintf("the scarf of %s and %s and the joint of %s take the same wood", j.Of.ID, j.Into.ID, k.Of.ID)
		p.add(finding.Stop, "scarf", f)
	case gap < joint.ScarfClear-Thick:
		f.Text = fmt.Sprintf("only %s of whole wood is left between the scarf of %s and %s and the joint of %s", p.show(gap), j.Of.ID, j.Into.ID, k.Of.ID)
		p.add(finding.Warn, "scarf", f)
	}
}

// scarfBay notes a scarf that stands elsewhere in its bay than practice has it.
func (p *proof) scarfBay(j *geom.Joint, mid float64) {
	stand := joint.StandOf(mid, p.postsAlong(j))
	if stand.Good {
		return
	}
	bay := stand.Bay.To - stand.Bay.From
	p.add(finding.Note, "scarf", finding.Finding{Timbers: []string{j.Of.ID, j.Into.ID}, Joints: []string{j.ID}, At: j.At,
		Text: fmt.Sprintf("the middle of the scarf of %s and %s stands at %.2f of its bay from the nearer post; a running beam bends least between %.2f and %.2f", j.Of.ID, j.Into.ID, stand.Share, joint.ScarfNear, joint.ScarfFar),
		Mend: fmt.Sprintf("move it to %s to %s from a post", p.show(joint.ScarfNear*bay), p.show(joint.ScarfFar*bay))})
}

// postsAlong are the middles of the uprights that the line of a scarf is joined
// to, measured along the receiver's direction, in rising order. The line goes
// on through the scarfs beyond.
func (p *proof) postsAlong(j *geom.Joint) []float64 {
	line := []*geom.Timber{j.Into, j.Of}
	var posts []float64
	for i := 0; i < len(line); i++ {
		for _, k := range p.of[line[i]] {
			o := other(k, line[i])
			switch c := o.Place.X.Dot(j.Into.Place.X); {
			case c*c > 1-1e-6 && !slices.Contains(line, o):
				line = append(line, o)
			case plumb(o):
				a, b := geom.BlankOf(o.Length, o.Ideal, o.Ideal).Moved(o.Place).Extent(j.Into.Place.X)
				posts = append(posts, (a+b)/2)
			}
		}
	}
	slices.Sort(posts)
	return slices.Compact(posts)
}

// besideScarf reports whether two timbers meet only because one of them stands
// in a scarf of the other.
func (p *proof) besideScarf(a, b *geom.Timber) bool {
	for _, q := range [2][2]*geom.Timber{{a, b}, {b, a}} {
		for _, k := range p.of[q[0]] {
			if !p.inScarf[k] {
				continue
			}
			for _, j := range p.of[other(k, q[0])] {
				if j.Of == q[1] || j.Into == q[1] {
					return true
				}
			}
		}
	}
	return false
}
