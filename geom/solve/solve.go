// Package solve turns a description into a frame: it places every timber,
// settles every joint's numbers, cuts the joints and bores the pegs. The
// steps run in this order: sticks are planned on their lines, joints are
// planned between them, lines are run on to the tips that the joints ask for,
// blanks are laid, and every joint takes its wood.
package solve

import (
	"fmt"
	"math"
	"strings"

	"pegwright/geom"
	"pegwright/geom/assembly"
	"pegwright/geom/finding"
	"pegwright/geom/joint"
	"pegwright/geom/peg"
	"pegwright/geom/solid"
	"pegwright/geom/spec"
	"pegwright/geom/vec"
	"pegwright/geom/wood"
)

// stick is a timber being planned: its line is known, its ends not yet.
type stick struct {
	t        *geom.Timber
	lo, hi   float64 // tentative ends along the line; replaced where a joint gives a tip
	measured [2]*spec.Section
	plumb    bool // start end cut plumb
	first    bool // face 1 is the line's first reference face
	overall  spec.TimberSettings
	hull     *void // between the ends hullAt, once asked for
	hullAt   [2]float64
}

// pact is a joint being planned.
type pact struct {
	id        string
	kind      string
	r, e      *stick
	end, rEnd geom.End
	own       spec.JointSettings // what the generator or the joint itself asks for
	user      spec.JointSettings // what the user wrote for this very joint
	at        finding.Pos
	drawAt    finding.Pos // where the offset was written; nowhere where it was not
	set       joint.Settings
	why       string
	pegOff    float64
	flush     bool   // pegs sawn level, because another timber stands there
	tension   bool   // must hold tension, not only locate
	meet      vec.V  // where the lines of a joint end to end are said to meet
	taken     []void // from the receiver, once asked for
}

type solver struct {
	d      *spec.Description
	f      *geom.Frame
	faults finding.Faults
	sticks map[string]*stick
	order  []*stick
	pacts  []*pact
	std    standard
	timber wood.Wood
	pegs   wood.Wood
	owned  []wood.Wood // described by the user
}

// Solve solves a description. It returns either a frame or the faults that
// keep it from being solved, each with its place in the file.
func Solve(d *spec.Description) (*geom.Frame, finding.Faults) {
	s := &solver{d: d, f: &geom.Frame{Title: d.Title.Or("Frame"), Units: d.Units}, sticks: map[string]*stick{}}
	s.std = standardFor(d.Units)
	s.info()
	s.woods()
	s.offer()
	if len(s.faults) > 0 {
		return nil, s.faults
	}
	steps := []func(){s.building, s.explicit, s.crowded, s.adjustTimbers, s.measure, s.settle, s.reach, s.lay, s.heaped, s.cut}
	for _, step := range steps {
		step()
		if len(s.faults) > 0 {
			s.faults.Sort()
			return nil, s.faults.Gathered()
		}
	}
	s.name()
	plan, finds := assembly.Plan(s.f)
	s.f.Steps, s.f.Notes = plan, append(s.f.Notes, finds...)
	return s.f, nil
}

func (s *solver) fault(at finding.Pos, source, text, mend string) {
	for _, f := range s.faults {
		if f.At == at && f.Text == text {
			return
		}
	}
	s.faults = append(s.faults, finding.Fault{At: at, Source: source, Text: text, Mend: mend})
}

func (s *solver) note(at finding.Pos, text, mend string, timbers ...string) {
	s.f.Notes = append(s.f.Notes, finding.Finding{Severity: finding.Note, Rule: "generated", At: at, Text: text, Mend: mend, Timbers: timbers})
}

func (s *solver) info() {
	d := s.d
	for _, i := range []struct {
		name string
		t    spec.Text
	}{{"drawn for", d.DrawnFor}, {"drawn by", d.DrawnBy}, {"place", d.Place}, {"date", d.Date}, {"revision", d.Revision}, {"note", d.Note}} {
		if i.t.Set {
			s.f.Info = append(s.f.Info, geom.Info{Name: i.name, Text: i.t.S})
		}
	}
	for _, c := range d.Design {
		s.f.Criteria = append(s.f.Criteria, geom.Info{Name: c.Name.S, Text: c.Value.S})
	}
	p := d.Paper
	s.f.Paper = geom.Paper{Sheets: p.Sheets.Or(s.std.paper), Templates: p.Templates.Or(s.std.paper), Along: p.Along.MM, Across: p.Across.MM}
	s.f.Paper.Hidden = p.Hidden.Or(false)
	s.f.Paper.Poles = p.Poles.Or(strings.HasPrefix(s.f.Paper.Templates, "roll"))
}

