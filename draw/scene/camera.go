package scene

import (
	"cmp"
	"math"
	"slices"

	"pegwright/draw/view"
	"pegwright/geom"
	"pegwright/geom/solid"
	"pegwright/geom/vec"
)

// stage is what a camera is chosen for, whatever the field.
type stage struct {
	joint             *geom.Joint
	way               vec.V // of the enterer
	receiver, enterer []patch
	screen            *screen // both of them
	end               []vec.V // corners of the tenon's end, a little before it
	shots             []shot
}

// shot is a camera that may be chosen, whatever the field.
type shot struct {
	cam        view.Camera
	worth      float64 // but for what it sees and how large
	wide, high float64 // of the picture at full size
	most       float64 // that is seen of receiver and enterer, with nothing in the way
	enterer    float64 // of that, the enterer
	seen       [3]float64
	known      int // how many of those have been looked up
}

// What is seen from a shot, in the order in which it is looked up: the share of the
// tenon's end, and the areas of receiver and enterer.
const (
	seenEnd = iota
	seenReceiver
	seenEnterer
)

// newStage returns the stage of a joint whose parts were pulled apart by Exploded.
func newStage(j *geom.Joint, parts []view.Part) *stage {
	s := &stage{joint: j, way: parts[1].Shift.Unit()}
	var cells []solid.Convex
	var corners []vec.V // of all that is drawn
	for i, p := range parts[:len(parts)-1] {
		for _, c := range p.Placed() {
			if i < 2 {
				cells = append(cells, c)
			}
			corners = append(corners, c.V...)
		}
	}
	s.screen = screenOf(cells)
	s.receiver, s.enterer = patches(parts[0], j.ID, cells), patches(parts[1], j.ID, cells)
	for _, c := range tips(j) {
		s.end = append(s.end, c.Add(parts[1].Shift).Add(j.Moves[0].Direction.Mul(0.1)))
	}
	s.shots = s.about(distinct(corners))
	return s
}

// about returns the shots from all round the corners of what is drawn.
func (s *stage) about(corners []vec.V) []shot {
	shots := make([]shot, 0, 128)
	for az := 11.5; az < 360; az += 11.25 {
		wide := 0.0 // the same however high the viewer climbs
		for _, el := range []float64{24, 38, -24, -38} {
			c := view.Axonometric(az, el)
			if wide == 0 {
				wide = extent(corners, c.Right)
			}
			q := shot{cam: c, worth: s.worth(c), wide: wide, high: extent(corners, c.Up)}
			if el > 0 {
				q.worth *= 1.15 // things are mostly seen from above
			}
			q.enterer = facing(c, s.enterer)
			q.most = facing(c, s.receiver) * q.enterer
			shots = append(shots, q)
		}
	}
	return shots
}

// extent is how far points reach along a direction.
func extent(points []vec.V, d vec.V) float64 {
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, p := range points {
		x := d.Dot(p)
		lo, hi = min(lo, x), max(hi, x)
	}
	return hi - lo
}

// worth tells how well the directions of the joint lie in the picture.
func (s *stage) worth(c view.Camera) float64 {
	j := s.joint
	k := open(c, s.way) * open(c, j.Axes.U) * open(c, j.Of.Place.X)
	for _, p := range j.Pegs {
		k *= open(c, direction(p))
	}
	for _, d := range []vec.V{j.Axes.U, j.Axes.V, j.Axes.W} {
		k *= math.Sqrt(0.05 + min(math.Abs(c.Toward.Dot(d)), 0.4)) // no face edge-on
	}
	return k
}

// open is how much of a direction is left in the picture: 1 down to 30°, less
// below.
func open(c view.Camera, d vec.V) float64 {
	return 0.1 + min(math.Hypot(c.Right.Dot(d), c.Up.Dot(d)), 0.85)
}

// distinct returns the points, each once.
func distinct(points []vec.V) []vec.V {
	slices.SortFunc(points, func(a, b vec.V) int {
		return cmp.Or(cmp.Compare(a.X, b.X), cmp.Compare(a.Y, b.Y), cmp.Compare(a.Z, b.Z))
	})
	return slices.Compact(points)
}

// look returns what is seen from a shot: one of those listed above, of which those
// before it have been looked up.
func (s *stage) look(q *shot, what int) float64 {
	if q.known > what {
		return q.seen[what]
	}
	s.screen.face(q.cam)
	switch what {
	case seenEnd:
		q.seen[what] = inSight(s.end, s.screen)
	case seenReceiver:
		q.seen[what] = showing(q.cam, s.receiver, s.screen)
	case seenEnterer:
		q.seen[what] = showing(q.cam, s.enterer, s.screen)
	}
	q.known = what + 1
	return q.seen[what]
}

// bid is a shot for a field: what it is worth there but for what it sees, the most
// that it can score, and what it does score, -1 where that is not known because
// others score more.
type bid struct {
	*shot
	worth, most, score float64
}

// camera returns the axonometric camera from which most is seen of what the
// joint takes from the receiver and, at the same time, of what it leaves of the
// enterer and of the corners of its tenon's end, with the way between them not
// foreshortened and the picture filling a field of the given size.
func (s *stage) camera(w, h float64) view.Camera {
	bids := make([]bid, len(s.shots))
	for i := range s.shots {
		q := &s.shots[i]
		k := q.worth * math.Sqrt(min(w/q.wide, h/q.high))
		bids[i] = bid{q, k, k * math.Sqrt(q.most), -1}
	}
	s.score(bids)
	best, score := view.Isometric(), -1.0
	for _, b := range bids {
		if b.score > score*(1+1e-9) {
			best, score = b.cam, b.score
		}
	}
	return best
}

// score scores those of the bids that can be the best: what is seen is looked up only
// for them.
func (s *stage) score(bids []bid) {
	order := make([]*bid, len(bids))
	for i := range bids {
		order[i] = &bids[i]
	}
	slices.SortStableFunc(order, func(a, b *bid) int { return cmp.Compare(b.most, a.most) })
	top := -1.0
	for _, b := range order {
		least := top * (1 - 1e-6)
		if b.most < least {
			break
		}
		end := 0.4 + 0.6*s.look(b.shot, seenEnd)
		if b.most*end < least {
			continue
		}
		k, receiver := b.worth*end, s.look(b.shot, seenReceiver)
		if k*math.Sqrt(receiver*b.enterer) < least {
			continue
		}
		b.score = k * math.Sqrt(receiver*s.look(b.shot, seenEnterer))
		top = max(top, b.score)
	}
}
