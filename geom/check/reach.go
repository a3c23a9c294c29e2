package check

import (
	"fmt"

	"pegwright/geom"
	"pegwright/geom/finding"
	"pegwright/geom/solid"
	"pegwright/geom/vec"
)

// reachable proves that a peg's head and lead stand clear of every timber but
// those it joins. A peg that is sawn flush stands nowhere; any other can be sawn
// before the neighbour goes in, so this warns and does not stop.
func (p *proof) reachable(j *geom.Joint, g geom.Peg) {
	if g.Flush {
		return
	}
	dir := g.To.Sub(g.From).Unit()
	ends := []struct {
		from, to vec.V
		what     string
	}{{g.From.Sub(dir.Mul(g.Head)), g.From.Sub(dir), "head"}, {g.To.Add(dir), g.To.Add(dir.Mul(g.Lead)), "lead"}}
	for _, e := range ends {
		if e.to.Sub(e.from).Dot(dir) < 1 || e.what == "lead" && g.Exit == 0 {
			continue
		}
		prism := solid.Bore{From: e.from, To: e.to, Diameter: g.Bore}.Prism()
		for i, t := range p.f.Timbers {
			if t == j.Into || t == j.Of || apart(cellBox(prism), p.boxes[i]) {
				continue
			}
			for _, c := range p.bodies[i].Cells() {
				if solid.Common(c, prism).Thickness() > Thick {
					p.add(finding.Warn, "peg reach", finding.Finding{Timbers: []string{j.Into.ID, t.ID}, Joints: []string{j.ID}, At: j.At,
						Text: fmt.Sprintf("the %s of %s would stand in %s", e.what, g.ID, t.ID),
						Mend: "saw the peg flush before that timber goes in, drive it from another face, or give a shorter head or lead"})
					return
				}
			}
		}
	}
}
