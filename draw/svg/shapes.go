package svg

import (
	"math"

	"pegwright/draw"
	"pegwright/geom/vec"
)

// stroke appends the attributes of a pen.
func stroke(b []byte, p draw.Pen) []byte {
	if p.Width == 0 {
		return append(b, ` stroke="none"`...)
	}
	b = append(colour(append(b, ` stroke="`...), p.Grey), `" stroke-width="`...)
	b = append(draw.AppendNumber(b, p.Width, 4), '"')
	if len(p.Dash) == 0 {
		return b
	}
	b = append(b, ` stroke-linecap="butt" stroke-dasharray="`...)
	for i, d := range p.Dash {
		if i > 0 {
			b = append(b, ' ')
		}
		b = draw.AppendNumber(b, d, 4)
	}
	return append(b, '"')
}

// colour appends a grey (0 black to 1 white) as a colour.
func colour(b []byte, grey float64) []byte {
	if grey == 0 {
		return append(b, "#000"...)
	}
	const hex = "0123456789abcdef"
	v := int(math.Round(grey * 255))
	h, l := hex[v>>4], hex[v&15]
	return append(b, '#', h, l, h, l, h, l)
}

// filling appends what an area is filled with.
func filling(b []byte, filled bool, grey float64) []byte {
	if !filled {
		return b
	}
	return append(colour(append(b, ` fill="`...), grey), '"')
}

// at appends an attribute that is a length or a coordinate: what is written
// before it, and the number.
func (r *renderer) at(b []byte, before string, x float64) []byte {
	return append(draw.AppendNumber(append(b, before...), x, r.places), '"')
}

// point appends the two coordinates of a point.
func (r *renderer) point(b []byte, p vec.P) []byte {
	b = append(draw.AppendNumber(b, p.X, r.places), ' ')
	return draw.AppendNumber(b, r.sheet.H-p.Y, r.places)
}

func (r *renderer) circle(b []byte, c *draw.Circle, owner string) []byte {
	b = filling(keys(append(b, "<circle"...), c.Head(), owner), c.Filled, c.Grey)
	b = r.at(b, ` cx="`, c.C.X)
	b = r.at(b, ` cy="`, r.sheet.H-c.C.Y)
	return append(r.at(b, ` r="`, c.R), "/>\n"...)
}

func (r *renderer) path(b []byte, t *draw.Path, owner string) []byte {
	b = filling(keys(append(b, "<path"...), t.Head(), owner), t.Filled, t.Grey)
	b = append(b, ` d="`...)
	b = r.loop(b, t.Pts, t.Closed || len(t.Holes) > 0)
	for _, h := range t.Holes {
		if len(h) > 0 {
			b = r.loop(b, h, true)
		}
	}
	return append(b, "\"/>\n"...)
}

// loop appends a chain of lines. One along a side of the paper needs only one
// number (SVG 1.1, 8.3.4).
func (r *renderer) loop(b []byte, pts []vec.P, closed bool) []byte {
	at := pts[0]
	b = r.point(append(b, 'M'), at)
	for _, p := range pts[1:] {
		switch {
		case p.Y == at.Y:
			b = draw.AppendNumber(append(b, 'H'), p.X, r.places)
		case p.X == at.X:
			b = draw.AppendNumber(append(b, 'V'), r.sheet.H-p.Y, r.places)
		default:
			b = r.point(append(b, 'L'), p)
		}
		at = p
	}
	if closed {
		b = append(b, 'Z')
	}
	return b
}

// ellipse appends an ellipse or a part of one as elliptical arcs (SVG 1.1, 8.3.8)
// of a third of a turn at most. A half turn would not do: its centre is found from
// a chord that is a diameter, where the least rounding of the ends moves it by the
// square root of that rounding. The paper's y is turned over, and with it the turn
// and the sweep.
func (r *renderer) ellipse(b []byte, e *draw.Ellipse, owner string) []byte {
	b = filling(keys(append(b, "<path"...), e.Head(), owner), e.Filled, e.Grey)
	from, to, whole := e.Span()
	n := max(1, int(math.Ceil((to-from)/(2*math.Pi/3)-1e-9)))
	b = r.point(append(b, ` d="M`...), e.At(from))
	for i := 1; i <= n; i++ {
		b = append(draw.AppendNumber(append(b, 'A'), e.RX, r.places), ' ')
		b = append(draw.AppendNumber(b, e.RY, r.places), ' ')
		b = append(draw.AppendNumber(b, -e.Rot*180/math.Pi, 6), " 0 0 "...)
		b = r.point(b, e.At(from+(to-from)*float64(i)/float64(n)))
	}
	if whole {
		b = append(b, 'Z')
	}
	return append(b, "\"/>\n"...)
}

// box appends the place and size of a rectangle.
func (r *renderer) box(b []byte, o draw.Box) []byte {
	b = r.at(b, ` x="`, o.Min.X)
	b = r.at(b, ` y="`, r.sheet.H-o.Max.Y)
	b = r.at(b, ` width="`, o.W())
	return r.at(b, ` height="`, o.H())
}
