package svg

import (
	"encoding/base64"
	"slices"
	"unicode/utf8"

	"pegwright/draw/font"
)

// The name by which texts ask for the embedded font, and the weights of its faces.
const (
	family = "PegGo"
	light  = "400"
	heavy  = "700"
)

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

// take returns the runes of the set, sorted, and empties the set. They stand until
// the next one is added.
func (c *charset) take() []rune {
	runes := c.other
	for r, used := range c.plain {
		if used {
			runes = append(runes, rune(r))
		}
	}
	slices.Sort(runes)
	*c = charset{other: runes[:0]}
	return slices.Compact(runes)
}

// charset returns the runes of a face that are noted so far.
func (r *renderer) charset(bold bool) *charset {
	if bold {
		return &r.bold
	}
	return &r.regular
}

// fonts embeds one subset for each face that the sheet uses.
func (r *renderer) fonts() error {
	regular, bold := r.regular.take(), r.bold.take()
	if len(regular)+len(bold) == 0 {
		return nil
	}
	r.text = append(r.text, "<style type=\"text/css\">\n"...)
	if err := r.face(light, false, regular); err != nil {
		return err
	}
	if err := r.face(heavy, true, bold); err != nil {
		return err
	}
	r.text = append(r.text, "text{white-space:pre}\n</style>\n"...)
	return nil
}

// face embeds the glyphs of the runes (sorted), if there are any.
func (r *renderer) face(weight string, bold bool, runes []rune) error {
	if len(runes) == 0 {
		return nil
	}
	var err error
	if r.ttf, err = font.AppendSubset(r.ttf[:0], bold, runes); err != nil {
		return err
	}
	r.text = append(r.text, "@font-face{font-family:"+family+";font-weight:"...)
	r.text = append(append(r.text, weight...), ";src:url(data:font/ttf;base64,"...)
	r.text = base64.StdEncoding.AppendEncode(r.text, r.ttf)
	r.text = append(r.text, ") format(\"truetype\")}\n"...)
	return nil
}
