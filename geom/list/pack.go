package list

import (
	"math"
	"slices"
)

// packing cuts pieces out of stock lengths with the least total length. All
// figures are millimetres.
type packing struct {
	offer  []float64 // stock lengths, shortest first
	kerf   float64
	pieces []float64 // longest first
	limit  int       // nodes that the search may look at

	best   float64 // total length of the best cutting found
	bestTo []int   // stick of each piece in it
	nodes  int
	loads  []float64
	to     []int
	goal   float64 // a bound that no cutting goes under
}

// cutting is an answer: for each stick its stock length and the pieces, as
// places in the pieces given.
type cutting struct {
	sticks []cutStick
	total  float64 // length bought
	least  float64 // no cutting can buy less
	proved bool    // total is the least there is
}

type cutStick struct {
	length float64
	pieces []int
}

// slack is what lengths may differ by and still count as equal, mm.
const slack = 1e-6

// pack returns the cutting of pieces (longest first) with the least total
// length that a search of at most limit nodes finds: first-fit by falling
// length under every stock length, then branch and bound. Pieces longer than
// every stock length are bought as sticks of their own length.
func pack(pieces, offer []float64, kerf float64, limit int) cutting {
	var own cutting
	p := packing{kerf: kerf, limit: limit, offer: offer, best: math.Inf(1)}
	var back []int // from places in p.pieces to places in pieces
	for i, l := range pieces {
		if len(offer) == 0 || l > offer[len(offer)-1]+slack {
			own.sticks = append(own.sticks, cutStick{l, []int{i}})
			own.total += l
			continue
		}
		p.pieces, back = append(p.pieces, l), append(back, i)
	}
	own.least, own.proved = own.total, true
	if len(p.pieces) == 0 {
		return own
	}
	least, proved := p.solve()
	own.total, own.least, own.proved = own.total+p.best, own.least+least, proved
	own.sticks = append(own.sticks, p.sticks(back)...)
	return own
}

// solve leaves the best cutting in p and returns the proved bound.
func (p *packing) solve() (least float64, proved bool) {
	p.goal = p.bound()
	for _, top := range p.offer {
		p.firstFit(top)
	}
	if p.best > p.goal+slack {
		p.to = make([]int, len(p.pieces))
		p.branch(0, sum(p.pieces))
	}
	if p.nodes <= p.limit {
		return p.best, true
	}
	return p.goal, p.best <= p.goal+slack
}

// price is the shortest stock length that holds a load, +Inf when none does.
func (p *packing) price(load float64) float64 {
	for _, l := range p.offer {
		if load <= l+slack {
			return l
		}
	}
	return math.Inf(1)
}

// with is the load of a stick once a piece is added to it.
func (p *packing) with(load, piece float64) float64 {
	if load == 0 {
		return piece
	}
	return load + p.kerf + piece
}

// firstFit lays each piece in the first stick of length top that has room and
// keeps the result when it is the best so far.
func (p *packing) firstFit(top float64) {
	var loads []float64
	to := make([]int, len(p.pieces))
	for i, piece := range p.pieces {
		at := slices.IndexFunc(loads, func(l float64) bool { return p.with(l, piece) <= top+slack })
		if at < 0 {
			at, loads = len(loads), append(loads, 0)
		}
		loads[at] = p.with(loads[at], piece)
		to[i] = at
	}
	total := 0.0
	for _, l := range loads {
		total += p.price(l)
	}
	p.keep(total, to)
}

func (p *packing) keep(total float64, to []int) {
	if total < p.best-slack {
		p.best, p.bestTo = total, slices.Clone(to)
	}
}

// branch tries piece i in every open stick and in a new one; rest is the
// length of the pieces from i on. Sticks of equal load stand for one another.
func (p *packing) branch(i int, rest float64) {
	if p.nodes++; p.nodes > p.limit || p.best <= p.goal+slack {
		return
	}
	open, held := 0.0, 0.0
	for _, l := range p.loads {
		open, held = open+p.price(l), held+l
	}
	if max(open, p.rounded(held+rest)) >= p.best-slack {
		return
	}
	if i == len(p.pieces) {
		p.keep(open, p.to)
		return
	}
	piece, first := p.pieces[i], 0
	if i > 0 && p.pieces[i-1] == piece {
		first = p.to[i-1] // equal pieces in the order of their sticks
	}
	for k := first; k < len(p.loads); k++ {
		old := p.loads[k]
		if slices.Index(p.loads[first:], old) != k-first || math.IsInf(p.price(p.with(old, piece)), 1) {
			continue
		}
		p.loads[k], p.to[i] = p.with(old, piece), k
		p.branch(i+1, rest-piece)
		p.loads[k] = old
	}
	p.loads, p.to[i] = append(p.loads, piece), len(p.loads)
	p.branch(i+1, rest-piece)
	p.loads = p.loads[:len(p.loads)-1]
}

// sticks returns the best cutting, the pieces by their places in the caller's
// list.
func (p *packing) sticks(back []int) []cutStick {
	out := make([]cutStick, slices.Max(p.bestTo)+1)
	loads := make([]float64, len(out))
	for i, k := range p.bestTo {
		out[k].pieces = append(out[k].pieces, back[i])
		loads[k] = p.with(loads[k], p.pieces[i])
	}
	for k := range out {
		out[k].length = p.price(loads[k])
	}
	return out
}

func sum(x []float64) float64 {
	s := 0.0
	for _, v := range x {
		s += v
	}
	return s
}
