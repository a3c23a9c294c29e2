package timber

import (
	"math"
	"sort"

	"pegwright/draw/scene"
	"pegwright/geom"
)

// piece is a stretch of a timber that is drawn without a break: where its
// lower end comes to lie on paper, and how it ends on either side.
type piece struct {
	scene.Span
	x                   float64 // paper x of its lower end
	tornStart, tornLast bool    // broken off there
}

// strip is what one sheet shows of a timber's length.
type strip struct {
	pieces      []piece
	before      bool // a sheet before shows what lies nearer to the start end
	after       bool
	match, last float64 // where the sheet begins and ends along the timber
}

// Lengths on paper about breaks, mm.
const (
	tornMargin = 7.0 // plain wood drawn past what is cut, at least
	tornGap    = 3.0 // between two pieces
	sideText   = 6.0 // for the words along a match line
)

// busy returns the stretches of a timber that its cuts and bores touch, and
// both ends, in order, none touching another.
func busy(t *geom.Timber) []scene.Span {
	all := []scene.Span{{}, {From: t.Length, To: t.Length}}
	add := func(a, b float64) {
		a, b = max(a, 0), min(b, t.Length)
		if a <= b {
			all = append(all, scene.Span{From: a, To: b})
		}
	}
	for _, c := range t.Cuts {
		lo, hi := c.Solid.Bounds()
		add(lo.X, hi.X)
	}
	for _, b := range t.Bores {
		r := b.Diameter / 2
		add(min(b.From.X, b.To.X)-r, max(b.From.X, b.To.X)+r)
	}
	sort.SliceStable(all, func(i, k int) bool { return all[i].From < all[k].From })
	out := all[:1]
	for _, s := range all[1:] {
		if l := &out[len(out)-1]; s.From <= l.To+1 {
			l.To = max(l.To, s.To)
			continue
		}
		out = append(out, s)
	}
	return out
}

// lay divides a timber, busy on the given stretches, drawn at scale k into sheets
// with width paper mm of room each. A timber that fits is drawn whole; else plain lengths are broken out,
// leaving margin paper mm of them, and what is still too long goes on on further
// sheets. most is how many running dimensions a sheet holds, at the places given.
func lay(t *geom.Timber, busy []scene.Span, k, width, margin float64, places []float64, most int) []strip {
	if t.Length*k <= width && len(places) <= most {
		return []strip{{pieces: []piece{{Span: scene.Span{From: 0, To: t.Length}}}, last: t.Length}}
	}
	if len(places) <= most && wide(busy, k, margin) <= width {
		return []strip{stripOf(t, busy, 0, len(busy), k, margin)}
	}
	width -= 2 * sideText
	var out []strip
	rest := parted(busy, (width-2*margin)/k, places, most)
	for from := 0; from < len(rest); {
		to := from + 1
		for to < len(rest) && wide(rest[from:to+1], k, margin) <= width && holding(places, rest[from].From, rest[to].To) <= most {
			to++
		}
		out = append(out, stripOf(t, rest, from, to, k, margin))
		from = to
	}
	return out
}

// parted divides stretches that are longer than a sheet, or hold more places
// than a sheet has room for.
func parted(all []scene.Span, longest float64, places []float64, most int) []scene.Span {
	var out []scene.Span
	for _, s := range all {
		for {
			cut := s.To
			if s.Long() > longest {
				cut = s.From + longest
			}
			for holding(places, s.From, cut) > most && cut-s.From > 1 {
				cut = s.From + (cut-s.From)*0.9
			}
			if cut >= s.To {
				break
			}
			cut = clearOf(places, cut, (s.To-s.From)/20)
			out = append(out, scene.Span{From: s.From, To: cut})
			s.From = cut
		}
		out = append(out, s)
	}
	return out
}

// clearOf moves a place down by at most by to where it is farthest from places.
func clearOf(places []float64, x, by float64) float64 {
	best, room := x, -1.0
	for i := range 21 {
		y := x - by*float64(i)/20
		gap := math.Inf(1)
		for _, p := range places {
			gap = min(gap, math.Abs(p-y))
		}
		if gap > room+1e-6 {
			best, room = y, gap
		}
	}
	return best
}

// holding counts the places between two others.
func holding(places []float64, from, to float64) int {
	n := 0
	for _, p := range places {
		if p >= from-1e-6 && p <= to+1e-6 {
			n++
		}
	}
	return n
}

// wide is the width on paper of stretches with the plain wood between them
// broken out.
func wide(all []scene.Span, k, margin float64) float64 {
	w := 2 * margin
	for i, s := range all {
		w += s.Long() * k
		if i > 0 {
			w += min((s.From-all[i-1].To)*k, 2*margin+tornGap)
		}
	}
	return w
}

// stripOf returns the sheet of the stretches from one to before another.
func stripOf(t *geom.Timber, all []scene.Span, from, to int, k, margin float64) strip {
	m := margin / k
	s := strip{before: from > 0, after: to < len(all)}
	s.match, s.last = edgeAt(all, from, m, false), edgeAt(all, to, m, true)
	p := piece{Span: scene.Span{From: s.match, To: 0}, tornStart: s.match > 0}
	for i := from + 1; i < to; i++ {
		gap := all[i].From - all[i-1].To
		if gap*k <= 2*margin+tornGap {
			continue
		}
		p.To, p.tornLast = all[i-1].To+m, true
		s.pieces = append(s.pieces, p)
		p = piece{Span: scene.Span{From: all[i].From - m, To: 0}, tornStart: true}
	}
	p.To, p.tornLast = s.last, s.last < t.Length
	s.pieces = append(s.pieces, p)
	x := 0.0
	if s.before {
		x = sideText
	}
	for i := range s.pieces {
		s.pieces[i].x = x
		x += s.pieces[i].Long()*k + tornGap
	}
	return s
}

// edgeAt returns where a sheet ends before stretch i (upper true), or where the
// sheet that begins with it begins: midway in a short plain length, so that both
// sheets meet there; past a margin in a long one.
func edgeAt(all []scene.Span, i int, margin float64, upper bool) float64 {
	switch {
	case i == 0:
		return all[0].From
	case i == len(all):
		return all[i-1].To
	}
	a, b := all[i-1].To, all[i].From
	switch {
	case b-a <= 2*margin:
		return (a + b) / 2
	case upper:
		return a + margin
	}
	return b - margin
}

// paper returns the paper x, from the strip's own left edge, of a place along
// the timber, and whether the strip shows it. A place in a length that is broken
// out comes to lie in its break.
func (s strip) paper(x, k float64) (float64, bool) {
	for i, p := range s.pieces {
		if x < p.From-1e-6 {
			if i == 0 {
				return 0, false
			}
			return p.x - tornGap/2, false
		}
		if x <= p.To+1e-6 {
			return p.x + (x-p.From)*k, true
		}
	}
	return 0, false
}

// width is how much of the paper the strip takes.
func (s strip) width(k float64) float64 {
	p := s.pieces[len(s.pieces)-1]
	return p.x + p.Long()*k
}

// along returns the place along the timber that lies at a paper x, from the
// strip's own left edge, and whether there is one.
func (s strip) along(x, k float64) (float64, bool) {
	for _, p := range s.pieces {
		if a := p.From + (x-p.x)/k; a >= p.From && a <= p.To {
			return a, true
		}
	}
	return 0, false
}
