package templates

import (
	"maps"
	"math"
	"strconv"
	"strings"
	"testing"

	"pegwright/draw"
	"pegwright/draw/measured"
	"pegwright/draw/svg"
	"pegwright/geom/vec"
)

// found is a rendered sheet read back: circles and straight lines by mark.
type found struct {
	name  string
	holes map[string]measured.Circle
	lines map[string][2]vec.P
	runs  map[string][][2]vec.P // every straight piece of a mark
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
