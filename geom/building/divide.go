package building

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"pegwright/geom"
	"pegwright/geom/finding"
	"pegwright/geom/list"
	"pegwright/geom/scheme"
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

// divide cuts sticks of the given roles that are longer than the longest to be
// had into pieces joined by scarfs.
func (p *plan) divide(roles ...string) {
	longest := p.longest()
	if math.IsInf(longest, 1) {
		return
	}
	var over []string
	for _, st := range append([]*scheme.Stick(nil), p.s.Order...) {
		if st.Hi-st.Lo <= longest+1e-6 {
			continue
		}
		if slices.Contains(roles, st.Timber.Role) && !p.divideStick(st, longest) {
			over = append(over, st.Timber.ID)
		}
	}
	if len(over) > 0 {
		l := p.longestAt()
		p.s.Frame.Notes = append(p.s.Frame.Notes, finding.Finding{Severity: finding.Warn, Rule: "stock", Timbers: over, At: l.At,
			Text: fmt.Sprintf("longer than %s, and there is no room on them for scarfs that are clear of their joints: %s", p.s.Frame.Units.Format(longest), strings.Join(over, ", ")),
			Mend: "get longer sticks, or set the rafters, joists or braces farther apart"})
	}
}

// longestAt is what the description says of the longest stick: in so many
// words, or as the longest of the lengths on offer.
func (p *plan) longestAt() spec.Length {
	s := p.s
	if l := s.Description.Wood.Longest; l.Set {
		return l
	}
	var most spec.Length
	for _, l := range s.Description.Stock.Lengths {
		if l.MM > most.MM {
			most = l
		}
	}
	if most.Set {
		most.MM -= 2 * list.Trim(s.Frame.Units)
	}
	return most
}

func (p *plan) longest() float64 { return p.longestAt().Or(math.Inf(1)) }

// spot is a place for a scarf: its middle along the stick, half its table, and
// how far outside the band it stands.
type spot struct{ at, half, miss float64 }

// divideStick finds places for the scarfs of one stick and cuts it there. It
// reports whether there is room.
func (p *plan) divideStick(st *scheme.Stick, longest float64) bool {
	chosen, ok := chooseSpots(p.spots(st), st.Lo, st.Hi, longest)
	if ok {
		p.splitAt(st, chosen)
	}
	return ok
}

// spots are all places along a stick, an inch apart, where a scarf clears the
// joints that are there.
func (p *plan) spots(st *scheme.Stick) []spot {
	taken := p.s.Taken(st)
	depth := st.Timber.Section[st.DepthAxis()]
	gap := p.std.stagger - 1e-6
	var r []spot
	for x := st.Lo + leastPiece; x < st.Hi-leastPiece; x += inch {
		for _, k := range scarfTables {
			half, clear := k*depth/2, true
			for _, t := range taken {
				clear = clear && (t.Hi <= x-half-gap || t.Lo >= x+half+gap)
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

// offBand is how far outside the band a place along a stick lies, as a share
// of its bay.
func (p *plan) offBand(st *scheme.Stick, u float64) float64 {
	x := st.Timber.Place.O.X + u*st.Timber.Place.X.X
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
func (p *plan) splitAt(st *scheme.Stick, at []spot) {
	s := p.s
	var pieces []*scheme.Stick
	for i := range len(at) + 1 {
		lo, hi := st.Lo, st.Hi
		if i > 0 {
			lo = at[i-1].at
		}
		if i < len(at) {
			hi = at[i].at
		}
		pieces = append(pieces, st.Piece(fmt.Sprintf("%s-%d", st.Timber.ID, i+1), lo, hi))
	}
	p.replaceStick(st, pieces)
	p.parts[st] = pieces
	p.handOver(st, pieces)
	var far []string
	for i, c := range at {
		a, b := pieces[i], pieces[i+1]
		j := s.Join("half-lap scarf", a, b, geom.Start, spec.JointSettings{Scarf: spec.Scarf{Length: spec.LengthOf(2 * c.half)}}, p.longestAt().At)
		j.REnd = geom.Finish
		if c.miss > 0 {
			far = append(far, j.ID)
		}
		if st.Timber.Role == "sill" && p.b.Piers.Set {
			p.pierAt(b, c.at)
		}
	}
	s.Note(p.longestAt().At, fmt.Sprintf("%s is made of %d pieces, none longer than %s", st.Timber.ID, len(pieces), s.Frame.Units.Format(p.longest())),
		"get longer sticks to have it in one", ids(pieces)...)
	if len(far) > 0 {
		s.Note(p.longestAt().At, fmt.Sprintf("farther from a post, or nearer to it, than 0.15 to 0.30 of the bay, where the joints beside them leave no room: %s", strings.Join(far, ", ")),
			"set the rafters, joists or braces farther apart, or get longer sticks")
	}
}

// ids are the ids of sticks, in order.
func ids(list []*scheme.Stick) []string {
	var r []string
	for _, st := range list {
		r = append(r, st.Timber.ID)
	}
	return r
}

// replaceStick lists pieces in a stick's place, in notes and supports too.
func (p *plan) replaceStick(st *scheme.Stick, pieces []*scheme.Stick) {
	s := p.s
	var order []*scheme.Stick
	for _, x := range s.Order {
		if x == st {
			order = append(order, pieces...)
		} else {
			order = append(order, x)
		}
	}
	s.Order = order
	delete(s.Sticks, st.Timber.ID)
	for _, q := range pieces {
		s.Sticks[q.Timber.ID] = q
	}
	for i := range s.Frame.Notes {
		for k, id := range s.Frame.Notes[i].Timbers {
			if id == st.Timber.ID {
				list := s.Frame.Notes[i].Timbers
				s.Frame.Notes[i].Timbers = append(append(append([]string(nil), list[:k]...), ids(pieces)...), list[k+1:]...)
				break
			}
		}
	}
	for i := range s.Frame.Supports {
		if sup := &s.Frame.Supports[i]; sup.Timber == st.Timber.ID {
			sup.Timber = pieceAt(pieces, sup.At).Timber.ID
		}
	}
}

// part is the piece of a stick that a place lies beside, or the stick itself
// where it is whole.
func (p *plan) part(st *scheme.Stick, at vec.V) *scheme.Stick {
	if pieces := p.parts[st]; pieces != nil {
		return pieceAt(pieces, at)
	}
	return st
}

// pieceAt is the piece that a place lies beside.
func pieceAt(pieces []*scheme.Stick, at vec.V) *scheme.Stick {
	for _, q := range pieces {
		if at.Sub(q.Timber.Place.O).Dot(q.Timber.Place.X) < q.Hi {
			return q
		}
	}
	return pieces[len(pieces)-1]
}

// handOver gives a stick's joints to its pieces and names them anew.
func (p *plan) handOver(st *scheme.Stick, pieces []*scheme.Stick) {
	s := p.s
	for _, q := range s.Pacts {
		old := scheme.JointID(q.E, q.R)
		switch {
		case q.R == st:
			q.R = pieceAt(pieces, s.Place(q))
		case q.E == st && q.End == geom.Finish:
			q.E = pieces[len(pieces)-1]
		case q.E == st && q.End == geom.Start:
			q.E = pieces[0]
		default:
			continue
		}
		if q.ID == old {
			q.ID = scheme.JointID(q.E, q.R)
		}
	}
}
