package dim

import (
	"math"

	"pegwright/draw"
	"pegwright/draw/font"
	"pegwright/geom/vec"
)

// Request asks for one dimension between two features on paper.
type Request struct {
	From, To vec.P  // paper mm
	Text     string // the figures
	Owner    string // owner of the lines, "" for none
	Name     string // a second line of text under or beside the figures; may be ""
}

// label returns the text on the dimension line.
func (r Request) label() string {
	if r.Name == "" {
		return r.Text
	}
	return r.Text + "  " + r.Name
}

// Linear draws one dimension: the distance from r.From to r.To along dir, on a
// dimension line through the point on. The text stands above the line, between
// the arrowheads where it fits, else past the second one along dir.
func Linear(s *draw.Sheet, dir, on vec.P, r Request) {
	d := upright(dir.Unit())
	l := layoutOf(d, r)
	lines(s, d, on, r, l)
	figures(s, d, on, r, l)
}

// laid is where a dimension's text goes, as coordinates along its line.
type laid struct {
	a, b   float64 // the two features, a <= b
	t0, t1 float64 // the text
	lo, hi float64 // all that is taken on the line
	inside bool
}

// layoutOf decides where the text of a dimension goes on its line.
func layoutOf(d vec.P, r Request) laid {
	a, b := d.Dot(r.From), d.Dot(r.To)
	if a > b {
		a, b = b, a
	}
	w := font.Measure(r.label(), Text, false)
	l := laid{a: a, b: b}
	if b-a >= w+1 && b-a >= 2*arrow+1 {
		l.inside = true
		l.t0 = (a+b)/2 - w/2
		l.t1, l.lo, l.hi = l.t0+w, a, b
		return l
	}
	l.inside = b-a >= 2*arrow+1
	l.t0 = b + arrow + 1.5
	if l.inside {
		l.t0 = b + 1.5
	}
	l.t1 = l.t0 + w
	l.lo, l.hi = a-arrow-2, l.t1
	if l.inside {
		l.lo = a
	}
	return l
}

// lines draws the lines and arrowheads of a dimension that has been laid out.
func lines(s *draw.Sheet, d, on vec.P, r Request, l laid) {
	n := d.Left()
	h := n.Dot(on)
	at := func(x float64) vec.P { return d.Mul(x).Add(n.Mul(h)) }
	line := func(a, b vec.P) { s.Line(draw.Dimension, a, b).Owner = r.Owner }
	for _, f := range []vec.P{r.From, r.To} {
		x, y := d.Dot(f), n.Dot(f)
		up := math.Copysign(1, h-y)
		if math.Abs(h-y) > start+beyond {
			line(d.Mul(x).Add(n.Mul(y+up*start)), d.Mul(x).Add(n.Mul(h+up*beyond)))
		}
	}
	from, to := l.a, l.b
	if l.inside {
		Arrow(s, at(l.a), d.Mul(-1)).Owner = r.Owner
		Arrow(s, at(l.b), d).Owner = r.Owner
	} else {
		Arrow(s, at(l.a), d).Owner = r.Owner
		Arrow(s, at(l.b), d.Mul(-1)).Owner = r.Owner
		from -= arrow + 2
	}
	line(at(from), at(math.Max(to, l.t1)))
}

// figures sets the text of a dimension that has been laid out, backed with
// white, so it must come after all lines.
func figures(s *draw.Sheet, d, on vec.P, r Request, l laid) {
	n := d.Left()
	t := s.Text(d.Mul(l.t0).Add(n.Mul(n.Dot(on)+above)), Text, r.label())
	t.Rot, t.Owner, t.Halo = math.Atan2(d.Y, d.X), r.Owner, true
}

// Moved returns the requests moved by o on the paper, mm.
func Moved(reqs []Request, o vec.P) []Request {
	out := append([]Request(nil), reqs...)
	for i := range out {
		out[i].From, out[i].To = out[i].From.Add(o), out[i].To.Add(o)
	}
	return out
}
