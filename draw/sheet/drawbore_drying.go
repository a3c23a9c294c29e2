package sheet

import (
	"fmt"
	"math"

	"pegwright/draw"
	"pegwright/draw/block"
	"pegwright/geom/peg"
	"pegwright/geom/wood"
)

// left returns the draw left after drying for the pairings of ring directions;
// brace reports whether there is a nose to be drawn too.
func (d *bored) left() (bounds []peg.Bound, brace bool) {
	st := d.f.Stock
	receiver := peg.Drying(d.j.Into.Wood, st.Green, st.Service)
	if d.p.PFrom == "nose line" {
		enterer := peg.Drying(d.j.Of.Wood, st.Green, st.Service)
		b := peg.Brace{Offset: d.p.Offset, Bearing: d.p.A, Along: d.p.P, Angle: d.angle()}
		if !d.p.AlongBrace {
			b.Way = peg.SquareToShoulder
		}
		return b.Bounds(receiver, enterer), true
	}
	pw, _ := wood.Lookup(st.Peg)
	q := peg.Square{Offset: d.p.Offset, Bearing: d.p.A, Bore: d.p.Bore, Peg: d.p.Bore}
	return q.Bounds(receiver, peg.Drying(pw, st.PegMC, st.Service)), false
}

// angle is between enterer and receiver, radians.
func (d *bored) angle() float64 {
	return math.Acos(math.Min(1, math.Abs(d.j.Of.Place.X.Dot(d.j.Into.Place.X))))
}

// dryingRows returns the rows of the table, the head first.
func (d *bored) dryingRows() [][]string {
	bounds, brace := d.left()
	if !brace {
		rows := [][]string{{"receiver's face moves", "toward the shoulder"}}
		for _, b := range bounds {
			rows = append(rows, []string{b.Receiver.String(), d.signed(b.Left.Shoulder)})
		}
		return rows
	}
	rows := [][]string{{"receiver moves", "brace moves", "toward shoulder", "toward nose"}}
	for _, b := range bounds {
		rows = append(rows, []string{b.Receiver.String(), b.Enterer.String(), d.signed(b.Left.Shoulder), d.signed(b.Left.Nose)})
	}
	return rows
}

const (
	dryRow = small * pitch
	dryKey = 42.0 // width of the key view
	dryCol = 27.0 // width of a column of the table
)

// dryingWords are the paragraphs beside the table.
func (d *bored) dryingWords() []string {
	st := d.f.Stock
	out := []string{
		fmt.Sprintf("Offset %s: %s.", d.say(d.p.Offset), d.p.Why),
		fmt.Sprintf("Table: offset that is left when the timbers have dried from %.0f %% to %.0f %% moisture (they begin to shrink below fibre saturation). A real face lies between tangential and radial; with the heart boxed it is nearer to radial. Below zero, the dry peg holds the joint open.", st.Green, st.Service),
		"It is a length, not a force: nothing is claimed of what the joint carries.",
	}
	return out
}

// dryingHeight returns the height of the strip with the drying table, with the
// space above it.
func (d *bored) dryingHeight(width float64) float64 {
	rows := d.dryingRows()
	table := float64(len(rows)+1)*dryRow + 3
	h := 0.0
	w := pen{w: width - dryKey - d.dryingWide(rows) - 8}
	for _, t := range d.dryingWords() {
		th := w.height(t)
		h += float64(len(wrap(t, w.w, th)))*th*pitch + 1
	}
	return max(table, h, 30) + 4
}

func (d *bored) dryingWide(rows [][]string) float64 {
	if len(rows[0]) == 2 {
		return 2 * 38
	}
	return float64(len(rows[0])) * dryCol
}

// drawDrying draws the strip at the foot of the field: table, why, key view.
func (d *bored) drawDrying(s *draw.Sheet, f block.Field, h float64) block.Field {
	top := f.Y0 + h - 4
	s.Line(draw.Dimension, at(f.X0, top+1.5), at(f.X1, top+1.5))
	rows := d.dryingRows()
	wide := d.dryingWide(rows)
	col := wide / float64(len(rows[0]))
	y := top
	s.Text(at(f.X0, y-small), small, "Offset left in service, from "+d.signed(d.p.Offset)).Bold = true
	y -= dryRow
	for i, r := range rows {
		for k, c := range r {
			t := s.Text(at(f.X0+float64(k)*col, y-small), small, c)
			if k == len(r)-1 || len(r) == 4 && k == 2 {
				t.At.X, t.Anchor = f.X0+float64(k+1)*col-3, draw.End
			}
		}
		y -= dryRow
		if i == 0 {
			s.Line(draw.Dimension, at(f.X0, y+0.6), at(f.X0+wide-3, y+0.6))
			y -= 0.8
		}
	}
	w := pen{s: s, x: f.X0 + wide + 4, y: top, w: f.W() - wide - dryKey - 8}
	for _, t := range d.dryingWords() {
		w.para(t)
		w.skip(1)
	}
	key := block.Field{X0: f.X1 - dryKey, Y0: f.Y0, X1: f.X1, Y1: top}
	block.KeyView(s, key, d.f, d.dark())
	f.Y0 += h
	return f
}

// dark are the timbers of the group's first joint: those that are drawn.
func (d *bored) dark() map[string]bool {
	return map[string]bool{d.j.Into.ID: true, d.j.Of.ID: true}
}
