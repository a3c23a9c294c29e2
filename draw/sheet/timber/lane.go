package timber

import (
	"fmt"
	"slices"
	"sort"

	"pegwright/draw"
	"pegwright/draw/dim"
	"pegwright/geom/vec"
)

// tag is a label of a lane: in full, without the depth, or the number alone.
type tag struct {
	f     *feature
	texts []string
	brief int     // which of the texts is set
	at    float64 // paper x of the point that its leader leads to
	x     float64 // paper x of its middle
	slot  float64 // paper x at which its leader leaves the lane
	upper bool    // it stands in the second row
}

func (t tag) text() string { return t.texts[t.brief] }

// lane is the labels of a face's cuts and bores over the face, in one row, or in
// two where one is too short and the sheet has room.
type lane struct {
	letters dim.Group
	tags    []tag
	lo, hi  float64 // paper x between which they stand
	rows    int
}

// Room in a lane, paper mm.
const (
	tagGap    = 2.5 // between labels of a row
	slotWide  = 1.0 // for a leader that passes the lower row
	slotGap   = 1.5 // between labels and leaders in the lower row
	secondRow = 1.2*dim.Text + 2.4
)

// labelled writes the labels of all features and settles their lettering.
func (v *stickView) labelled() {
	v.texts = make([][]string, len(v.feats))
	for i := range v.feats {
		v.texts[i] = v.feats[i].figures(v.f.Units)
	}
	v.group = dim.Together("labels", slices.Concat(v.texts...)...)
}

// laneOf returns the lane of a face with its labels placed in one row.
func (p *facePage) laneOf(face int) *lane {
	l := &lane{letters: p.group, lo: p.x0, hi: p.field.X1}
	if p.st.before {
		l.lo += sideText
	}
	if p.st.after {
		l.hi -= sideText
	}
	for i := range p.feats {
		f := &p.feats[i]
		if f.face != face && !(f.face == 0 && face == 1) {
			continue
		}
		if q, ok := p.target(faceRow{n: face}, f); ok {
			l.tags = append(l.tags, tag{f: f, texts: p.texts[i], at: q.X})
		}
	}
	sort.SliceStable(l.tags, func(i, k int) bool { return l.tags[i].at < l.tags[k].at })
	l.settle(1)
	return l
}

// settle places the labels in one row or two. Where they are too many the
// longest are cut down to their numbers; the table has their figures.
func (l *lane) settle(rows int) {
	l.rows = rows
	for i := range l.tags {
		l.tags[i].brief, l.tags[i].upper = 0, rows == 2 && i%2 == 1
	}
	for !l.place() && l.shorten() {
	}
}

// shorten cuts the longest label down by a step and reports whether one could be.
func (l *lane) shorten() bool {
	worst := -1
	for i, t := range l.tags {
		if t.brief+1 < len(t.texts) && (worst < 0 || l.letters.Measure(t.text()) > l.letters.Measure(l.tags[worst].text())) {
			worst = i
		}
	}
	if worst < 0 {
		return false
	}
	l.tags[worst].brief++
	return true
}

// place spreads the labels over their rows and reports whether all fit. Both
// rows keep the order of the points, and a leader of the upper row has a slot of
// its own in the lower one, so no leader crosses another or a label.
func (l *lane) place() bool {
	wants := make([]dim.Want, len(l.tags))
	for i, t := range l.tags {
		wants[i] = dim.Want{At: t.at, Size: l.letters.Measure(t.text())}
		if t.upper {
			wants[i].Size = slotWide
		}
	}
	gap := tagGap
	if l.rows == 2 {
		gap = slotGap
	}
	slots, ok := dim.Spread(wants, gap, l.lo, l.hi)
	var upper []dim.Want
	for i := range l.tags {
		l.tags[i].slot, l.tags[i].x = slots[i], slots[i]
		if l.tags[i].upper {
			upper = append(upper, dim.Want{At: slots[i], Size: l.letters.Measure(l.tags[i].text())})
		}
	}
	spots, also := dim.Spread(upper, tagGap, l.lo, l.hi)
	for i := range l.tags {
		if l.tags[i].upper {
			l.tags[i].x, spots = spots[0], spots[1:]
		}
	}
	return ok && also
}

// lost is how much of the labels is left to the table.
func (l *lane) lost() int {
	n := 0
	for _, t := range l.tags {
		n += t.brief
	}
	return n
}

// openRows gives second rows to the lanes that lose most without one, while the room
// lasts, and returns the room that is left.
func openRows(lanes map[int]*lane, faces []int, room float64) float64 {
	for room >= secondRow {
		var worst *lane
		for _, n := range faces {
			if l := lanes[n]; l.rows == 1 && l.lost() > 0 && (worst == nil || l.lost() > worst.lost()) {
				worst = l
			}
		}
		if worst == nil {
			break
		}
		worst.settle(2)
		room -= secondRow
	}
	return room
}

// extra is the room that the lane takes beyond its first row.
func (l *lane) extra() float64 { return float64(l.rows-1) * secondRow }

// labels sets the labels of a lane over a face, with leaders.
func (p *facePage) labels(l *lane, r faceRow) {
	y := r.top + 2
	for _, t := range l.tags {
		to, _ := p.target(r, t.f)
		from := []vec.P{vec.At(t.slot, y-0.6), to}
		base := y
		if t.upper {
			base += secondRow
			from = append([]vec.P{vec.At(t.x, base-0.6), vec.At(t.slot, y+1.25*l.letters.Height)}, from...)
		}
		p.s.Poly(draw.Dimension, false, from...).Owner = t.f.id()
		dim.Dot(p.s, to)
		x := l.letters.Text(p.s, vec.At(t.x, base), t.text())
		x.Anchor, x.Halo, x.Owner, x.Mark = draw.Middle, true, t.f.id(), fmt.Sprintf("cut:%d", t.f.n)
	}
}
