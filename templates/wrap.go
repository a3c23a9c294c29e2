package templates

import (
	"strings"
	"sync"

	"pegwright/draw/font"
)

// tie stands for a no-break space while text is wrapped: the wrapper would
// break there. It measures no less than a space.
const tie = "\x01"

// wraps keeps how paragraphs break: the same words are tried in many layouts, and
// stand on many templates. Templates that are drawn at the same time may share it.
type wraps struct {
	mu    sync.Mutex
	lines map[wrapping][]string
}

type wrapping struct {
	para
	width float64
}

// wrap returns the lines of a paragraph, of at most width mm each. Without a place
// to keep them (nil) it breaks them anew each time.
func (w *wraps) wrap(q para, width float64) []string {
	if w == nil {
		return wrap(q.text, width, q.height, q.bold)
	}
	k := wrapping{q, width}
	w.mu.Lock()
	lines, ok := w.lines[k]
	w.mu.Unlock()
	if !ok {
		lines = wrap(q.text, width, q.height, q.bold) // others need not wait for it
		w.mu.Lock()
		w.lines[k] = lines
		w.mu.Unlock()
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
		for strings.Contains(l, "-") && font.Measure(l, height, bold) > width {
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
