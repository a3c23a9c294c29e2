package scene

import (
	"fmt"
	"math"
	"sort"
	"strings"

	"pegwright/draw"
	"pegwright/geom"
	"pegwright/geom/vec"
)

// Group is a set of joints that are cut alike: one sheet serves them all. The
// first is the one drawn.
type Group struct {
	Joints []*geom.Joint
	apart  *Apart
}

// First returns the joint that is drawn.
func (g Group) First() *geom.Joint { return g.Joints[0] }

// Apart returns the joint that is drawn, pulled apart: the same for all who draw a
// group that Groups has made.
func (g Group) Apart() *Apart {
	if g.apart == nil {
		return &Apart{joint: g.First()}
	}
	return g.apart
}

// Groups puts the joints of a frame that are identical together, in frame
// order. Two joints are identical when, in their own axes and from their main
// line, both timbers have the same sections and lose the same wood, the holes
// and dimensions are the same to 0.01 mm, and nearby ends of the receiver lie
// alike. Mirror images share a group, since they have the same numbers from the
// same arrises; its sheets name those of opposite hand.
func Groups(f *geom.Frame) []Group {
	at := map[string]int{}
	var out []Group
	for _, j := range f.Joints {
		k := identity(j)
		i, ok := at[k]
		if !ok {
			i = len(out)
			at[k] = i
			out = append(out, Group{apart: &Apart{joint: j}})
		}
		out[i].Joints = append(out[i].Joints, j)
	}
	return out
}

// nearEnd is how close an end of the receiver is drawn with a joint, mm.
const nearEnd = 300.0

// identity writes all that makes a joint what it is, in its own axes: which way
// a timber's own axes run does not count, where its reference faces are does.
func identity(j *geom.Joint) string {
	var b strings.Builder
	main := MainLine(j)
	fmt.Fprintf(&b, "%s|%s %s|", j.Kind, draw.Tenths(j.Housing), draw.Tenths(j.LetIn))
	fmt.Fprintf(&b, "%s %s|", draw.Tenths(min(main, nearEnd)), draw.Tenths(min(j.Into.Length-main, nearEnd)))
	for _, t := range []*geom.Timber{j.Into, j.Of} {
		b.WriteString(t.Wood.Name + "|" + faces(j, t) + "|")
		var cuts []string
		for _, c := range t.Cuts {
			if c.Joint == j.ID {
				cuts = append(cuts, c.Name+" "+corners(j, t, c, main))
			}
		}
		sort.Strings(cuts)
		b.WriteString(strings.Join(cuts, "|"))
	}
	for _, p := range j.Pegs {
		fmt.Fprintf(&b, "peg %s %s|", inAxes(j, direction(p)), inAxes(j, p.Draw))
		for _, x := range []float64{p.Bore, p.Length, p.Offset, p.A, p.B, p.P, p.Relish} {
			b.WriteString(draw.Tenths(x) + " ")
		}
	}
	for _, d := range j.Dims {
		b.WriteString(d.Label + draw.Tenths(d.Value()) + "|")
	}
	return b.String()
}

// faces writes where a timber's faces look in joint axes, which of them are
// reference faces, and how thick it is between them.
func faces(j *geom.Joint, t *geom.Timber) string {
	var ws []string
	for n := 1; n <= 4; n++ {
		k := (n + 1) % 2
		ws = append(ws, fmt.Sprintf("%s %v %s %s", inAxes(j, t.Place.OutDir(t.IdealPlane(n).N)), geom.IsReference(n), draw.Tenths(t.Section[k]), draw.Tenths(t.Ideal[k])))
	}
	sort.Strings(ws)
	return strings.Join(ws, ";")
}

// inAxes writes a direction in joint axes.
func inAxes(j *geom.Joint, d vec.V) string {
	var room [96]byte
	b := append(draw.AppendNumber(room[:0], d.Dot(j.Axes.U), 3), ' ')
	b = append(draw.AppendNumber(b, d.Dot(j.Axes.V), 3), ' ')
	return string(draw.AppendNumber(b, d.Dot(j.Axes.W), 3))
}

// corners writes the corners of a cut in joint axes from the main line, sorted.
// Corners far along the timber, where a cut runs out at its end, do not count.
func corners(j *geom.Joint, t *geom.Timber, c geom.Cut, main float64) string {
	ws := make([]string, 0, len(c.Solid.V))
	var room [96]byte
	for _, p := range c.Solid.V {
		u, v, w := j.Axes.Of(t.Place.Out(p))
		if math.Abs(u-main) < nearEnd*3 {
			b := append(draw.AppendTenths(room[:0], u-main), ' ')
			b = append(draw.AppendTenths(b, v), ' ')
			ws = append(ws, string(draw.AppendTenths(b, w)))
		}
	}
	sort.Strings(ws)
	return strings.Join(ws, ";")
}

// MainLine returns the place of the joint's main line along the receiver.
func MainLine(j *geom.Joint) float64 {
	for _, l := range j.Lines {
		if l.Main {
			return l.X
		}
	}
	return 0
}

// Dark returns the timbers of the group for a key view.
func (g Group) Dark() map[string]bool {
	d := map[string]bool{}
	for _, j := range g.Joints {
		d[j.Into.ID], d[j.Of.ID] = true, true
	}
	return d
}

// FaceTitle returns what to call face n of the receiver (or the enterer) of the
// drawn joint: number and word, without what differs from joint to joint.
func (g Group) FaceTitle(receiver bool, n int) string {
	first := g.First()
	t := first.Of
	if receiver {
		t = first.Into
	}
	title, number, word := t.FaceTitle(n), true, t.FaceNames[n-1]
	d := inAxes(first, t.Place.OutDir(t.IdealPlane(n).N))
	for _, j := range g.Joints[1:] {
		o := j.Of
		if receiver {
			o = j.Into
		}
		m := 1
		for m < 4 && inAxes(j, o.Place.OutDir(o.IdealPlane(m).N)) != d {
			m++
		}
		number = number && m == n
		if o.FaceTitle(m) != title {
			title = ""
		}
		if o.FaceNames[m-1] != word {
			word = ""
		}
	}
	switch {
	case title != "":
		return "face " + title
	case number:
		return fmt.Sprintf("face %d", n)
	}
	name := "face 3 or 4"
	if geom.IsReference(n) {
		name = "face 1 or 2"
	}
	if word != "" {
		name += " (" + word + ")"
	}
	return name
}
