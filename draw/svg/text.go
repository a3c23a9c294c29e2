package svg

import (
	"encoding/base64"
	"math"
	"slices"
	"unicode/utf8"

	"pegwright/draw"
	"pegwright/draw/font"
	"pegwright/geom/vec"
)

// family is the name by which texts ask for the embedded font.
const family = "PegGo"

func weight(bold bool) string {
	if bold {
		return "700"
	}
	return "400"
}

// lettering is what is noted while texts are written.
type lettering struct {
	runs  []font.Run // of the text at hand
	faces [2]charset // the characters set in the regular and in the bold face
	ttf   []byte     // the subset at hand
}

// charset is a set of runes: those of ASCII, and others in any order.
type charset struct {
	plain [utf8.RuneSelf]bool
	other []rune
}

func (c *charset) add(s string) {
	for _, r := range s {
		if r < utf8.RuneSelf {
			c.plain[r] = true
		} else {
			c.other = append(c.other, r)
		}
	}
}

// take returns the runes of the set, sorted, and empties it.
func (c *charset) take() []rune {
	for r, used := range c.plain {
		if used {
			c.other = append(c.other, rune(r))
		}
	}
	slices.Sort(c.other)
	out := slices.Compact(c.other)
	*c = charset{other: c.other[:0]}
	return out
}

// fonts embeds one subset for each face that the sheet uses.
func (r *renderer) fonts() error {
	from := len(r.text)
	r.text = append(r.text, "<style type=\"text/css\">\n"...)
	none := len(r.text)
	for i, bold := range []bool{false, true} {
		runes := r.faces[i].take()
		if len(runes) == 0 {
			continue
		}
		var err error
		if r.ttf, err = font.SubsetFace(bold, runes); err != nil {
			return err
		}
		r.text = append(r.text, "@font-face{font-family:"+family+";font-weight:"...)
		r.text = append(append(r.text, weight(bold)...), ";src:url(data:font/ttf;base64,"...)
		r.text = base64.StdEncoding.AppendEncode(r.text, r.ttf)
		r.text = append(r.text, ") format(\"truetype\")}\n"...)
	}
	if len(r.text) == none {
		r.text = r.text[:from]
		return nil
	}
	r.text = append(r.text, "text{white-space:pre}\n</style>\n"...)
	return nil
}

// line writes a line of text, a <text> with a place of its own for each run. Its
// size and face are those of the group that it stands in.
func (r *renderer) line(t *draw.Text) {
	r.runs = font.Layout(t.S, t.Height, t.Bold)
	if len(r.runs) == 0 {
		return
	}
	origin, turned := t.At, t.Rot != 0
	if turned {
		r.text = append(r.text, `<g transform="translate(`...)
		r.point(t.At)
		r.text = append(r.text, `) rotate(`...)
		r.text = append(draw.AppendNumber(r.text, -t.Rot*180/math.Pi, 6), ")\">\n"...)
		origin = vec.P{Y: r.sheet.H} // the place that comes out as 0
	}
	if t.Halo {
		r.text = append(r.text, `<rect data-class="halo"`...)
		r.box(font.Box(&draw.Text{At: origin, Height: t.Height, S: t.S, Bold: t.Bold, Anchor: t.Anchor}))
		r.text = append(r.text, " fill=\"#fff\"/>\n"...)
	}
	shift := font.Shift(t)
	for _, run := range r.runs {
		r.text = append(r.text, "<text"...)
		r.at(` x="`, origin.X-shift+run.X)
		r.at(` y="`, r.sheet.H-(origin.Y+run.Y))
		if run.Height != t.Height {
			r.size(run.Height, t.Bold)
		}
		r.mark(t.Mark)
		r.text = appendText(append(r.text, '>'), run.S)
		r.text = append(r.text, "</text>\n"...)
		r.faces[face(t.Bold)].add(run.S)
	}
	if turned {
		r.text = append(r.text, "</g>\n"...)
	}
}

// size appends the size of the font in which capitals have a height.
func (r *renderer) size(height float64, bold bool) {
	r.text = append(r.text, ` font-size="`...)
	r.text = append(draw.AppendNumber(r.text, font.Size(height, bold), 4), '"')
}

// face returns the place of a face in lettering.faces.
func face(bold bool) int {
	if bold {
		return 1
	}
	return 0
}
