package building

import (
	"fmt"
	"math"

	"pegwright/geom"
	"pegwright/geom/scheme"
	"pegwright/geom/spec"
	"pegwright/geom/vec"
)

func (l *leanTo) id(what string, n int) string {
	return fmt.Sprintf("lean-to-%s-%d-%s", what, n, l.wall)
}

// outer is the y of the lean-to's own wall.
func (l *leanTo) outer() float64 { return l.wallY(l.wall) + l.out.Y*l.ask.Span.MM }

// layOuterWall sets the lean-to's posts, the plate on them and the girts that
// join them to the main posts.
func (l *leanTo) layOuterWall() {
	s := l.s
	w, d := s.Size("plate")
	past := l.b.Roof.GableOverhang.Or(l.std.pastGable)
	ln := scheme.Line{At: vec.V{Y: l.outer(), Z: l.eave}, Dir: east, Out1: up, Out2: l.out, Size1: d, Size2: w,
		Name1: "top", Name2: "outside", Name3: "underside", Name4: "inside"}
	plate := s.Add("lean-to-plate-"+l.wall, "plate", l.ask.At, ln, -past, l.length+past, spec.TimberSettings{})
	posts := make([]*scheme.Stick, len(l.bents))
	a, b := s.Size("post")
	for i, bt := range l.bents {
		ln = scheme.Line{At: vec.V{X: bt.x, Y: l.outer()}, Dir: up, Out1: l.out, Out2: bt.out, Size1: a, Size2: b,
			Name1: "outside", Name2: bt.word, Name3: "inside", Name4: l.inside(bt)}
		st := s.Add(l.id("post", bt.n), "post", l.ask.At, ln, 0, l.eave, spec.TimberSettings{})
		st.Timber.Bent = bt.n
		l.foot(st, nil, nil)
		own := spec.JointSettings{TenonLength: spec.LengthOf(l.topTenon(plate)), Along: spec.Centred()}
		if l.gable(bt) != "" {
			holdAt(&own, bt, l.std.hold)
		}
		s.Join("mortise and tenon", plate, st, geom.Finish, own, l.ask.At).Flush = true
		posts[i] = st
		l.girt(bt, st)
	}
	// The braces keep clear of the rafters' pegs, and are listed before them.
	roof := s.Now()
	l.rafters(plate)
	walls := s.Now()
	l.braceWall(posts, plate)
	s.PutLast(roof, walls)
}

// braceWall sets the lean-to's wall braces where the main walls have them.
func (l *leanTo) braceWall(posts []*scheme.Stick, plate *scheme.Stick) {
	b := l.b.Braces
	if !b.Set || b.No {
		return
	}
	for _, set := range b.Sets {
		if !has(set.In, "walls") || set.Go.S == "down" {
			continue
		}
		legs := set.Legs
		if !legs.Set {
			legs = spec.Section{A: l.std.legs, B: l.std.legs, At: set.At}
		}
		var done []*knee
		for i := 1; i < len(posts); i++ {
			for k, h := range []vec.V{east, west} {
				done = append(done, &knee{id: fmt.Sprintf("lean-to-brace-%s-%d%c", l.wall, i, 'a'+k), post: posts[i-1+k], head: plate, h: h, legs: legs})
				l.brace(done[len(done)-1])
			}
		}
		l.tellBraces(spec.BraceSet{At: set.At, Legs: legs}, done)
		return
	}
}

