package timber

import (
	"pegwright/draw"
	"pegwright/draw/block"
	"pegwright/draw/page"
)

// cutSheets returns the table on sheets of its own: what the stick is, both its
// ends, and its cuts in the order in which they are best made. A short table
// has the others over it, so that the sheet is filled from its head.
func (v *stickView) cutSheets() []*draw.Sheet {
	field := block.FieldFor(v.f)
	if v.table.beside && v.table.height() < field.H()/2 {
		return newCutTable(v.f, v.g, v.feats, field.W(), false).sheets()
	}
	return v.table.sheets()
}

// sheets sets the table on the fewest sheets that hold it.
func (w *cutTable) sheets() []*draw.Sheet {
	title := block.TitleFor(w.f, "Timber, cuts in order", w.g.Shows(), "")
	title.Note = cutsNote
	next := func() (*draw.Sheet, block.Field) {
		return block.ForFrame(w.f, "timber", "timber-"+w.g.First().ID, title)
	}
	field := block.FieldFor(w.f)
	band, full := w.band(field.H()), field.H()-w.headHigh
	title.Scale = w.endsWords(band)
	s, _ := next()
	block.KeyView(s, w.head(s, field, band), w.f, w.g.Dark())
	out := []*draw.Sheet{s}
	field.Y1 -= band
	from := 0
	for i, n := range page.Breaks(w.blocks(), full-band, full) {
		if i > 0 {
			s, field = next()
			out = append(out, s)
		}
		w.part(s, field, from, from+n)
		from += n
	}
	return out
}

// cutsNote says what the columns of the table are measured from.
const cutsNote = "from: start end; off the arris: from face 1 on the faces 2 and 4, from face 2 on the faces 1 and 3"

// endsWords tells the scale of the ends in a band of the given height.
func (w *cutTable) endsWords(band float64) string { return "ends " + page.Scale(1/w.ends(band)) }

// ends is the scale of the end views in a band of the given height.
func (w *cutTable) ends(band float64) float64 {
	if w.beside {
		band = bandHigh
	}
	return endScale(w.f, w.g.First(), band)
}

// head sets what the stick is and both its ends into a band over the table, or
// at the right of it, and returns the room that is left for a key view.
func (w *cutTable) head(s *draw.Sheet, field block.Field, band float64) (rest block.Field) {
	t := w.g.First()
	if w.beside {
		side := field
		side.X0, side.Y1 = side.X1-besideWide, side.Y1-1
		stickFacts(w.f, w.g, s, side)
		side.Y1 -= w.facts
		ends := side
		ends.Y0 = ends.Y1 - bandHigh
		endViews(w.f, t, s, ends, w.ends(band))
		side.Y1 = ends.Y0 - 4
		side.Y0 = max(side.Y0, side.Y1-bandHigh)
		return side
	}
	field.Y0 = field.Y1 - band
	facts, right := page.Split(field, field.X1-bandEnds-bandKey-4, 6)
	ends, key := page.Split(right, right.X1-bandKey, 4)
	stickFacts(w.f, w.g, s, facts)
	endViews(w.f, t, s, ends, w.ends(band))
	key.Y0 += 6
	return key
}

// under sets the table with all that belongs to it in a field that has room for
// it, a band of the given height over it.
func (w *cutTable) under(s *draw.Sheet, field block.Field, band float64) {
	note := w.head(s, field, band)
	p := page.Pen{S: s, X: note.X0, Y: note.Y1, W: note.W()}
	p.Para(cutsNote)
	field.Y1 -= band
	w.part(s, field, 0, len(w.blocks()))
}
