package check

import (
	"fmt"

	"pegwright/geom"
	"pegwright/geom/finding"
	"pegwright/geom/solid"
)

// fitted proves that no wedge or key shares wood with a timber or with another
// wedge or key.
func (p *proof) fitted() {
	type driven struct {
		j *geom.Joint
		g geom.Piece
		b box
	}
	var all []driven
	for _, j := range p.f.Joints {
		for _, g := range j.Pieces {
			d := driven{j, g, cellBox(g.Solid)}
			for i, t := range p.f.Timbers {
				if apart(d.b, p.boxes[i]) {
					continue
				}
				if thick := within(g.Solid, p.bodies[i]); thick > Thick {
					p.clashing(j, g, t.ID, thick, finding.Pos{}, t.ID)
				}
			}
			for _, o := range all {
				if apart(d.b, o.b) {
					continue
				}
				if thick := solid.Common(g.Solid, o.g.Solid).Thickness(); thick > Thick {
					p.clashing(j, g, o.g.ID, thick, o.j.At)
				}
			}
			all = append(all, d)
		}
	}
}

// within returns the greatest thickness that a convex volume shares with a
// body, millimetres.
func within(c solid.Convex, b *solid.Body) float64 {
	most, about := 0.0, cellBox(c)
	for _, cell := range b.Cells() {
		if !apart(about, cellBox(cell)) {
			most = max(most, solid.Common(c, cell).Thickness())
		}
	}
	return most
}

// clashing stops a wedge or key of a joint whose room something else fills.
func (p *proof) clashing(j *geom.Joint, g geom.Piece, with string, thick float64, also finding.Pos, timbers ...string) {
	p.add(finding.Stop, "overlap", finding.Finding{Timbers: append([]string{j.Of.ID, j.Into.ID}, timbers...), Joints: []string{j.ID}, At: j.At, Also: others(j.At, also),
		Text: fmt.Sprintf("the %s %s and %s would fill the same space, %s thick", g.Kind, g.ID, with, p.show(thick)),
		Mend: "move the joint or what lies beside it, so that the " + g.Kind + " has its room to itself"})
}
