package drawbore

import (
	"fmt"

	"pegwright/draw"
	"pegwright/draw/block"
	"pegwright/draw/dim"
	"pegwright/draw/font"
	"pegwright/draw/page"
	"pegwright/geom"
	"pegwright/geom/peg"
	"pegwright/geom/vec"
)

// dryingRows returns the rows of the table, the head first.
func (d *bored) dryingRows() [][]string {
	bounds := d.f.DrawLeft(d.j, d.p, d.f.Stock.Service)
	if d.p.PFrom != geom.NoseLine {
		rows := [][]string{{"receiver's rings", "toward shoulder"}}
		for _, b := range bounds {
			rows = append(rows, []string{b.Receiver.String(), d.signed(b.Left.Shoulder)})
		}
		return rows
	}
	other := "other's rings"
	if d.j.Of.Role == "brace" {
		other = "brace's rings"
	}
	rows := [][]string{{"receiver's rings", other, "toward shoulder", "toward nose"}}
	for _, b := range bounds {
		rows = append(rows, []string{b.Receiver.String(), b.Enterer.String(), d.signed(b.Left.Shoulder), d.signed(b.Left.Nose)})
	}
	return rows
}

const (
	dryRow  = dim.Small * page.Pitch
	dryCol  = 25.0 // width of a column of the table
	dryPlot = 46.0 // width of the plot
)

// dryingWords are the paragraphs beside the table.
func (d *bored) dryingWords() []string {
	st := d.f.Stock
	why := fmt.Sprintf("Offset %s: %s.", d.signed(d.p.Offset)[1:], d.p.Why)
	if len(d.f.DrawCurve(d.j, d.p, 1).Points) == 0 {
		return []string{why, "The timbers are as dry as in service when they are cut, so the offset stays. It is a length, not a force."}
	}
	toe := ""
	if t, r := d.f.ToeGap(d.j, d.p); max(t, r) > 0.05 {
		toe = fmt.Sprintf(" The dried toe gapes %s to %s.", d.f.Units.Small(r), d.f.Units.Small(t))
	}
	return []string{why,
		fmt.Sprintf("Left when dried from %.0f %% to %.0f %% moisture. A real face moves by something between tangential and radial, nearer to radial with the heart boxed. Below zero the dry peg holds the joint open. It is a length, not a force. Plot: worst pairing full, best dashed.%s",
			max(d.j.Into.Moisture, d.j.Of.Moisture), st.Service, toe),
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
	w := page.Pen{S: s, X: f.X0 + wide + dryPlot + 8, W: f.W() - wide - dryPlot - 8}
	w.Together("drying", d.dryingWords()...)
	for _, t := range d.dryingWords() {
		sum += w.ParaHeight(t) + 0.8
	}
	top := f.Y0 + max(h, sum)
	s.Line(draw.Dimension, vec.At(f.X0, top+1.5), vec.At(f.X1, top+1.5))
	d.table(s, f.X0, top, wide, rows)
	d.plot(s, block.Field{X0: f.X0 + wide + 3, Y0: f.Y0, X1: f.X0 + wide + dryPlot, Y1: top - 1})
	w.Y = top
	for _, t := range d.dryingWords() {
		w.Para(t)
		w.Skip(0.8)
	}
	f.Y0 = top + 4
	return f
}

// table sets the drying table; columns of figures stand to the right.
func (d *bored) table(s *draw.Sheet, x, y, wide float64, rows [][]string) {
	col := wide / float64(len(rows[0]))
	s.Text(vec.At(x, y-dim.Small), dim.Small, "Offset left in service, of "+d.signed(d.p.Offset)[1:]).Bold = true
	y -= dryRow
	for i, r := range rows {
		for k, c := range r {
			t := s.Text(vec.At(x+float64(k)*col, y-dim.Small), dim.Small, c)
			if 2*k >= len(r) {
				t.At.X, t.Anchor = x+float64(k+1)*col-3, draw.End
			}
		}
		y -= dryRow
		if i == 0 {
			s.Line(draw.Dimension, vec.At(x, y+0.6), vec.At(x+wide-3, y+0.6))
			y -= 0.8
		}
	}
}

// plot draws the draw left against moisture: from the first shrinkage at the
// left to service at the right, the worst pairing full, the best dashed, and a
// mark where the worst comes to nothing.
func (d *bored) plot(s *draw.Sheet, f block.Field) {
	curve := d.f.DrawCurve(d.j, d.p, 12)
	if len(curve.Points) == 0 {
		return
	}
	g := newGraph(f, curve, d.p.Offset)
	s.Line(draw.Dimension, vec.At(g.x0, g.y0), vec.At(g.x0, g.y1))
	s.Line(draw.Dimension, g.place(g.wet, 0), g.place(g.dry, 0))
	g.line(s, draw.Hidden, curve, func(p peg.Dried) float64 { return p.Best })
	g.line(s, draw.Part, curve, func(p peg.Dried) float64 { return p.Worst })
	label := func(x, y float64, a draw.Anchor, t string) { s.Text(vec.At(x, y), dim.Small, t).Anchor = a }
	label(g.x0-1, g.place(g.wet, 0).Y-dim.Small/2, draw.End, "0")
	label(g.x0-1, g.place(g.wet, d.p.Offset).Y-dim.Small/2, draw.End, "e")
	label(g.x0, f.Y0+0.5, draw.Start, fmt.Sprintf("%.0f %%", g.wet))
	label((g.x0+g.x1)/2, f.Y0+0.5, draw.Middle, "moisture")
	label(g.x1, f.Y0+0.5, draw.End, fmt.Sprintf("%.0f %%", g.dry))
	if curve.Goes {
		p := g.place(curve.Slack, 0)
		s.Line(draw.Dimension, vec.At(p.X, p.Y-1.5), vec.At(p.X, p.Y+1.5)).Mark = "slack"
		// Left of the mark both lines are above the axis; where there is no room,
		// or the axis lies at the foot, the top serves, which then is clear.
		x, y := p.X-1, p.Y-dim.Small-1
		if words := fmt.Sprintf("slack %.0f %%", curve.Slack); x-font.Measure(words, dim.Small, false) < g.x0+1 || y < g.y0 {
			label(g.x1, g.y1-dim.Small, draw.End, words)
		} else {
			label(x, y, draw.End, words)
		}
	}
}

// graph is where a drying curve stands on paper.
type graph struct {
	x0, x1, y0, y1 float64 // paper
	wet, dry       float64 // percent, at x0 and x1
	low, high      float64 // mm of draw, at y0 and y1
}

func newGraph(f block.Field, c peg.Curve, offset float64) graph {
	g := graph{x0: f.X0 + 8, x1: f.X1, y0: f.Y0 + 4.5, y1: f.Y1 - 1, high: offset}
	g.wet, g.dry = c.Points[0].Moisture, c.Points[len(c.Points)-1].Moisture
	for _, p := range c.Points {
		g.low, g.high = min(g.low, p.Worst), max(g.high, p.Best)
	}
	return g
}

// place returns the point of a moisture and a draw on paper.
func (g graph) place(moisture, left float64) vec.P {
	return vec.At(g.x0+(g.x1-g.x0)*(g.wet-moisture)/(g.wet-g.dry), g.y0+(g.y1-g.y0)*(left-g.low)/(g.high-g.low))
}

func (g graph) line(s *draw.Sheet, c draw.Class, curve peg.Curve, of func(peg.Dried) float64) {
	var pts []vec.P
	for _, p := range curve.Points {
		pts = append(pts, g.place(p.Moisture, of(p)))
	}
	s.Poly(c, false, pts...).Mark = "draw left"
}
