package joint

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"strings"

	"pegwright/draw"
	"pegwright/draw/block"
	"pegwright/draw/dim"
	"pegwright/draw/page"
	"pegwright/draw/scene"
	"pegwright/geom"
	"pegwright/geom/vec"
)

// rowPitch is the height of a line of the joint's table, paper mm.
const rowPitch = dim.Text * 1.57

// rowsOf returns what is cut and scribed on one timber: its dimensions, each label
// once, then the layout along the stick from its start end.
func rowsOf(f *geom.Frame, g scene.Group, t *geom.Timber) []row {
	return slices.Concat(sizes(f, g.First(), t), bevelRows(f, g.First(), t), layout(f, g, t))
}

// set sets the table under its heading.
func (t table) set(w *page.Flow) {
	if len(t.rows) == 0 {
		return
	}
	w.Need(dim.Text*page.Pitch + 2*rowPitch)
	w.Head(t.head)
	for _, r := range t.rows {
		x, s := w.X, w.S
		lines := rowNames(&w.Pen, r)
		w.Need(float64(len(lines)) * rowPitch)
		if w.X != x || w.S != s {
			w.Head(t.head + ", continued")
			lines = rowNames(&w.Pen, r) // the column may have another width
		}
		valueBeside(&w.Pen, lines, r.value)
	}
	w.Skip(1.5)
}

// row is a line of the table.
type row struct{ name, value string }

// figures is the group of a joint's table. Its values stand for dimensions and
// are of their size, and so are their names.
func figures() dim.Group { return dim.Group{Name: "joint table", Height: dim.Text} }

// rowOf sets a name and its value at the right.
func rowOf(w *page.Flow, r row) {
	w.Need(float64(len(rowNames(&w.Pen, r))) * rowPitch)
	valueOf(&w.Pen, r)
}

// rowNames wraps the name of a row beside its value.
func rowNames(p *page.Pen, r row) []string {
	g := figures()
	return page.Wrap(r.name, p.W-3-g.Measure(r.value), g.Height)
}

// valueOf sets a name and its value as row does, in a place that is known to
// suffice.
func valueOf(p *page.Pen, r row) { valueBeside(p, rowNames(p, r), r.value) }

// valueBeside is valueOf with the name as rowNames has wrapped it.
func valueBeside(p *page.Pen, names []string, value string) {
	g := figures()
	for i, l := range names {
		g.Text(p.S, vec.At(p.X, p.Y-dim.Text-float64(i)*rowPitch), l)
	}
	g.Text(p.S, vec.At(p.X+p.W, p.Y-dim.Text), value).Anchor = draw.End
	p.Y -= float64(len(names)) * rowPitch
}

// sizes returns the dimensions of the joint on one timber.
func sizes(f *geom.Frame, j *geom.Joint, t *geom.Timber) []row {
	var out []row
	said := map[row]bool{}
	for _, d := range j.Dims {
		r := row{d.Label, f.Units.FormatJoint(d.Value())}
		if d.Timber == t && !said[r] {
			said[r] = true
			out = append(out, r)
		}
	}
	return out
}

// station is a point of layout along a timber, mm from its start end.
type station struct {
	name  string
	x     float64
	minor bool // a second line of the receiver, told only where it is the same for all
}

// stations returns the points of layout of a joint along its receiver or its
// enterer: the lines scribed round the receiver, then the other places.
func stations(j *geom.Joint, receiver bool) []station {
	var out []station
	t := j.Of
	if receiver {
		t = j.Into
		for _, l := range j.Lines {
			name := shortName(l.Name, j.Of.ID)
			if l.Main {
				name = "J, " + name
			}
			out = append(out, station{name, l.X, !l.Main})
		}
	}
	for _, p := range j.Places {
		if p.On == t {
			out = append(out, station{p.Label, p.X, false})
		}
	}
	return out
}

// shortName is the name of a line without the enterer's id, which stands over
// the table.
func shortName(name, id string) string {
	if before, after, ok := strings.Cut(name, " of "+id); ok && len(strings.Fields(before)) <= 2 {
		return before + after
	}
	return strings.ReplaceAll(name, id, "the stick that enters")
}

