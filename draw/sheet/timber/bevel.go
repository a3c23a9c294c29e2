package timber

import (
	"math"
	"strings"

	"pegwright/draw"
	"pegwright/draw/page"
	"pegwright/draw/setout"
	"pegwright/geom/measure"
)

// bevelWords writes bevels as degrees, with the slope where it is not 45° nor the
// rest of a right angle of one that is told.
func bevelWords(u measure.Units, angles []float64) string {
	var out []string
	for _, deg := range angles {
		word := draw.Number(deg, 1) + "°"
		plain := math.Abs(deg-45) < 0.05
		for _, o := range angles {
			plain = plain || deg > 45 && math.Abs(deg+o-90) < 0.05
		}
		if !plain {
			word += " (" + setout.Slope(u, deg) + ")"
		}
		out = append(out, word)
	}
	return strings.Join(out, ", ")
}

// bevelColumn adds the column of bevels where a cut has one.
func bevelColumn(g *page.Table, u measure.Units, feats []feature) {
	any := false
	for i := range feats {
		any = any || len(feats[i].bevel) > 0
	}
	if !any {
		return
	}
	g.Heads, g.Numeric = append(g.Heads, "bevel to the arris"), append(g.Numeric, false)
	for i := range feats {
		g.Rows[i] = append(g.Rows[i], bevelWords(u, feats[i].bevel))
	}
}
