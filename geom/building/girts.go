package building

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"pegwright/geom"
	"pegwright/geom/finding"
	"pegwright/geom/measure"
	"pegwright/geom/scheme"
	"pegwright/geom/spec"
	"pegwright/geom/vec"
)

// row is one height of girts in one wall. low marks its bays that are set
// lower than the others, so that girts do not meet end to end in a post.
type row struct {
	w      wall
	i, of  int
	at     finding.Pos
	drop   float64
	laid   int
	missed []string
}

// layGirts lays the girts wall by wall. Those of gable walls lie lower where both kinds
// of wall have them: their mortises would meet in the corner posts.
func (p *plan) layGirts() {
	g := p.b.Girts
	if !g.Set || g.No {
		return
	}
	s := p.s
	_, d := s.Size("girt")
	both := p.girtsIn("south", "eave walls") && p.girtsIn("west", "gable walls") || p.girtsIn("north", "eave walls") && p.girtsIn("east", "gable walls")
	for _, w := range p.walls() {
		kind := "eave walls"
		if w.gable() {
			kind = "gable walls"
		}
		if !p.girtsIn(w.name, kind) {
			continue
		}
		for i, h := range g.Heights {
			z := h.MM
			if !p.girtFits(w, h, d) {
				continue
			}
			if w.gable() && both {
				z -= d + p.std.stagger
			}
			p.girtRow(&row{w: w, i: i, of: len(g.Heights), at: h.At, drop: p.dropOf(w, d)}, h.MM, z, d)
		}
	}
	if both && len(g.Heights) > 0 {
		s.Note(g.At, fmt.Sprintf("gable girts are set %s below the eave girts so that their mortises do not meet in the corner posts", s.Frame.Units.Format(d+p.std.stagger)),
			"give girts in one pair of walls only to set their heights yourself")
	}
}

// girtsIn reports whether a wall gets girts, by its own name or its kind's.
func (p *plan) girtsIn(name, kind string) bool {
	g := p.b.Girts
	return has(g.In, kind) || has(g.In, name)
}

// girtFits faults a girt that lies beside its wall.
func (p *plan) girtFits(w wall, h spec.Length, d float64) bool {
	s := p.s
	top := p.headUnder(w)
	switch {
	case h.MM > top+1e-6:
		s.Fault(h.At, h.Src, fmt.Sprintf("this girt's top is at %s and the %s above the %s wall starts at %s", s.Frame.Units.Format(h.MM), p.headOf(w).Timber.Role, w.name, s.Frame.Units.Format(top)),
			"set the girt lower")
	case h.MM < d-1e-6:
		s.Fault(h.At, h.Src, fmt.Sprintf("this girt's underside would lie %s below the foot of the wall", s.Frame.Units.Format(d-h.MM)), "set the girt higher")
	default:
		return true
	}
	return false
}

// dropOf is how much lower every other bay's girts lie: nothing where tenons
// from both sides of a post can each take a peg, else the girt's depth and the
// usual stagger. A peg needs 1.5 diameters to the shoulder and 2 to the
// tenon's end, and room for its offset.
func (p *plan) dropOf(w wall, d float64) float64 {
	if w.gable() {
		return 0
	}
	for _, v := range p.mainPosts(w) {
		if p.interior(v.st) && p.opposed(v.st, w.dir) < 3.5*p.s.Std.SmallBore+p.s.Std.DrawStep {
			return d + p.std.stagger
		}
	}
	return 0
}

// girtRow lays one height of girts: at the height asked for if every girt
// clears what stands there, else as near below or above as all clear, else
// each for itself. What clears nowhere is left out.
func (p *plan) girtRow(r *row, asked, z, d float64) {
	s := p.s
	step, reach := inch, 24
	for k := range 2*reach + 1 {
		at := z - float64((k+1)/2)*step
		if k%2 == 0 && k > 0 {
			at = z + float64(k/2)*step
		}
		if at-d-r.drop < 0 && k > 0 || at > p.headUnder(r.w)-s.Std.Web {
			continue
		}
		try := *r
		if s.Attempt(s.Std.Web, func() { p.girtsOf(&try, at, d, false) }) == "" {
			*r = try
			p.girtNote(r, asked, z, at)
			return
		}
	}
	p.girtsOf(r, z, d, true)
	if len(r.missed) > 0 {
		s.Note(r.at, fmt.Sprintf("the %s wall has no %s: nothing clears the joints that are there", r.w.name, strings.Join(r.missed, ", ")),
			"set the girts at another height, or use larger posts")
	}
}

// girtNote says where the girts of a row are not at the height asked for.
func (p *plan) girtNote(r *row, asked, z, at float64) {
	s := p.s
	if math.Abs(at-z) > 1e-6 {
		s.Note(r.at, fmt.Sprintf("the girts of the %s wall are set at %s instead of %s, clear of other sticks and their joints",
			r.w.name, s.Frame.Units.Format(at), s.Frame.Units.Format(asked)), "set the girts, the opening or the braces elsewhere to choose yourself")
	}
	if r.drop > 0 {
		s.Note(r.at, fmt.Sprintf("in every other bay the girts of the %s wall lie %s lower: tenons that meet end to end in these posts would be too short to peg",
			r.w.name, s.Frame.Units.Format(r.drop)), "use larger posts to get them at one height")
	}
}

