package solve

import (
	"fmt"
	"math"

	"pegwright/geom"
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
	w, d := s.size("plate")
	past := l.b.Roof.GableOverhang.Or(s.std.pastGable)
	ln := line{at: vec.V{Y: l.outer(), Z: l.eave}, dir: east, out1: up, out2: l.out, size1: d, size2: w,
		name1: "top", name2: "outside", name3: "underside", name4: "inside"}
	plate := s.add("lean-to-plate-"+l.wall, "plate", l.ask.At, ln, -past, l.length+past, spec.TimberSettings{})
	posts := make([]*stick, len(l.bents))
	a, b := s.size("post")
	for i, bt := range l.bents {
		ln = line{at: vec.V{X: bt.x, Y: l.outer()}, dir: up, out1: l.out, out2: bt.out, size1: a, size2: b,
			name1: "outside", name2: bt.word, name3: "inside", name4: l.inside(bt)}
		st := s.add(l.id("post", bt.n), "post", l.ask.At, ln, 0, l.eave, spec.TimberSettings{})
		st.t.Bent = bt.n
		l.foot(st, nil, nil)
		own := spec.JointSettings{TenonLength: set(s.topTenon(plate)), Along: centred()}
		if l.gable(bt) != "" {
			holdAt(&own, bt, s.std.hold)
		}
		s.joinEnd("mortise and tenon", plate, st, geom.Finish, own, l.ask.At).flush = true
		posts[i] = st
		l.girt(bt, st)
	}
	// The braces keep clear of the rafters' pegs, and are listed before them.
	roof := s.mark()
	l.rafters(plate)
	walls := s.mark()
	l.braceWall(posts, plate)
	s.putLast(roof, walls)
}

// braceWall sets the lean-to's wall braces where the main walls have them.
func (l *leanTo) braceWall(posts []*stick, plate *stick) {
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
			legs = spec.Section{A: l.s.std.legs, B: l.s.std.legs, At: set.At}
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
func (l *leanTo) rafters(plate *stick) {
	s := l.s
	w, depth := s.size("rafter")
	width, _ := s.idealSize("ledger")
	_, ideal := s.idealSize("rafter")
	rise := (ideal - l.deep) / l.cos
	posts := l.mainPosts(l.wallNamed(l.wall))
	k := 0
	for i := 0; i+1 < len(posts); i++ {
		from, to := posts[i].hi+s.std.stagger, posts[i+1].lo-s.std.stagger-w
		n := max(int(math.Ceil((to-from)/l.b.Roof.RafterSpacing.Or(s.std.rafterSpacing)-1e-9)), 1)
		for j := range n + 1 {
			k++
			ln := l.pitched("rafter", l.out.Neg(), west)
			ln.at = vec.V{X: from + (to-from)*float64(j)/float64(n), Y: l.outer(), Z: l.eave + rise}
			st := s.add(l.id("rafter", k), "rafter", l.ask.At, ln, 0, (l.ask.Span.MM+width-depth*l.sin)/l.cos, spec.TimberSettings{})
			l.tail(st)
			st.t.Bay = i + 1
			l.seat(st, plate, l.deep)
			l.seat(st, s.sticks[l.id("ledger", i+1)], l.deep)
		}
	}
}

// girt joins a lean-to post to the main post of its bent, below the plate and
// clear of what enters either post.
func (l *leanTo) girt(bt *bent, post *stick) {
	s := l.s
	_, plateDepth := s.size("plate")
	top := l.eave - plateDepth - s.std.tieDown
	why := ""
	for z := top; z > l.eave/2; z -= s.std.stagger / 2 {
		if why = s.attempt(s.std.web, func() { l.girtAt(bt, post, z) }); why == "" {
			return
		}
	}
	s.fault(l.ask.At, "lean-tos", fmt.Sprintf("no girt finds room between %s and %s: in the way is %s", post.t.ID, bt.post[l.wall].t.ID, why),
		"set the ledger higher, or shorten the braces")
}

func (l *leanTo) girtAt(bt *bent, post *stick, z float64) {
	s := l.s
	w, d := s.size("girt")
	ln := line{at: vec.V{X: bt.x, Z: z}, dir: north, out1: up, out2: bt.out, size1: d, size2: w,
		name1: "top", name2: bt.word, name3: "underside", name4: l.inside(bt)}
	lo, hi := bt.post[l.wall], post
	from, to := l.wallY(l.wall), l.outer()
	if l.out.Y < 0 {
		lo, hi, from, to = hi, lo, to, from
	}
	st := s.add(l.id("girt", bt.n), "girt", l.ask.At, ln, from, to, spec.TimberSettings{})
	st.t.Bent = bt.n
	s.joinEnd("mortise and tenon", lo, st, geom.Start, l.girtTenon(lo), l.ask.At)
	s.joinEnd("mortise and tenon", hi, st, geom.Finish, l.girtTenon(hi), l.ask.At)
}

// layLedgers tenons a ledger between the main posts of each bay, its outside
// flush with theirs.
func (l *leanTo) layLedgers() {
	s := l.s
	w := l.wallNamed(l.wall)
	wd, d := s.size("ledger")
	posts := l.mainPosts(w)
	for i := 0; i+1 < len(posts); i++ {
		a, b := posts[i], posts[i+1]
		ln := line{at: w.origin.Add(vec.V{Z: l.ledger}), dir: w.dir, out1: up, out2: w.out, size1: d, size2: wd,
			name1: "top", name2: "outside", name3: "underside", name4: "inside"}
		st := s.add(l.id("ledger", i+1), "ledger", l.ask.At, ln, a.hi, b.lo, spec.TimberSettings{})
		st.t.Wall, st.t.Bay = l.wall, i+1
		for end, post := range []*stick{a.st, b.st} {
			own := s.trussTenon().With(l.intoPost(&row{w: w}, post))
			if bore := own.Bore.MM; own.TenonLength.MM < 3.5*bore {
				// A slighter peg leaves wood before and behind its hole.
				bore = math.Floor(own.TenonLength.MM/3.5/s.std.drawStep) * s.std.drawStep
				own.Bore, own.OffShoulder = set(bore), set(1.5*bore)
			}
			s.joinEnd("mortise and tenon", post, st, []geom.End{geom.Start, geom.Finish}[end], own, l.ask.At)
		}
	}
}