// rafters seats the lean-to's rafters on plate and ledgers, bay by bay, clear
// of the main posts. Their heads end over the ledger.
func (l *leanTo) rafters(plate *scheme.Stick) {
	s := l.s
	w, depth := s.Size("rafter")
	width, _ := s.IdealSize("ledger")
	_, ideal := s.IdealSize("rafter")
	rise := (ideal - l.deep) / l.cos
	posts := l.mainPosts(l.wallNamed(l.wall))
	k := 0
	for i := 0; i+1 < len(posts); i++ {
		from, to := posts[i].hi+l.std.stagger, posts[i+1].lo-l.std.stagger-w
		n := max(int(math.Ceil((to-from)/l.b.Roof.RafterSpacing.Or(l.std.rafterSpacing)-1e-9)), 1)
		for j := range n + 1 {
			k++
			ln := l.pitched("rafter", l.out.Neg(), west)
			ln.At = vec.V{X: from + (to-from)*float64(j)/float64(n), Y: l.outer(), Z: l.eave + rise}
			st := s.Add(l.id("rafter", k), "rafter", l.ask.At, ln, 0, (l.ask.Span.MM+width-depth*l.sin)/l.cos, spec.TimberSettings{})
			l.tail(st)
			st.Timber.Bay = i + 1
			l.seat(st, plate, l.deep)
			l.seat(st, s.Sticks[l.id("ledger", i+1)], l.deep)
		}
	}
}

// girt joins a lean-to post to the main post of its bent, below the plate and
// clear of what enters either post.
func (l *leanTo) girt(bt *bent, post *scheme.Stick) {
	s := l.s
	_, plateDepth := s.Size("plate")
	top := l.eave - plateDepth - l.std.tieDown
	why := ""
	for z := top; z > l.eave/2; z -= l.std.stagger / 2 {
		if why = s.Attempt(s.Std.Web, func() { l.girtAt(bt, post, z) }); why == "" {
			return
		}
	}
	s.Fault(l.ask.At, "lean-tos", fmt.Sprintf("no girt finds room between %s and %s: in the way is %s", post.Timber.ID, bt.post[l.wall].Timber.ID, why),
		"set the ledger higher, or shorten the braces")
}

// girtAt lays the girt of a bent with its top at z.
func (l *leanTo) girtAt(bt *bent, post *scheme.Stick, z float64) {
	s := l.s
	w, d := s.Size("girt")
	ln := scheme.Line{At: vec.V{X: bt.x, Z: z}, Dir: north, Out1: up, Out2: bt.out, Size1: d, Size2: w,
		Name1: "top", Name2: bt.word, Name3: "underside", Name4: l.inside(bt)}
	lo, hi := bt.post[l.wall], post
	from, to := l.wallY(l.wall), l.outer()
	if l.out.Y < 0 {
		lo, hi, from, to = hi, lo, to, from
	}
	st := s.Add(l.id("girt", bt.n), "girt", l.ask.At, ln, from, to, spec.TimberSettings{})
	st.Timber.Bent = bt.n
	s.Join("mortise and tenon", lo, st, geom.Start, l.girtTenon(lo), l.ask.At)
	s.Join("mortise and tenon", hi, st, geom.Finish, l.girtTenon(hi), l.ask.At)
}

// layLedgers tenons a ledger between the main posts of each bay, its outside
// flush with theirs.
func (l *leanTo) layLedgers() {
	s := l.s
	w := l.wallNamed(l.wall)
	wd, d := s.Size("ledger")
	posts := l.mainPosts(w)
	for i := 0; i+1 < len(posts); i++ {
		a, b := posts[i], posts[i+1]
		ln := scheme.Line{At: w.origin.Add(vec.V{Z: l.ledger}), Dir: w.dir, Out1: up, Out2: w.out, Size1: d, Size2: wd,
			Name1: "top", Name2: "outside", Name3: "underside", Name4: "inside"}
		st := s.Add(l.id("ledger", i+1), "ledger", l.ask.At, ln, a.hi, b.lo, spec.TimberSettings{})
		st.Timber.Wall, st.Timber.Bay = l.wall, i+1
		for end, post := range []*scheme.Stick{a.st, b.st} {
			own := l.trussTenon().With(l.intoPost(&row{w: w}, post))
			if bore := own.Bore.MM; own.TenonLength.MM < 3.5*bore {
				// A slighter peg leaves wood before and behind its hole.
				bore = math.Floor(own.TenonLength.MM/3.5/s.Std.DrawStep) * s.Std.DrawStep
				own.Bore, own.OffShoulder = spec.LengthOf(bore), spec.LengthOf(1.5*bore)
			}
			s.Join("mortise and tenon", post, st, []geom.End{geom.Start, geom.Finish}[end], own, l.ask.At)
		}
	}
}