// layout returns the points of layout along one timber of the group's first
// joint. A point that lies elsewhere on another timber of the group is left to
// the list of the joints served, or out where that does not give it.
func layout(f *geom.Frame, g scene.Group, t *geom.Timber) []row {
	receiver := t == g.First().Into
	var out []row
	points, apart := layouts(g, receiver)
	for i, s := range points[0] {
		r := row{"start end to " + s.name, f.Units.FormatJoint(s.x)}
		if apart[i] {
			if s.minor {
				continue
			}
			r.value = "see list"
		}
		out = append(out, r)
	}
	return out
}

// servedAt says of each joint of a group which it is and where it lies: its
// main line on the receiver, and every other point of layout that differs from
// joint to joint.
func servedAt(f *geom.Frame, g scene.Group) map[*geom.Joint]string {
	words := map[*geom.Joint]string{}
	for _, j := range g.Joints {
		words[j] = j.Of.ID + " into " + j.Into.ID
	}
	for _, receiver := range []bool{true, false} {
		points, apart := layouts(g, receiver)
		for n, j := range g.Joints {
			for i, s := range points[n] {
				name, main := strings.CutPrefix(s.name, "J, ")
				switch {
				case main:
					name = "J"
				case s.minor || i < len(apart) && !apart[i]:
					continue
				}
				words[j] += ", " + name + " at " + f.Units.FormatJoint(s.x)
			}
		}
	}
	return words
}

// layouts returns the points of layout of every joint of a group, and which of
// the first one's lie elsewhere on some other.
func layouts(g scene.Group, receiver bool) (points [][]station, apart []bool) {
	for _, j := range g.Joints {
		points = append(points, stations(j, receiver))
	}
	apart = make([]bool, len(points[0]))
	for i, s := range points[0] {
		for _, p := range points[1:] {
			apart[i] = apart[i] || len(p) != len(apart) || math.Abs(p[i].x-s.x) > 0.05
		}
	}
	return points, apart
}

// fewServed is the most joints that are listed under the exploded view; more
// follow the table in its column.
const fewServed = 10

// mostServed is the part of the field's height that the list may take from the
// exploded view.
const mostServed = 0.3

// served sets the list of the joints that the sheet serves.
func (t *telling) served(w *page.Flow) {
	w.Need(3 * dim.Text * page.Pitch)
	same, mirror := t.g.Hands()
	w.Together("served", slices.Collect(maps.Values(t.at))...)
	w.Head(fmt.Sprintf("Joints served: %d (J: line of layout)", len(t.g.Joints)))
	for _, x := range same {
		w.Item(x.Mark, t.at[x])
	}
	if len(mirror) == 0 {
		return
	}
	w.Need(3 * dim.Text * page.Pitch)
	w.Head("Of opposite hand: the mirror image of what is drawn")
	for _, x := range mirror {
		w.Item(x.Mark, t.at[x])
	}
}

// servedHeight returns the height of the list of joints in a field of the given
// width.
func (t *telling) servedHeight(width float64) float64 {
	high, known := t.high[width]
	if !known {
		w := &page.Flow{Pen: page.Pen{S: draw.NewSheet("", "", "", 1, 1), W: width}, Field: block.Field{X1: width, Y0: math.Inf(-1)}}
		t.served(w)
		high = -w.Y
		t.high[width] = high
	}
	return high
}

// servedBelow reports whether the joints served are listed under the exploded view:
// where they are few and leave the view its room.
func (t *telling) servedBelow(field block.Field) bool {
	return len(t.g.Joints) <= fewServed && t.servedHeight(field.W()) <= field.H()*mostServed
}

// servedUnder lists the joints at the foot of the field and returns the field
// above.
func (t *telling) servedUnder(s *draw.Sheet, field block.Field) block.Field {
	high := t.servedHeight(field.W())
	w := &page.Flow{Pen: page.Pen{S: s, X: field.X0, Y: field.Y0 + high, W: field.W()}, Field: field}
	w.Field.Y0 = math.Inf(-1)
	t.served(w)
	field.Y0 += high + 2
	return field
}
