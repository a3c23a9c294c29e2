package solve

import (
	"fmt"
	"hash/fnv"
	"strings"

	"pegwright/geom"
	"pegwright/geom/finding"
	"pegwright/geom/spec"
	"pegwright/geom/vec"
)

// bent is one cross frame: the x of its reference plane and the outward
// direction of its bent face.
type bent struct {
	n         int
	x         float64
	out       vec.V
	word      string // of the bent face
	tie       *stick
	king      *stick            // king post, where there is one
	principal map[string]*stick // by wall, where there is a truss
	post      map[string]*stick // by wall
}

// plan is the building being generated.
type plan struct {
	s             *solver
	b             spec.Building
	span, length  float64
	eave, tieTop  float64
	bents         []*bent
	sills, plates map[string]*stick
	cross         map[int]*stick      // cross sills by bent
	plateUnder    float64             // z of the plates' ideal underside
	parts         map[*stick][]*stick // pieces of divided sticks
	pos           map[string][]vertical
	sin, cos      float64 // of the roof's pitch
	ridge         *stick
}

// vertical is a post or door post as met along a wall: its extent along it.
type vertical struct {
	st     *stick
	lo, hi float64
}

// sides are the two eave walls with their outward directions.
var sides = []struct {
	wall string
	out  vec.V
}{{"south", south}, {"north", north}}

func (s *solver) building() {
	b := s.d.Building
	if !b.Set {
		return
	}
	p := &plan{s: s, b: b, span: b.Span.MM, eave: b.Eave.MM, sills: map[string]*stick{}, plates: map[string]*stick{},
		cross: map[int]*stick{}, pos: map[string][]vertical{}, parts: map[*stick][]*stick{}}
	p.slope()
	if !p.ready() {
		return
	}
	p.layBents()
	p.laySills()
	p.layPosts()
	p.layPlates()
	p.layTies()
	// Walls are laid clear of what the roof needs, and listed before it.
	roof := s.mark()
	p.layRoof()
	p.layRidgeBraces()
	walls := s.mark()
	p.layOpenings()
	p.layGirts()
	p.layBraces()
	s.putLast(roof, walls)
	p.layLeanTos()
	p.divide("sill")
	p.layFloor()
	p.layLoft()
	p.divide("plate", "ridge")
	s.flushPegs()
}

// ready checks what a building cannot do without.
func (p *plan) ready() bool {
	s, b := p.s, p.b
	missing := func(ok bool, what, mend string) {
		if !ok {
			s.fault(b.At, "building", "the building has no "+what, mend)
		}
	}
	missing(b.Span.Set, "span", "add span: the width out to out, such as span: 8'")
	missing(len(b.Bays) > 0, "bays", "add bays: a list of bay lengths, such as bays: [10']")
	missing(b.Eave.Set, "eave", "add eave: the top of the plate above the sill top or floor")
	p.readyRoof()
	if len(s.faults) == 0 {
		p.sized()
		p.counted()
	}
	return len(s.faults) == 0
}

func (p *plan) layBents() {
	p.length = 0
	for _, l := range p.b.Bays {
		p.length += l.MM
	}
	x := 0.0
	for i := 0; i <= len(p.b.Bays); i++ {
		bt := &bent{n: i + 1, x: x, out: west, word: fmt.Sprintf("toward bent %d", i), post: map[string]*stick{}, principal: map[string]*stick{}}
		if i == 0 {
			bt.word = "gable side"
		}
		if i == len(p.b.Bays) {
			bt.out, bt.word = east, "gable side"
		} else {
			x += p.b.Bays[i].MM
		}
		p.bents = append(p.bents, bt)
	}
}

// last reports whether the bent's reference face looks east.
func (bt *bent) last() bool { return bt.out.X > 0 }

// inside is the word for the face opposite the bent face.
func (p *plan) inside(bt *bent) string {
	switch {
	case bt.last():
		return fmt.Sprintf("toward bent %d", bt.n-1)
	case bt.n == 1:
		return "toward bent 2"
	}
	return fmt.Sprintf("toward bent %d", bt.n+1)
}

func (p *plan) wallY(wall string) float64 {
	if wall == "north" {
		return p.span
	}
	return 0
}

func (p *plan) layPosts() {
	s := p.s
	a, b := s.size("post")
	for _, bt := range p.bents {
		for _, sd := range sides {
			l := line{at: vec.V{X: bt.x, Y: p.wallY(sd.wall)}, dir: up, out1: sd.out, out2: bt.out, size1: a, size2: b,
				name1: "outside", name2: bt.word, name3: "inside", name4: p.inside(bt)}
			st := s.add(fmt.Sprintf("post-%d-%s", bt.n, sd.wall), "post", p.b.At, l, 0, p.plateTop(sd.wall), spec.TimberSettings{})
			st.t.Bent, st.t.Wall = bt.n, sd.wall
			bt.post[sd.wall] = st
			p.foot(st, p.sills[sd.wall], func(own *spec.JointSettings) {
				if bt.n == 1 || bt.last() {
					holdAt(own, bt, s.std.hold)
				}
			})
			lo, hi := bt.x, bt.x+b
			if bt.last() {
				lo, hi = bt.x-b, bt.x
			}
			p.pos[sd.wall] = append(p.pos[sd.wall], vertical{st, lo, hi})
			if gable := p.gable(bt); gable != "" {
				lo, hi = 0, a
				if sd.wall == "north" {
					lo, hi = p.span-a, p.span
				}
				p.pos[gable] = append(p.pos[gable], vertical{st, lo, hi})
			}
		}
	}
}