// girtsOf lays the girts of one row: from upright to upright, leaving out what
// would cross an opening. With each set, a girt that does not clear is left
// out; otherwise all are laid as they come.
func (p *plan) girtsOf(r *row, z, d float64, each bool) {
	s := p.s
	ups := slices.Clone(p.pos[r.w.name])
	slices.SortStableFunc(ups, byPlace)
	bay := 0
	for k := 0; k+1 < len(ups); k++ {
		a, b := ups[k], ups[k+1]
		if a.st.Timber.Role == "post" {
			bay++
		}
		if inOpening(a.st, b.st) || b.lo-a.hi < 2*p.std.stagger {
			continue
		}
		r.laid++
		id := fmt.Sprintf("girt-%s-%d", r.w.name, r.laid)
		if r.of > 1 {
			id = fmt.Sprintf("girt-%s-%d-%d", r.w.name, r.i+1, r.laid)
		}
		at := z
		if bay%2 == 0 {
			at -= r.drop
		}
		lay := func() { p.girt(id, r, a, b, at, bay) }
		if !each {
			lay()
		} else if s.Attempt(s.Std.Web, lay) != "" {
			r.missed = append(r.missed, id)
		}
	}
}

// girt lays one girt between two uprights with its top at z.
func (p *plan) girt(id string, r *row, a, b vertical, z float64, bay int) {
	s := p.s
	wd, d := s.Size("girt")
	l := scheme.Line{At: r.w.origin.Add(vec.V{Z: z}), Dir: r.w.dir, Out1: up, Out2: r.w.out, Size1: d, Size2: wd,
		Name1: "top", Name2: "outside", Name3: "underside", Name4: "inside"}
	st := s.Add(id, "girt", r.at, l, a.hi, b.lo, spec.TimberSettings{})
	st.Timber.Wall, st.Timber.Bay = r.w.name, bay
	if r.w.gable() {
		st.Timber.Bay = 0
	}
	s.Join("mortise and tenon", a.st, st, geom.Start, p.intoPost(r, a.st), r.at)
	s.Join("mortise and tenon", b.st, st, geom.Finish, p.intoPost(r, b.st), r.at)
}

// girtTenon shortens a girt's tenon in a slender post, and makes it a third of
// the post at most and lays it in the middle, so that as much wood stands on
// either side of it as it is thick.
func (p *plan) girtTenon(post *scheme.Stick) spec.JointSettings {
	std := p.s.Std
	least := min(post.Timber.Ideal[0], post.Timber.Ideal[1])
	own := spec.JointSettings{TenonLength: spec.LengthOf(min(std.BraceTenon, least-std.Deeper-std.Web))}
	step := inch / 4
	if p.s.Frame.Units == measure.Metric {
		step = 2
	}
	thick := min(std.Thin, math.Floor(least/3/step+1e-9)*step)
	if off := (least - thick) / 2; off < std.OffRef {
		own.FromReference, own.Thickness = spec.LengthOf(off), spec.LengthOf(thick)
	}
	return own
}

// intoPost shortens a girt's tenon where another may come from the opposite
// face: (distance between bearing planes - 1/2 in)/2 - 1/4 in.
func (p *plan) intoPost(r *row, post *scheme.Stick) spec.JointSettings {
	own := p.girtTenon(post)
	if post.Timber.Role == "post" && !r.w.gable() && p.interior(post) && r.drop == 0 {
		own.TenonLength = spec.LengthOf(min(own.TenonLength.MM, p.opposed(post, r.w.dir)))
		// The hole moves toward the shoulder with the tenon's end, not past 1.5 D.
		bore := p.s.Std.SmallBore
		own.OffShoulder = spec.LengthOf(max(1.5*bore, min(p.s.Std.OffShoulder, own.TenonLength.MM-2*bore)))
	}
	return own
}

// inOpening reports whether two neighbouring uprights are the posts of one
// opening. No girt runs between them: its mortises would meet those of the
// girts beside it, back to back in a slender post.
func inOpening(a, b *scheme.Stick) bool {
	return a.Timber.Role != "post" && a.Timber.Role == b.Timber.Role && strings.TrimSuffix(a.Timber.ID, "a") == strings.TrimSuffix(b.Timber.ID, "b")
}

func (p *plan) interior(post *scheme.Stick) bool {
	return post.Timber.Bent > 1 && post.Timber.Bent < len(p.bents)
}

// opposed is the tenon length that leaves a web between opposed mortises.
func (p *plan) opposed(post *scheme.Stick, dir vec.V) float64 {
	s := p.s
	between := post.Timber.Ideal[0]
	if post.Timber.FaceToward(dir)%2 == 0 {
		between = post.Timber.Ideal[1]
	}
	return (between-s.Std.Web)/2 - s.Std.Deeper
}