// woods settles species and moisture contents.
func (s *solver) woods() {
	w := s.d.Wood
	s.ownWoods()
	s.timber = s.species(w.Species, "eastern white pine", wood.FramingNames)
	s.pegs = s.species(w.PegSpecies, "northern red oak", wood.PegNames)
	st := &s.f.Stock
	st.Timber, st.Peg, st.PegWood = s.timber.Name, s.pegs.Name, s.pegs
	st.Green, st.Seasoning = moisture(s.timber, w.Seasoning, "green")
	st.PegMC, st.PegDry = moisture(s.pegs, w.PegSeasoning, "dry")
	st.Service = w.ServiceMoisture.Or(wood.ServiceMoisture)
}

// species looks a wood up, or the usual one where none is named. For a name that
// is in no table it offers those that fit.
func (s *solver) species(t spec.Text, usual string, fitting func() []string) wood.Wood {
	if own, ok := s.own(t.Or(usual)); ok {
		return own
	}
	w, ok := wood.Lookup(t.Or(usual))
	if !ok {
		mend := "name one of: " + join(fitting())
		if near := wood.Suggest(t.S); len(near) > 0 {
			mend = "did you mean " + join(near) + "?"
		}
		s.fault(t.At, t.S, "this wood is not in the table", mend)
	}
	return w
}

func moisture(w wood.Wood, sea spec.Seasoning, usual string) (float64, string) {
	if sea.Set && sea.Word == "" {
		return sea.Percent, fmt.Sprintf("%g %%", sea.Percent)
	}
	word := usual
	if sea.Set {
		word = sea.Word
	}
	k, _ := wood.ParseSeasoning(word)
	mc, _ := w.Moisture(k)
	return mc, word
}

// reach checks that each joint's timbers lie as the kind needs, and runs their
// lines on to the tips it gives.
func (s *solver) reach() {
	type tip struct {
		st  *stick
		end geom.End
		x   float64
	}
	var tips []tip
	for _, p := range s.pacts {
		k, _ := joint.Lookup(p.kind)
		p.meet = p.meeting()
		site := p.site()
		if bad := k.Fits(site); bad != "" {
			s.fault(p.at, p.e.t.ID+" into "+p.r.t.ID, "these timbers do not meet as a "+p.kind+" needs: "+bad,
				"move one of the timbers, or choose another kind: "+join(joint.Names()))
			continue
		}
		t := k.Reach(site)
		if !math.IsNaN(t.E) {
			tips = append(tips, tip{p.e, p.end, t.E})
		}
		if !math.IsNaN(t.R) {
			tips = append(tips, tip{p.r, p.rEnd, t.R})
		}
	}
	for _, t := range tips {
		if t.end == geom.Start {
			t.st.lo = t.x
		} else {
			t.st.hi = t.x
		}
	}
}

// lay gives each timber its origin, length and blank.
func (s *solver) lay() {
	for _, st := range s.order {
		t := st.t
		t.Length = st.hi - st.lo
		if t.Length < 25 {
			s.fault(t.At, t.ID, fmt.Sprintf("%s would be %s long", t.ID, s.f.Units.Format(t.Length)),
				"its joints lie too near each other or the wrong way round; check the points, the bay or the legs")
			continue
		}
		if t.Length > maxLength {
			s.long(t.At, t.ID, t.Length)
			continue
		}
		t.Place.O = t.Place.O.Add(t.Place.X.Mul(st.lo))
		a, b := t.Section, t.Section
		for i, m := range st.measured {
			if m == nil {
				continue
			}
			size := s.asSection(st, *m)
			if i == 0 {
				a = size
			} else {
				b = size
			}
			t.Measured = true
		}
		// A stick that measures under its ideal is laid at its ideal and reported.
		t.Blank = geom.BlankOf(t.Length, atLeast(a, t.Ideal), atLeast(b, t.Ideal))
		s.underIdeal(st, a, b)
		s.f.Timbers = append(s.f.Timbers, t)
	}
	s.meet()
}

func atLeast(a, b [2]float64) [2]float64 { return [2]float64{max(a[0], b[0]), max(a[1], b[1])} }

