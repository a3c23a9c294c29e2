package check

import (
	"cmp"
	"fmt"
	"slices"

	"pegwright/geom"
	"pegwright/geom/finding"
	"pegwright/geom/solid"
	"pegwright/geom/vec"
)

// maxOverlaps is how many pairs of timbers that fill the same space are named.
const maxOverlaps = 200

// overlaps clips the cells of every neighbouring pair of timbers against each
// other in frame axes. It ends when maxOverlaps were found.
func (p *proof) overlaps() {
	for _, n := range neighbours(p.boxes) {
		a, b := p.f.Timbers[n[0]], p.f.Timbers[n[1]]
		t := Shared(p.bodies[n[0]], p.bodies[n[1]])
		if t <= Thick || p.besideScarf(a, b) {
			continue
		}
		f := finding.Finding{Timbers: []string{a.ID, b.ID}, At: a.At, Also: others(a.At, b.At),
			Text: fmt.Sprintf("%s and %s would fill the same space, %s thick", a.ID, b.ID, p.show(t)),
			Mend: "join the two, move one of them, or shorten what runs into the other"}
		for _, j := range p.of[a] {
			if j.Into == b || j.Of == b {
				f.Joints = append(f.Joints, j.ID)
				f.Also = append(f.Also, others(j.At, append(f.Also, f.At)...)...)
			}
		}
		if len(p.clash) == maxOverlaps {
			f.Text = fmt.Sprintf("%d and more pairs of timbers would fill the same space; those after %s and %s were not looked for", maxOverlaps, a.ID, b.ID)
			p.add(finding.Stop, "overlap", f)
			return
		}
		m := &meeting{found: f, tenons: p.inMortises(a, b)}
		p.clash[[2]*geom.Timber{a, b}] = m
		if !m.tenons {
			p.add(finding.Stop, "overlap", f)
		}
	}
}

// meeting is two timbers that would fill the same space.
type meeting struct {
	found  finding.Finding
	tenons bool // only inside mortises: the clash of the mortises says it
	said   bool
}

// meetingOf returns how two timbers share a space, nil when they do not.
func (p *proof) meetingOf(a, b *geom.Timber) *meeting {
	if p.index[a] > p.index[b] {
		a, b = b, a
	}
	return p.clash[[2]*geom.Timber{a, b}]
}

// tenonsMeeting adds the overlaps of tenons that no clash of mortises has
// said.
func (p *proof) tenonsMeeting() {
	for _, a := range p.f.Timbers {
		for _, j := range p.of[a] {
			for _, k := range p.of[j.Into] {
				if m := p.meetingOf(j.Of, k.Of); m != nil && m.tenons && !m.said {
					m.said = true
					p.add(finding.Stop, "overlap", m.found)
				}
			}
		}
	}
}

// inMortises reports whether all that two timbers share lies in mortises that
// both have in one receiver.
func (p *proof) inMortises(a, b *geom.Timber) bool {
	var rooms []solid.Convex
	for _, j := range p.of[a] {
		for _, k := range p.of[b] {
			if j.Of == a && k.Of == b && j.Into == k.Into && !j.Mortise.Empty() && !k.Mortise.Empty() {
				rooms = append(rooms, solid.Common(j.Mortise, j.Into.Blank.Moved(j.Into.Place)))
			}
		}
	}
	if len(rooms) == 0 {
		return false
	}
	for _, c := range p.bodies[p.index[a]].Cells() {
		for _, d := range p.bodies[p.index[b]].Cells() {
			in := solid.Common(c, d)
			if in.Thickness() <= Thick {
				continue
			}
			mid := in.Centroid()
			if !slices.ContainsFunc(rooms, func(r solid.Convex) bool { return r.Contains(mid, Thick) }) {
				return false
			}
		}
	}
	return true
}

// others returns the further places of a finding at the place at, each once
// and none that was not written.
func others(at finding.Pos, further ...finding.Pos) []finding.Pos {
	var r []finding.Pos
	for _, x := range further {
		if x != at && x != (finding.Pos{}) && !slices.Contains(r, x) {
			r = append(r, x)
		}
	}
	return r
}

// Shared returns the greatest thickness of wood that two bodies (in the same
// axes) share, in millimetres.
func Shared(a, b *solid.Body) float64 {
	if apart(boundsOf(a), boundsOf(b)) {
		return 0
	}
	most := 0.0
	cb := b.Cells()
	boxes := make([]box, len(cb))
	for i, d := range cb {
		boxes[i] = cellBox(d)
	}
	for _, c := range a.Cells() {
		bc := cellBox(c)
		for i, d := range cb {
			if !apart(bc, boxes[i]) {
				most = max(most, solid.Common(c, d).Thickness())
			}
		}
	}
	return most
}

// box is an axis-aligned box.
type box struct{ lo, hi [3]float64 }

// cellBox is the box round a cell.
func cellBox(c solid.Convex) box { return boxOf(c.Bounds()) }

// boundsOf is the box round a body.
func boundsOf(b *solid.Body) box { return boxOf(b.Bounds()) }

// boxOf is the box between two corners.
func boxOf(lo, hi vec.V) box {
	return box{[3]float64{lo.X, lo.Y, lo.Z}, [3]float64{hi.X, hi.Y, hi.Z}}
}

// apart reports whether two boxes share no more than skin.
func apart(a, b box) bool {
	for i := range 3 {
		if a.lo[i] > b.hi[i]-Thick || b.lo[i] > a.hi[i]-Thick {
			return true
		}
	}
	return false
}

// grown returns the box with every side moved out by d.
func (b box) grown(d float64) box {
	for i := range 3 {
		b.lo[i], b.hi[i] = b.lo[i]-d, b.hi[i]+d
	}
	return b
}

// neighbours returns the pairs of boxes that share a volume, lesser index
// first, in order. Boxes are met in the order in which they begin along the
// axis on which they spread widest, so that only those still open are asked.
func neighbours(boxes []box) [][2]int {
	axis := widest(boxes)
	order := make([]int, len(boxes))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(boxes[a].lo[axis], boxes[b].lo[axis]) })
	var open []int
	var r [][2]int
	for _, i := range order {
		open = slices.DeleteFunc(open, func(k int) bool { return boxes[k].hi[axis] < boxes[i].lo[axis] })
		for _, k := range open {
			if !apart(boxes[i], boxes[k]) {
				r = append(r, [2]int{min(i, k), max(i, k)})
			}
		}
		open = append(open, i)
	}
	slices.SortFunc(r, func(a, b [2]int) int { return cmp.Or(cmp.Compare(a[0], b[0]), cmp.Compare(a[1], b[1])) })
	return r
}

// widest returns the axis along which the boxes' middles spread farthest.
func widest(boxes []box) int {
	best, most := 0, -1.0
	for axis := range 3 {
		for _, b := range boxes {
			lo, hi := boxes[0].lo[axis]+boxes[0].hi[axis], b.lo[axis]+b.hi[axis]
			if d := max(hi-lo, lo-hi); d > most+Thick {
				best, most = axis, d
			}
		}
	}
	return best
}

// timberIndex returns each timber's joints, in frame order.
func timberIndex(f *geom.Frame) map[*geom.Timber][]*geom.Joint {
	of := map[*geom.Timber][]*geom.Joint{}
	for _, j := range f.Joints {
		of[j.Into] = append(of[j.Into], j)
		if j.Of != j.Into {
			of[j.Of] = append(of[j.Of], j)
		}
	}
	return of
}
