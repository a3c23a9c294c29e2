package legible

import (
	"math"

	"pegwright/draw"
)

// mixed finds lettering of two heights that stands together: by the groups that
// the texts name and, whatever they name, by where they stand. ISO 3098 gives
// the steps of heights; that a table, a lane or a paragraph keeps to one of them
// is common practice, no source.
func (w *walk) mixed() {
	first := map[string]*draw.Text{}
	for i, a := range w.texts {
		if f := first[a.Group]; f == nil {
			first[a.Group] = a
		} else if a.Group != "" && a.Height != f.Height {
			w.say("%s is lettered %g mm high at %q and %g at %q", a.Group, f.Height, f.S, a.Height, a.S)
		}
		for k, b := range w.texts[:i] {
			if a.Height != b.Height && !w.Loose[a.Layer] && !w.Loose[b.Layer] && readTogether(a, b, w.boxes[i], w.boxes[k]) {
				w.say("%q, %g mm high, stands beside %q, %g", b.S, b.Height, a.S, a.Height)
			}
		}
	}
}

// readTogether reports whether two texts with their boxes are read as one line
// or as lines of one paragraph: level with each other and about a letter apart,
// or one under the other from the same edge with less than a line between them.
// Bold lettering heads what follows and may be larger.
func readTogether(a, b *draw.Text, p, q draw.Box) bool {
	if a.Rot != 0 || b.Rot != 0 || a.Bold || b.Bold {
		return false
	}
	h := max(a.Height, b.Height)
	if dy := math.Abs(a.At.Y - b.At.Y); dy >= 0.3 {
		return dy < 2*h && a.Anchor == b.Anchor && math.Abs(a.At.X-b.At.X) < 0.3
	}
	return max(p.Min.X, q.Min.X)-min(p.Max.X, q.Max.X) < 1.2*h
}
