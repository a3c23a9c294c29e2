package check

import (
	"fmt"

	"pegwright/geom"
	"pegwright/geom/finding"
	"pegwright/geom/measure"
)

// Long returns the length, in millimetres, above which a stick in one piece is
// noted: 40 ft, or 12 m (common practice, no source).
func Long(u measure.Units) float64 {
	if u == measure.Metric {
		return 12000
	}
	return 40 * 304.8
}

// long notes the sticks that are longer than one is likely to get, as one
// finding at the longest of them.
func (p *proof) long() {
	var most *geom.Timber
	var ids []string
	for _, t := range p.f.Timbers {
		if t.Length <= Long(p.f.Units)+Thick {
			continue
		}
		ids = append(ids, t.ID)
		if most == nil || t.Length > most.Length+Thick {
			most = t
		}
	}
	if most == nil {
		return
	}
	are := "timbers are"
	if len(ids) == 1 {
		are = "timber is"
	}
	p.add(finding.Note, "length", finding.Finding{Timbers: ids, At: most.At,
		Text: fmt.Sprintf("%d %s longer than %s, and few are sawn so long: %s is %s in one piece", len(ids), are, p.f.Units.Format(Long(p.f.Units)), most.ID, p.f.Units.Format(most.Length)),
		Mend: "check the unit, or ask for such sticks before you draw on; longest, under wood and timbers, has sills, plates and ridges made of pieces"})
}
