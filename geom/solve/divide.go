package solve

import (
	"fmt"
	"math"
	"slices"

	"pegwright/geom"
	"pegwright/geom/finding"
	"pegwright/geom/list"
	"pegwright/geom/spec"
	"pegwright/geom/vec"
)

// A scarf stands 0.15 to 0.30 of the bay from a post, where a continuous stick
// bends least, and 2 in clear of every mortise, pocket and notch (common
// practice, no source). Its table is four times the depth, or as little as
// three where nothing longer finds room.
const (
	bandLow, bandHigh = 0.15, 0.30
	leastPiece        = 36 * inch
)

// scarfTables are the lengths tried, over the depth.
var scarfTables = []float64{4, 3.5, 3}

// run is a span along a stick that a joint takes wood from.
type run struct{ lo, hi float64 }

// divide cuts sticks of the given roles that are longer than the longest to be
// had into pieces joined by scarfs.
func (p *plan) divide(roles ...string) {
	longest := p.s.longest()
	if math.IsInf(longest, 1) {
		return
	}
	var over []string
	for _, st := range append([]*stick(nil), p.s.order...) {
		if st.hi-st.lo <= longest+1e-6 {
			continue
		}
		if slices.Contains(roles, st.t.Role) && !p.divideStick(st, longest) {
			over = append(over, st.t.ID)
		}
	}
	if len(over) > 0 {
		l := p.s.longestAt()
		p.s.f.Notes = append(p.s.f.Notes, finding.Finding{Severity: finding.Warn, Rule: "stock", Timbers: over, At: l.At,
			Text: fmt.Sprintf("longer than %s, and there is no room on them for scarfs that are clear of their joints: %s", p.s.f.Units.Format(longest), join(over)),
			Mend: "get longer sticks, or set the rafters, joists or braces farther apart"})
	}
}

// longestAt is what the description says of the longest stick: in so many
// words, or as the longest of the lengths on offer.
func (s *solver) longestAt() spec.Length {
	if l := s.d.Wood.Longest; l.Set {
		return l
	}
	var most spec.Length
	for _, l := range s.d.Stock.Lengths {
		if l.MM > most.MM {
			most = l
		}
	}
	if most.Set {
		most.MM -= 2 * list.Trim(s.f.Units)
	}
	return most
}

func (s *solver) longest() float64 { return s.longestAt().Or(math.Inf(1)) }

// spot is a place for a scarf: its middle along the stick, half its table, and
// how far outside the band it stands.
type spot struct{ at, half, miss float64 }

// divideStick finds places for the scarfs of one stick and cuts it there. It
// reports whether there is room.
func (p *plan) divideStick(st *stick, longest float64) bool {
	chosen, ok := chooseSpots(p.spots(st), st.lo, st.hi, longest)
	if ok {
		p.splitAt(st, chosen)
	}
	return ok
}

// spots are all places along a stick, an inch apart, where a scarf clears the
// joints that are there.
func (p *plan) spots(st *stick) []spot {
	taken := p.s.runsAlong(st)
	depth := st.t.Section[st.depthAxis()]
	gap := p.s.std.stagger - 1e-6
	var r []spot
	for x := st.lo + leastPiece; x < st.hi-leastPiece; x += inch {
		for _, k := range scarfTables {
			half, clear := k*depth/2, true
			for _, t := range taken {
				clear = clear && (t.hi <= x-half-gap || t.lo >= x+half+gap)
			}
			if clear {
				r = append(r, spot{x, half, p.offBand(st, x)})
				break
			}
		}
	}
	return r
}

// extraPiece is what one more piece weighs against a scarf's place, as a share
// of the bay.
const extraPiece = 0.1

// chooseSpots picks the spots that leave no piece longer than longest, tables
// included: as few pieces as can be and as near to the band as can be.
func chooseSpots(spots []spot, lo, hi, longest float64) ([]spot, bool) {
	cost := make([]float64, len(spots))
	before := make([]int, len(spots))
	last, least := -1, math.Inf(1)
	for i, c := range spots {
		cost[i], before[i] = math.Inf(1), -1
		if c.at+c.half-lo <= longest+1e-6 {
			cost[i] = extraPiece + c.miss
		}
		for k, b := range spots[:i] {
			sum := cost[k] + extraPiece + c.miss
			if sum < cost[i] && c.at-b.at >= leastPiece && c.at+c.half-b.at+b.half <= longest+1e-6 {
				cost[i], before[i] = sum, k
			}
		}
		if cost[i] < least && hi-c.at+c.half <= longest+1e-6 {
			last, least = i, cost[i]
		}
	}
	var r []spot
	for ; last >= 0; last = before[last] {
		r = append([]spot{spots[last]}, r...)
	}
	return r, len(r) > 0
}