// gable names the gable wall that a bent stands in, or "".
func (p *plan) gable(bt *bent) string {
	switch {
	case bt.n == 1:
		return "west"
	case bt.last():
		return "east"
	}
	return ""
}

func (p *plan) layPlates() {
	s := p.s
	w, d := s.size("plate")
	past := p.b.Roof.GableOverhang.Or(s.std.pastGable)
	for _, sd := range sides {
		l := line{at: vec.V{Y: p.wallY(sd.wall), Z: p.plateTop(sd.wall)}, dir: east, out1: up, out2: sd.out, size1: d, size2: w,
			name1: "top", name2: "outside", name3: "underside", name4: "inside"}
		st := s.add("plate-"+sd.wall, "plate", p.b.Eave.At, l, -past, p.length+past, spec.TimberSettings{})
		st.t.Wall = sd.wall
		p.plates[sd.wall] = st
		p.plateUnder = p.eave - st.t.Ideal[st.depthAxis()] // of the lower plate
		for _, bt := range p.bents {
			own := spec.JointSettings{TenonLength: set(s.topTenon(st)), Along: centred()}
			if p.gable(bt) != "" {
				holdAt(&own, bt, s.std.hold)
			}
			// The outside gets boarded and a rafter passes close above: sawn flush.
			s.joinEnd("mortise and tenon", st, bt.post[sd.wall], geom.Finish, own, p.b.Eave.At).flush = true
		}
	}
}

// topTenon is the length of an upright's tenon into a plate: 3 in where the
// plate is 6 in deep, so that wood is left under the rafter seat.
func (s *solver) topTenon(plate *stick) float64 {
	if plate.t.Section[plate.depthAxis()] < 6.8*inch {
		return s.std.shallow
	}
	return s.std.tenon
}

// depthAxis is the index of the section that is plumb in a level stick.
func (st *stick) depthAxis() int {
	if st.firstAlongY() {
		return 1
	}
	return 0
}

func (p *plan) layTies() {
	if p.overPlates() {
		p.layTiesOver()
		return
	}
	s := p.s
	w, d := s.size("tie")
	_, plateDepth := s.size("plate")
	p.tieTop = p.b.TieHeight.Or(p.eave - plateDepth - s.std.tieDown)
	for _, bt := range p.bents {
		l := line{at: vec.V{X: bt.x, Z: p.tieTop}, dir: north, out1: up, out2: bt.out, size1: d, size2: w,
			name1: "top", name2: bt.word, name3: "underside", name4: p.inside(bt)}
		at := p.b.At
		if p.b.TieHeight.Set {
			at = p.b.TieHeight.At
		}
		st := s.add(fmt.Sprintf("tie-%d", bt.n), "tie", at, l, 0, p.span, spec.TimberSettings{})
		st.t.Bent = bt.n
		bt.tie = st
		own := spec.JointSettings{}
		s.joinEnd("mortise and tenon", bt.post["south"], st, geom.Start, own, at).tension = p.thrusts()
		s.joinEnd("mortise and tenon", bt.post["north"], st, geom.Finish, own, at).tension = p.thrusts()
	}
}

// joinEnd plans a joint at an end of e.
func (s *solver) joinEnd(kind string, r, e *stick, end geom.End, own spec.JointSettings, at finding.Pos) *pact {
	p := &pact{id: jointID(e, r), kind: kind, r: r, e: e, end: end, own: own, at: at}
	for _, q := range s.pacts {
		if q.id == p.id {
			p.id += "-" + string(end)
		}
	}
	s.pacts = append(s.pacts, p)
	return p
}

// jointID names a joint after its timbers; a name that would leave no room for
// its pegs' numbers within 60 characters ends in a hash of the whole instead.
func jointID(e, r *stick) string {
	id := e.t.ID + "-into-" + r.t.ID
	if len(id) <= 53 {
		return id
	}
	h := fnv.New32a()
	h.Write([]byte(id))
	return fmt.Sprintf("%s-%08x", strings.TrimRight(id[:44], "-"), h.Sum32())
}

func set(mm float64) spec.Length  { return spec.Length{MM: mm, Set: true} }
func count(n float64) spec.Number { return spec.Number{V: n, Set: true} }
func flag(on bool) spec.Flag      { return spec.Flag{On: on, Set: true} }
func centred() spec.Along         { return spec.Along{Centred: true, Set: true} }
