package dim

import (
	"pegwright/draw"
	"pegwright/draw/font"
	"pegwright/geom/vec"
)

// Heights of lettering, millimetres: two neighbouring steps of ISO 3098.
const (
	Text  = 3.5 // figures of a dimension; fraction figures then stand 2.5 high
	Small = 2.5 // the least lettering of a sheet
)

// Group is lettering that stands together and so is read together: a lane of
// labels, a table with its heads, a block of notes, a row of a title block. It
// has one height, which is chosen once for all its texts.
type Group struct {
	// Name tells the groups of a sheet apart; the check of a sheet's lettering
	// asks for it.
	Name string
	// Height is that of every text, millimetres.
	Height float64
}

// Together returns the group of the texts. Its height is Small, or Text where
// one of them holds a fraction, whose figures are a step smaller than the text:
// so no figure is smaller than Small.
func Together(name string, texts ...string) Group {
	g := Group{Name: name, Height: Small}
	for _, t := range texts {
		if g.Height < Text && font.Fractured(t) {
			g.Height = Text
		}
	}
	return g
}

// Text sets a text of the group on the sheet, its base line at the place.
func (g Group) Text(s *draw.Sheet, at vec.P, t string) *draw.Text {
	x := s.Text(at, g.Height, t)
	x.Group = g.Name
	return x
}

// Measure returns the width of a text of the group, millimetres.
func (g Group) Measure(t string) float64 { return font.Measure(t, g.Height, false) }
