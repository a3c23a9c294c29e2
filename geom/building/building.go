package building

import (
	"pegwright/geom/scheme"
	"pegwright/geom/spec"
	"pegwright/geom/vec"
)

// plan is the building being generated. Lengths are mm; heights are z of the
// frame.
type plan struct {
	s             *scheme.Scheme
	b             spec.Building
	std           usual
	span, length  float64 // out to out
	eave, tieTop  float64 // tops of the lower plate and of the ties
	bents         []*bent
	sills, plates map[string]*scheme.Stick          // by wall
	cross         map[int]*scheme.Stick             // cross sills by bent
	parts         map[*scheme.Stick][]*scheme.Stick // pieces of divided sticks
	pos           map[string][]vertical             // uprights by wall
	sin, cos      float64                           // of the roof's pitch
	ridge         *scheme.Stick
}

// vertical is a post or door post as met along a wall: its extent along it.
type vertical struct {
	st     *scheme.Stick
	lo, hi float64
}

// sides are the two eave walls with their outward directions.
var sides = []struct {
	wall string
	out  vec.V
}{{"south", south}, {"north", north}}

// Lay lays the building of the scheme's description, if it has one. What cannot
// be built is among the scheme's faults.
func Lay(s *scheme.Scheme) {
	b := s.Description.Building
	if !b.Set {
		return
	}
	p := &plan{s: s, b: b, std: usualFor(s.Frame.Units), span: b.Span.MM, eave: b.Eave.MM, sills: map[string]*scheme.Stick{}, plates: map[string]*scheme.Stick{},
		cross: map[int]*scheme.Stick{}, pos: map[string][]vertical{}, parts: map[*scheme.Stick][]*scheme.Stick{}}
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
	roof := s.Now()
	p.layRoof()
	p.layRidgeBraces()
	walls := s.Now()
	p.layOpenings()
	p.layGirts()
	p.layBraces()
	s.PutLast(roof, walls)
	p.layLeanTos()
	p.divide("sill")
	p.layFloor()
	p.layLoft()
	p.divide("plate", "ridge")
	s.DeepenBores()
	s.FlushPegs()
}

// ready checks what a building cannot do without.
func (p *plan) ready() bool {
	s, b := p.s, p.b
	missing := func(ok bool, what, mend string) {
		if !ok {
			s.Fault(b.At, "building", "the building has no "+what, mend)
		}
	}
	missing(b.Span.Set, "span", "add span: the width out to out, such as span: 8'")
	missing(len(b.Bays) > 0, "bays", "add bays: a list of bay lengths, such as bays: [10']")
	missing(b.Eave.Set, "eave", "add eave: the top of the plate above the sill top or floor")
	p.readyRoof()
	if len(s.Faults) == 0 {
		p.sized()
		p.counted()
		p.asked()
	}
	return len(s.Faults) == 0
}