// meet faults joints whose timbers do not reach each other.
func (s *solver) meet() {
	for _, p := range s.pacts {
		r := p.r.t
		o := p.e.t.Place.O
		if p.end == geom.Finish {
			o = p.e.t.Place.Out(vec.V{X: p.e.t.Length})
		}
		if p.end == geom.Mid {
			s.crosses(p)
			continue
		}
		reach := p.e.t.Section[0] + p.e.t.Section[1]
		c := r.Place.In(o)
		if c.X < -reach || c.X > r.Length+reach || c.Y < -reach || c.Y > r.Section[0]+reach || c.Z < -reach || c.Z > r.Section[1]+reach {
			s.fault(p.at, p.e.t.ID+" into "+r.ID, fmt.Sprintf("%s and %s do not meet", p.e.t.ID, r.ID),
				"move one of them so that the line of the first runs into the second, or name another timber")
		}
	}
}

// cut lets every joint take its wood and lays the net bodies.
func (s *solver) cut() {
	for _, p := range s.pacts {
		k, _ := joint.Lookup(p.kind)
		res := k.Cut(p.site())
		j := res.Joint
		j.At, j.Kind = p.at, k.Title
		j.Tension = p.tension
		p.r.t.Cuts = append(p.r.t.Cuts, res.R...)
		p.e.t.Cuts = append(p.e.t.Cuts, res.E...)
		for _, h := range res.Bores {
			h.On.Bores = append(h.On.Bores, h.Bore)
		}
		for i := range j.Pegs {
			s.finishPeg(p, &j, &j.Pegs[i])
		}
		s.slip(p, &j, res.Tail)
		for _, w := range res.Warns {
			s.f.Notes = append(s.f.Notes, finding.Finding{Severity: finding.Warn, Rule: "notch", At: p.at, Text: w.Text, Mend: w.Mend,
				Timbers: []string{p.e.t.ID, p.r.t.ID}, Joints: []string{p.id}})
		}
		s.holds(p, &j)
		s.f.Joints = append(s.f.Joints, &j)
	}
	for _, st := range s.order {
		s.net(st)
	}
}

// finishPeg gives a peg its length, its window and its reason.
func (s *solver) finishPeg(p *pact, j *geom.Joint, g *geom.Peg) {
	step := s.std.pegStep
	g.Lead, g.Why, g.Auto, g.OffsetAt = p.set.Lead, p.why, p.set.Auto, p.drawAt
	if g.Exit == 0 {
		g.Lead = 0
		// A blind peg must not bottom out before its head is where it belongs.
		g.Length = math.Floor((g.From.Dist(g.To)+g.Head)/step+1e-9) * step
	} else {
		g.Length = peg.Length(g.From.Dist(g.To), g.Head, g.Lead, step)
	}
	m, t := j.Flat(g.Mortise), j.Flat(g.Tenon)
	if dir := g.To.Sub(g.From).Unit(); math.Abs(dir.Dot(j.Axes.W)) > 1e-6 && !j.Broad {
		m.Y, t.Y = 0, 0 // a slanting peg has rules along the receiver alone
	}
	g.Window = peg.Place{Mortise: m, Shift: t.Sub(m), Bore: g.Bore, Rules: g.Rules}.Window()
}

func (s *solver) net(st *stick) {
	t := st.t
	if st.plumb {
		s.plumbTail(st)
	}
	t.Net = solid.NewBody(t.Blank)
	for _, c := range t.Cuts {
		t.Net.Subtract(c.Solid, c.Joint)
	}
	v := t.Net.Volume()
	cells := t.Net.Cells()
	var earlier []solid.Bore
	for _, b := range t.Bores {
		v -= solid.BoreVolume(cells, b.From, b.To, b.Diameter, earlier)
		earlier = append(earlier, solid.Bore{From: b.From, To: b.To, Diameter: b.Diameter})
	}
	t.NetVolume = v
	service := s.f.Stock.Service
	t.Density = t.Wood.Density(t.Moisture)
	// Weight in service from the same volume as cut, shrunk as the wood shrinks.
	t.DryDensity = t.Wood.Density(service) *
		(1 - t.Wood.Shrinkage(wood.Tangential, t.Moisture, service)) *
		(1 - t.Wood.Shrinkage(wood.Radial, t.Moisture, service))
}

func (p *pact) site() joint.Site {
	return joint.Site{ID: p.id, R: p.r.t, E: p.e.t, End: p.end, REnd: p.rEnd, Meet: p.meet, Set: p.set}
}

func join(list []string) string {
	var b []byte
	for i, x := range list {
		if i > 0 {
			b = append(b, ", "...)
		}
		b = append(b, x...)
	}
	return string(b)
}
