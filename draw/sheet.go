package draw

import (
	"math"

	"pegwright/geom/vec"
)

// Sheet is one page: its size, its items, and its links.
type Sheet struct {
	// Kind is the kind of sheet, ID its id within the packet, Title its title.
	Kind, ID, Title string
	// W and H are the paper size, millimetres.
	W, H float64
	// Items are painted layer by layer, see Layers, and within a layer in this
	// order.
	Items []Item
	// FullScale marks a 1:1 sheet: coordinates keep 1e-4 mm instead of 1e-3.
	FullScale bool
	// Links are the areas that lead elsewhere.
	Links []Link
	// Step is the line width step, see PenFor.
	Step int
}

// Box is a rectangle with its sides along the paper's, millimetres.
type Box struct{ Min, Max vec.P }

// W returns the width of b, millimetres.
func (b Box) W() float64 { return b.Max.X - b.Min.X }

// H returns the height of b, millimetres.
func (b Box) H() float64 { return b.Max.Y - b.Min.Y }

// Mid returns the middle of b.
func (b Box) Mid() vec.P { return b.Min.Lerp(b.Max, 0.5) }

// Empty reports whether b holds no point at all.
func (b Box) Empty() bool { return b.Min.X > b.Max.X || b.Min.Y > b.Max.Y }

// With returns the smallest box that holds b and the points.
func (b Box) With(pts ...vec.P) Box {
	for _, p := range pts {
		b.Min = vec.P{X: min(b.Min.X, p.X), Y: min(b.Min.Y, p.Y)}
		b.Max = vec.P{X: max(b.Max.X, p.X), Y: max(b.Max.Y, p.Y)}
	}
	return b
}

// NoBox returns the box that holds nothing: the start of a union.
func NoBox() Box {
	return Box{vec.P{X: math.Inf(1), Y: math.Inf(1)}, vec.P{X: math.Inf(-1), Y: math.Inf(-1)}}
}

// Link is an area of a sheet that leads to another sheet or to a URL.
type Link struct {
	// Rect is the area on the sheet.
	Rect Box
	// To is the ID of a sheet, or a URL that begins with http:// or https://.
	To string
}

// NewSheet returns an empty sheet of w by h millimetres with the line width
// step that fits its size.
func NewSheet(kind, id, title string, w, h float64) *Sheet {
	return &Sheet{Kind: kind, ID: id, Title: title, W: w, H: h, Step: stepFor(w, h)}
}

// Add adds items, each painted on top of those of its layer that are there.
func (s *Sheet) Add(items ...Item) { s.Items = append(s.Items, items...) }

// segment is a path of two points, which most items are, in one piece with them.
type segment struct {
	Path
	ends [2]vec.P
}

// Line adds a line from a to b and returns it.
func (s *Sheet) Line(c Class, a, b vec.P) *Path {
	l := &segment{Path: Path{Meta: Meta{Class: c}}, ends: [2]vec.P{a, b}}
	l.Pts = l.ends[:]
	s.Add(&l.Path)
	return &l.Path
}

// Poly adds a chain of lines, closed or not, and returns it.
func (s *Sheet) Poly(c Class, closed bool, pts ...vec.P) *Path {
	p := &Path{Meta: Meta{Class: c}, Pts: pts, Closed: closed}
	s.Add(p)
	return p
}

// Rect adds the outline of b and returns it.
func (s *Sheet) Rect(c Class, b Box) *Path {
	return s.Poly(c, true, b.Min, vec.P{X: b.Max.X, Y: b.Min.Y}, b.Max, vec.P{X: b.Min.X, Y: b.Max.Y})
}

// Tone adds an area filled with grey (0 black to 1 white), without an outline,
// and returns it.
func (s *Sheet) Tone(grey float64, pts ...vec.P) *Path {
	p := s.Poly(Fill, true, pts...)
	p.Filled, p.Grey = true, grey
	return p
}

// Circle adds a circle about centre c of radius r and returns it.
func (s *Sheet) Circle(class Class, c vec.P, r float64) *Circle {
	p := &Circle{Meta: Meta{Class: class}, C: c, R: r}
	s.Add(p)
	return p
}

// Text adds a line of text of the given height at the start of its base line
// and returns it.
func (s *Sheet) Text(at vec.P, height float64, text string) *Text {
	t := &Text{Meta: Meta{Class: TextClass}, At: at, Height: height, S: text}
	s.Add(t)
	return t
}

// Places returns the decimal places of a coordinate on this sheet.
func (s *Sheet) Places() int {
	if s.FullScale {
		return 4
	}
	return 3
}
