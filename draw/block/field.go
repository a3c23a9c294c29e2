package block

import (
	"pegwright/draw"
	"pegwright/geom"
	"pegwright/geom/vec"
)

// Field is the free drawing area of a sheet, from X0 to X1 and from Y0 up to Y1,
// paper millimetres.
type Field struct{ X0, Y0, X1, Y1 float64 }

// W returns the width of the field, millimetres.
func (f Field) W() float64 { return f.X1 - f.X0 }

// H returns the height of the field, millimetres.
func (f Field) H() float64 { return f.Y1 - f.Y0 }

// Mid returns the middle of the field.
func (f Field) Mid() vec.P { return vec.P{X: (f.X0 + f.X1) / 2, Y: (f.Y0 + f.Y1) / 2} }

// Inset returns the field made smaller by d on every side, millimetres.
func (f Field) Inset(d float64) Field { return Field{f.X0 + d, f.Y0 + d, f.X1 - d, f.Y1 - d} }

// Box returns the field as a box.
func (f Field) Box() draw.Box {
	return draw.Box{Min: vec.P{X: f.X0, Y: f.Y0}, Max: vec.P{X: f.X1, Y: f.Y1}}
}

// FieldFor returns the field that ForFrame leaves free, which is the same on every
// sheet of the frame.
func FieldFor(f *geom.Frame) Field {
	p := paperFor(f.Paper.Sheets, true)
	return fieldOf(draw.NewSheet("", "", "", p.W, p.H))
}

// fieldOf is what border and title block leave free on a sheet.
func fieldOf(s *draw.Sheet) Field {
	b := border(s)
	return Field{b.Min.X + air, gridOf(s).top + air, b.Max.X - air, b.Max.Y - air}
}
