package svg

import (
	"math"

	"pegwright/draw"
	"pegwright/draw/font"
	"pegwright/geom/vec"
)

// typeface appends the attributes of lettering.
func typeface(b []byte, t *draw.Text, pen draw.Pen) []byte {
	b = append(colour(append(b, ` stroke="none" fill="`...), pen.Grey), '"')
	b = size(b, t.Height, t.Bold)
	if t.Bold {
		b = append(b, ` font-weight="`+heavy+`"`...)
	}
	return b
}

// size appends the size of the font in which capitals have a height.
func size(b []byte, height float64, bold bool) []byte {
	return append(draw.AppendNumber(append(b, ` font-size="`...), font.Size(height, bold), 4), '"')
}

// line appends a line of text, a <text> with a place of its own for each run. Its
// size and face are those of the group that it stands in.
func (r *renderer) line(b []byte, t *draw.Text, owner string) []byte {
	r.runs = font.AppendLayout(r.runs[:0], t.S, t.Height, t.Bold)
	if len(r.runs) == 0 {
		return b
	}
	origin, turned := t.At, t.Rot != 0
	if turned {
		b = append(r.point(append(b, `<g transform="translate(`...), t.At), ") rotate("...)
		b = append(draw.AppendNumber(b, -t.Rot*180/math.Pi, 6), ")\">\n"...)
		origin = vec.P{Y: r.sheet.H} // the place that comes out as 0
	}
	wide := 0.0
	if t.Halo || t.Anchor != draw.Start {
		wide = font.Measure(t.S, t.Height, t.Bold)
	}
	if t.Halo {
		b = r.box(append(b, `<rect data-class="halo"`...), font.BoxOf(&draw.Text{At: origin, Height: t.Height, Anchor: t.Anchor}, wide))
		b = append(b, " fill=\"#fff\"/>\n"...)
	}
	origin.X -= font.Before(t.Anchor, wide)
	used := r.charset(t.Bold)
	for i := range r.runs {
		run := &r.runs[i]
		used.add(run.S)
		b = r.at(append(b, "<text"...), ` x="`, origin.X+run.X)
		b = r.at(b, ` y="`, r.sheet.H-(origin.Y+run.Y))
		if run.Height != t.Height {
			b = size(b, run.Height, t.Bold)
		}
		b = append(keys(b, t.Head(), owner), '>')
		b = append(appendText(b, run.S), "</text>\n"...)
	}
	if turned {
		b = append(b, "</g>\n"...)
	}
	return b
}
