package templates

import (
	"strings"

	"pegwright/draw/font"
)

// tie stands for a no-break space while text is wrapped: the wrapper would
// break there. It measures no less than a space.
const tie = "\x01"

// wraps keeps how paragraphs break: the same words are tried in many layouts. It
// is for one page at a time.
type wraps map[wrapping][]string

type wrapping struct {
	para
	width float64
}

// wrap returns the lines of a paragraph, of at most width mm each.
func (w wraps) wrap(q para, width float64) []string {
	k := wrapping{q, width}
	lines, ok := w[k]
	if !ok {
		lines = wrap(q.text, width, q.height, q.bold)
		if w != nil {
			w[k] = lines
		}
	}
	return lines
}

// wrap breaks text into lines of at most width mm; a word that is too long, as
// an id may be, is broken after a hyphen.
func wrap(text string, width, height float64, bold bool) []string {
	var out []string
	text = strings.ReplaceAll(text, "\u00a0", tie)
	for _, l := range font.WrapFace(text, width, height, bold) {
		l = strings.ReplaceAll(l, tie, " ")
		for font.Measure(l, height, bold) > width {
			cut := 0
			for i, r := range l {
				if r == '-' && font.Measure(l[:i+1], height, bold) <= width {
					cut = i + 1
				}
			}
			if cut == 0 {
				break
			}
			out, l = append(out, l[:cut]), l[cut:]
		}
		out = append(out, l)
	}
	return out
}