// runsAlong are the spans along a stick that its joints take wood from.
func (s *solver) runsAlong(st *stick) []run {
	o, dir := st.t.Place.O, st.t.Place.X
	var r []run
	for _, q := range s.pacts {
		if q.r != st {
			continue
		}
		for _, v := range s.takes(q) {
			a := run{math.Inf(1), math.Inf(-1)}
			for _, c := range v.V {
				u := c.Sub(o).Dot(dir)
				a.lo, a.hi = min(a.lo, u), max(a.hi, u)
			}
			r = append(r, a)
		}
	}
	return r
}

// offBand is how far outside the band a place along a stick lies, as a share
// of its bay.
func (p *plan) offBand(st *stick, u float64) float64 {
	x := st.t.Place.O.X + u*st.t.Place.X.X
	for i := 0; i+1 < len(p.bents); i++ {
		a, b := p.bents[i].x, p.bents[i+1].x
		if x < a || x > b {
			continue
		}
		share := min(x-a, b-x) / (b - a)
		return max(bandLow-share, share-bandHigh, 0)
	}
	return math.Inf(1)
}

// splitAt puts pieces in a stick's place and gives each joint to the piece
// that it stands on.
func (p *plan) splitAt(st *stick, at []spot) {
	s := p.s
	var pieces []*stick
	for i := range len(at) + 1 {
		t := *st.t
		t.ID = fmt.Sprintf("%s-%d", st.t.ID, i+1)
		q := &stick{t: &t, lo: st.lo, hi: st.hi, overall: st.overall, first: st.first}
		if i > 0 {
			q.lo = at[i-1].at
		}
		if i < len(at) {
			q.hi = at[i].at
		}
		pieces = append(pieces, q)
	}
	s.replaceStick(st, pieces)
	p.parts[st] = pieces
	s.handOver(st, pieces)
	var far []string
	for i, c := range at {
		a, b := pieces[i], pieces[i+1]
		j := s.joinEnd("half-lap scarf", a, b, geom.Start, spec.JointSettings{Scarf: spec.Scarf{Length: set(2 * c.half)}}, s.longestAt().At)
		j.rEnd = geom.Finish
		if c.miss > 0 {
			far = append(far, j.id)
		}
		if st.t.Role == "sill" && p.b.Piers.Set {
			p.pierAt(b, c.at)
		}
	}
	s.note(s.longestAt().At, fmt.Sprintf("%s is made of %d pieces, none longer than %s", st.t.ID, len(pieces), s.f.Units.Format(s.longest())),
		"get longer sticks to have it in one", ids(pieces)...)
	if len(far) > 0 {
		s.note(s.longestAt().At, fmt.Sprintf("farther from a post, or nearer to it, than 0.15 to 0.30 of the bay, where the joints beside them leave no room: %s", join(far)),
			"set the rafters, joists or braces farther apart, or get longer sticks")
	}
}

func ids(list []*stick) []string {
	var r []string
	for _, st := range list {
		r = append(r, st.t.ID)
	}
	return r
}

// replaceStick lists pieces in a stick's place, in notes and supports too.
func (s *solver) replaceStick(st *stick, pieces []*stick) {
	var order []*stick
	for _, x := range s.order {
		if x == st {
			order = append(order, pieces...)
		} else {
			order = append(order, x)
		}
	}
	s.order = order
	delete(s.sticks, st.t.ID)
	for _, q := range pieces {
		s.sticks[q.t.ID] = q
	}
	for i := range s.f.Notes {
		for k, id := range s.f.Notes[i].Timbers {
			if id == st.t.ID {
				list := s.f.Notes[i].Timbers
				s.f.Notes[i].Timbers = append(append(append([]string(nil), list[:k]...), ids(pieces)...), list[k+1:]...)
				break
			}
		}
	}
	for i := range s.f.Supports {
		if sup := &s.f.Supports[i]; sup.Timber == st.t.ID {
			sup.Timber = pieceAt(pieces, sup.At).t.ID
		}
	}
}

// part is the piece of a stick that a place lies beside, or the stick itself
// where it is whole.
func (p *plan) part(st *stick, at vec.V) *stick {
	if pieces := p.parts[st]; pieces != nil {
		return pieceAt(pieces, at)
	}
	return st
}

// pieceAt is the piece that a place lies beside.
func pieceAt(pieces []*stick, at vec.V) *stick {
	for _, q := range pieces {
		if at.Sub(q.t.Place.O).Dot(q.t.Place.X) < q.hi {
			return q
		}
	}
	return pieces[len(pieces)-1]
}

// handOver gives a stick's joints to its pieces and names them anew.
func (s *solver) handOver(st *stick, pieces []*stick) {
	for _, q := range s.pacts {
		old := jointID(q.e, q.r)
		switch {
		case q.r == st:
			at := q.e.t.Place.O
			if v := s.takes(q); len(v) > 0 {
				at = v[0].lo.Lerp(v[0].hi, 0.5)
			}
			q.r = pieceAt(pieces, at)
		case q.e == st && q.end == geom.Finish:
			q.e = pieces[len(pieces)-1]
		case q.e == st && q.end == geom.Start:
			q.e = pieces[0]
		default:
			continue
		}
		if q.id == old {
			q.id = jointID(q.e, q.r)
		}
	}
}
