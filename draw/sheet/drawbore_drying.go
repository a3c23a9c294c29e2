package sheet

import (
	"fmt"
	"math"

	"pegwright/draw"
	"pegwright/draw/block"
	"pegwright/draw/font"
	"pegwright/geom/peg"
	"pegwright/geom/vec"
)

// left returns the draw left for the pairings of ring directions when the
// timbers have dried to the moisture given, percent; brace reports whether there
// is a nose to be drawn too.
func (d *bored) left(moisture float64) (bounds []peg.Bound, brace bool) {
	st := d.f.Stock
	receiver := peg.Drying(d.j.Into.Wood, d.j.Into.Moisture, moisture)
	if d.p.PFrom == "nose line" {
		enterer := peg.Drying(d.j.Of.Wood, d.j.Of.Moisture, moisture)
		b := peg.Brace{Offset: d.p.Offset, Bearing: d.p.A, Along: d.p.P, Angle: d.angle()}
		if !d.p.AlongBrace {
			b.Way = peg.SquareToShoulder
		}
		return b.Bounds(receiver, enterer), true
	}
	q := peg.Square{Offset: d.p.Offset, Bearing: d.p.A, Bore: d.p.Bore, Peg: d.p.Bore}
	return q.Bounds(receiver, peg.Drying(st.PegWood, st.PegMC, st.Service)), false
}

// angle is between enterer and receiver, radians.
func (d *bored) angle() float64 {
	return math.Acos(math.Min(1, math.Abs(d.j.Of.Place.X.Dot(d.j.Into.Place.X))))
}

// dryingRows returns the rows of the table, the head first.
func (d *bored) dryingRows() [][]string {
	bounds, brace := d.left(d.f.Stock.Service)
	if !brace {
		rows := [][]string{{"receiver's rings", "toward shoulder"}}
		for _, b := range bounds {
			rows = append(rows, []string{b.Receiver.String(), d.signed(b.Left.Shoulder)})
		}
		return rows
	}
	rows := [][]string{{"receiver's rings", "brace's rings", "toward shoulder", "toward nose"}}
	for _, b := range bounds {
		rows = append(rows, []string{b.Receiver.String(), b.Enterer.String(), d.signed(b.Left.Shoulder), d.signed(b.Left.Nose)})
	}
	return rows
}

const (
	dryRow  = small * pitch
	dryCol  = 25.0 // width of a column of the table
	dryPlot = 46.0 // width of the plot
)

// dryingWords are the paragraphs beside the table.
func (d *bored) dryingWords() []string {
	st := d.f.Stock
	why := fmt.Sprintf("Offset %s: %s.", d.say(d.p.Offset), d.p.Why)
	if math.Min(wet, st.Green) <= st.Service {
		return []string{why, "The timbers are as dry as in service when they are cut, so the offset stays. It is a length, not a force."}
	}
	return []string{why,
		fmt.Sprintf("Left when dried from %.0f %% to %.0f %% moisture. A real face moves by something between tangential and radial; with the heart boxed, nearer to radial. Below zero the dry peg holds the joint open. It is a length, not a force. Plot: the worst pairing (full) and the best (dashed) from the first shrinkage on.", st.Green, st.Service),
	}
}

func (d *bored) dryingWide(rows [][]string) float64 {
	if len(rows[0]) == 2 {
		return 2 * 34
	}
	return float64(len(rows[0])) * dryCol
}

// drawDrying draws the strip at the foot of the field: the table, and why.
func (d *bored) drawDrying(s *draw.Sheet, f block.Field) block.Field {
	rows := d.dryingRows()
	wide := d.dryingWide(rows)
	h := float64(len(rows)+1)*dryRow + 1
	sum := 0.0
	w := pen{s: s, x: f.X0 + wide + dryPlot + 8, w: f.W() - wide - dryPlot - 8}
	for _, t := range d.dryingWords() {
		th := w.height(t)
		sum += float64(len(font.Wrap(t, w.w, th)))*th*pitch + 0.8
	}
	top := f.Y0 + max(h, sum)
	s.Line(draw.Dimension, at(f.X0, top+1.5), at(f.X1, top+1.5))
	d.table(s, f.X0, top, wide, rows)
	d.plot(s, block.Field{X0: f.X0 + wide + 3, Y0: f.Y0, X1: f.X0 + wide + dryPlot, Y1: top - 1})
	w.y = top
	for _, t := range d.dryingWords() {
		w.para(t)
		w.skip(0.8)
	}
	f.Y0 = top + 4
	return f
}

// table sets the drying table; columns of figures stand to the right.
func (d *bored) table(s *draw.Sheet, x, y, wide float64, rows [][]string) {
	col := wide / float64(len(rows[0]))
	s.Text(at(x, y-small), small, "Offset left in service, of "+d.signed(d.p.Offset)[1:]).Bold = true
	y -= dryRow
	for i, r := range rows {
		for k, c := range r {
			t := s.Text(at(x+float64(k)*col, y-small), small, c)
			if 2*k >= len(r) {
				t.At.X, t.Anchor = x+float64(k+1)*col-3, draw.End
			}
		}
		y -= dryRow
		if i == 0 {
			s.Line(draw.Dimension, at(x, y+0.6), at(x+wide-3, y+0.6))
			y -= 0.8
		}
	}
}

// wet is the moisture below which wood shrinks, percent (fibre saturation, Wood
// Handbook ch. 4: about 30).
const wet = 30.0

// plot draws the draw left against moisture: from the first shrinkage at the
// left to service at the right, the worst pairing full, the best dashed.
func (d *bored) plot(s *draw.Sheet, f block.Field) {
	from, to := math.Min(wet, max(d.j.Into.Moisture, d.j.Of.Moisture)), d.f.Stock.Service
	if from <= to {
		return
	}
	const n = 12
	worst, best := make([]float64, n+1), make([]float64, n+1)
	low, high := 0.0, d.p.Offset
	for i := range worst {
		bounds, _ := d.left(from + (to-from)*float64(i)/n)
		worst[i], best[i] = peg.Worst(bounds), math.Inf(-1)
		for _, b := range bounds {
			best[i] = math.Max(best[i], b.Left.Least())
		}
		low, high = math.Min(low, worst[i]), math.Max(high, best[i])
	}
	x0, x1, y0, y1 := f.X0+8, f.X1, f.Y0+4.5, f.Y1-1
	place := func(i int, v float64) vec.P {
		return at(x0+(x1-x0)*float64(i)/n, y0+(y1-y0)*(v-low)/(high-low))
	}
	line := func(c draw.Class, v []float64) {
		var pts []vec.P
		for i, x := range v {
			pts = append(pts, place(i, x))
		}
		s.Poly(c, false, pts...).Mark = "draw left"
	}
	s.Line(draw.Dimension, at(x0, y0), at(x0, y1))
	s.Line(draw.Dimension, place(0, 0), place(n, 0))
	line(draw.Hidden, best)
	line(draw.Part, worst)
	label := func(x, y float64, a draw.Anchor, t string) { s.Text(at(x, y), small, t).Anchor = a }
	label(x0-1, place(0, 0).Y-small/2, draw.End, "0")
	label(x0-1, place(0, d.p.Offset).Y-small/2, draw.End, "e")
	label(x0, f.Y0+0.5, draw.Start, fmt.Sprintf("%.0f %%", from))
	label((x0+x1)/2, f.Y0+0.5, draw.Middle, "moisture")
	label(x1, f.Y0+0.5, draw.End, fmt.Sprintf("%.0f %%", to))
}
