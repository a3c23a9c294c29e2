package drawbore

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"pegwright/draw"
	"pegwright/draw/legible"
	"pegwright/draw/scene"
	"pegwright/geom/vec"
	"pegwright/samples"
	"pegwright/samples/trial"
)

// Eastern white pine from green to 12 %: 6.1 and 2.1 % (Wood Handbook table
// 4-3) by 18/30. A brace at 45° with a 1-1/2 in, p 2 in and 1/8 in along it
// keeps e_s - a S_r + q S_b cos θ toward the shoulder and e_n - q S_b sin θ
// toward the nose (plane geometry).
func TestDrawboreDryingTable(t *testing.T) {
	f := trial.Sample(t, "apiary-store")
	for _, g := range scene.Groups(f) {
		p := throughPeg(g.First())
		if p == nil || p.PFrom != "nose line" {
			continue
		}
		page := pagesOf(t, Sheets(f, g, nil))[1]
		c := math.Sqrt2 / 2
		es := 0.125 * c
		q := (2+es)*c + (1.5-es)*c
		for _, sr := range []float64{0.0366, 0.0126} {
			for _, sb := range []float64{0.0366, 0.0126} {
				row := fmt.Sprintf("%+.3fin%+.3fin", es-1.5*sr+q*sb*c, es-q*sb*c)
				if !page.Says(row) {
					t.Errorf("%s: no row %s", g.First().ID, row)
				}
			}
		}
		return
	}
	t.Error("no brace")
}

// curvesOf returns the two lines of a sheet's drying plot, the worst pairing
// first, and the height of the axis of no draw.
func curvesOf(t *testing.T, s *draw.Sheet) (worst, best []vec.P, axis float64) {
	t.Helper()
	var lines [][]vec.P
	for _, it := range s.Items {
		p, ok := it.(*draw.Path)
		switch {
		case ok && p.Mark == "draw left" && p.Class == draw.Hidden:
			best = p.Pts
		case ok && p.Mark == "draw left":
			worst = p.Pts
		case ok && p.Class == draw.Dimension && len(p.Pts) == 2:
			lines = append(lines, p.Pts)
		}
	}
	if len(worst) == 0 || len(best) == 0 {
		t.Fatalf("%s has no drying plot", s.ID)
	}
	for _, l := range lines {
		if l[0].Y == l[1].Y && l[0].X == worst[0].X && l[1].X == worst[len(worst)-1].X {
			return worst, best, l[0].Y
		}
	}
	t.Fatalf("%s: no axis", s.ID)
	return nil, nil, 0
}

// The plot's lines, measured on paper against the height of the whole offset,
// keep what the drying laws leave of it (worked by hand: white pine, 6.1 and
// 2.1 %, 18/30 of it). A brace drawn 1/8 in square to its shoulder is without
// draw toward its nose from the start, ends at -0.062 in, and is marked slack.
func TestDrawboreDryingPlot(t *testing.T) {
	store, _ := samples.Source("apiary-store")
	f := trial.Frame(t, "plot", string(store)+"layout: {drawbore: 1/8\", brace: {draw: square}}\n")
	ties, braces := 0, 0
	for _, g := range scene.Groups(f) {
		j := g.First()
		p := throughPeg(j)
		if p == nil || p.Offset == 0 {
			continue
		}
		sheet := Sheets(f, g, nil)[1]
		worst, best, axis := curvesOf(t, sheet)
		slack := strings.Contains(legible.Words([]*draw.Sheet{sheet}), "slack")
		full, n := best[0].Y-axis, len(worst)-1
		switch j.Of.Role {
		case "tie": // a 1-1/2 in, bore 1 in: 0.125 - 1.0 x 0.0366 and x 0.0126
			ties++
			for _, c := range []struct{ got, want float64 }{{(worst[n].Y - axis) / full, 1 - 0.0366/0.125}, {(best[n].Y - axis) / full, 1 - 0.0126/0.125}} {
				if math.Abs(c.got-c.want) > 1e-3 || slack {
					t.Errorf("%s keeps %.4f of its draw, want %.4f; slack %v", j.ID, c.got, c.want, slack)
				}
			}
		case "brace":
			braces++
			if math.Abs(worst[0].Y-axis) > 1e-6 || worst[n].Y >= axis || best[n].Y >= axis || !slack {
				t.Errorf("%s: the nose does not come off on the plot; slack %v", j.ID, slack)
			}
			// worst and best toward the nose are as tangential and radial wood
			if r := (worst[n].Y - axis) / (best[n].Y - axis); math.Abs(r-6.1/2.1) > 1e-2 {
				t.Errorf("%s: worst and best are as %.3f to 1", j.ID, r)
			}
		}
	}
	if ties == 0 || braces == 0 {
		t.Errorf("%d ties, %d braces", ties, braces)
	}
}
