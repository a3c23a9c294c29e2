package templates

import (
	"pegwright/draw"
	"pegwright/draw/crew"
	"pegwright/geom"
	"pegwright/geom/finding"
)

// Sheets returns the 1:1 sheets of a solved frame: the print check page; the
// hole templates, flaps and tenon templates of all pegged joints in frame
// order; a pattern of each size of peg; the patterns of ends that are cut
// aslant; story poles where they are asked for. Templates that agree to 0.01 mm
// are printed once, with the list of the joints that they serve, on the sheet
// itself or on one of those that follow the templates. Joints that a
// stop finding names are left out. All are corrected for the frame's printer.
func Sheets(f *geom.Frame, finds []finding.Finding) []*draw.Sheet {
	groups, sizes := gather(plans(f, finds)), pegSizes(f, finds)
	ways := layouts(f)
	pages, lists := make([][]*draw.Sheet, len(groups)+len(sizes)), make([]words, len(groups))
	crew.Each(len(pages), func(i int) {
		if i < len(groups) {
			pages[i], lists[i] = render(f, groups[i], ways)
			return
		}
		k := i - len(groups)
		pages[i] = pegSheets(f, sizes[k], k+1)
	})
	out := []*draw.Sheet{printCheck(f)}
	var ends []*draw.Sheet
	for i, p := range pages {
		if i < len(groups) && groups[i].kind == "end" {
			ends = append(ends, p...)
		} else {
			out = append(out, p...)
		}
	}
	out = append(out, ends...)
	out = append(out, servedSheets(f, groups, lists)...)
	out = append(out, poleSheets(f, poles(f, stops(f, finds)))...)
	correct(f, out)
	return out
}

// plans lays out every template of the frame.
func plans(f *geom.Frame, finds []finding.Finding) []plan {
	var out []plan
	stopped := stops(f, finds)
	r := roomOf(f)
	for _, j := range f.Joints {
		if stopped[j.ID] {
			continue
		}
		if len(j.Pegs) > 0 {
			out = append(out, jointPlans(j, r)...)
		}
		out = append(out, endPlans(j, 2*r.most-overlap)...) // as wide as two tiles
	}
	return out
}

// stops returns the ids of the joints that must not be cut: those that a stop
// finding names, or all joints of the timbers it names where it names none.
func stops(f *geom.Frame, finds []finding.Finding) map[string]bool {
	out := map[string]bool{}
	for _, d := range finds {
		if d.Severity != finding.Stop {
			continue
		}
		for _, id := range d.Joints {
			out[id] = true
		}
		if len(d.Joints) > 0 {
			continue
		}
		for _, id := range d.Timbers {
			if t := f.Timber(id); t != nil {
				for _, j := range f.JointsOf(t) {
					out[j.ID] = true
				}
			}
		}
	}
	return out
}

// jointPlans lays out the templates of one joint: near and far face for the
// pegs that cross the receiver, the tenon, and one sheet for each blind peg.
func jointPlans(j *geom.Joint, r room) []plan {
	var out []plan
	var crossing []*geom.Peg
	for i := range j.Pegs {
		g := &j.Pegs[i]
		if g.Exit != 0 {
			crossing = append(crossing, g)
			continue
		}
		if p, ok := throughPlan(j, g); ok {
			out = append(out, p)
		}
	}
	if len(crossing) == 0 {
		return out
	}
	for _, p := range []plan{holePlan(j, "near", crossing[0].Entry, crossing), holePlan(j, "far", crossing[0].Exit, crossing)} {
		out = append(out, holeParts(p, (*plan).setHoles, r)...)
	}
	if p, ok := flapPlan(j); ok {
		out = append(out, p)
	}
	of := cheeks(j, crossing)
	if p, ok := matePlan(j, crossing); ok && len(of) == 0 {
		of = holeParts(p, (*plan).setMate, r)
	}
	return append(out, of...)
}

// bothCheeks is the thickness of a tenon, mm, from which it is bored from both
// sides and so gets a template for each cheek (common practice, no source).
const bothCheeks = 50.0

// cheeks lays out the template of the cheek that the bit enters, and that of
// the other cheek for a thick tenon.
func cheeks(j *geom.Joint, pegs []*geom.Peg) []plan {
	dir := pegs[0].To.Sub(pegs[0].From).Unit()
	near := j.Of.FaceToward(dir.Neg())
	faces := []int{near}
	if lo, hi := j.Tenon.Extent(dir); hi-lo > bothCheeks {
		faces = append(faces, geom.Opposite(near))
	}
	var out []plan
	for _, n := range faces {
		if p, ok := tenonPlan(j, n, pegs); ok {
			out = append(out, p)
		}
	}
	return out
}
