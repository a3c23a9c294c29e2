package templates

import (
	"strings"

	"pegwright/draw/font"
)

// tie stands for a no-break space while text is wrapped: the wrapper would
// break there. It measures no less than a space.
const tie = "\x01"

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
