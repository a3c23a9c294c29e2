package assembly

import (
	"fmt"
	"math"
	"slices"

	"pegwright/geom"
	"pegwright/geom/solid"
	"pegwright/geom/vec"
)

// body is one thing that can stand in the way: a timber, or a wedge or key of a
// joint between the timbers a and b.
type body struct {
	cells []solid.Convex // frame axes
	boxes []box
	box   box
	a, b  int // the timbers it goes with; for a timber, itself twice
}

// scene holds the bodies of a frame, timbers first and then pieces, and
// remembers what runs into what.
type scene struct {
	f        *geom.Frame
	bodies   []body
	grid     map[[3]int][]int
	known    map[query][]int
	shared   map[[2]int]bool
	index    map[*geom.Timber]int
	joints   [][]*geom.Joint       // by timber
	pieces   [][]int               // bodies by timber
	piece    map[string]int        // body by the piece's id
	barriers map[string][]barrier  // by peg
	pegged   map[*geom.Joint][]int // what stands before any peg of a joint
	lowest   float64               // height of the lowest wood
}

// query is a body that is set off by from and then moved by way.
type query struct {
	body      int
	from, way vec.V
}

const pitch = 1000.0 // of the grid, mm

func newScene(f *geom.Frame) *scene {
	s := &scene{f: f, grid: map[[3]int][]int{}, known: map[query][]int{}, shared: map[[2]int]bool{},
		index: map[*geom.Timber]int{}, piece: map[string]int{}, barriers: map[string][]barrier{}, pegged: map[*geom.Joint][]int{}}
	for i, t := range f.Timbers {
		s.index[t] = i
		var cells []solid.Convex
		for _, c := range t.Net.Cells() {
			cells = append(cells, c.Moved(t.Place))
		}
		s.add(cells, i, i)
	}
	s.joints, s.pieces = make([][]*geom.Joint, len(f.Timbers)), make([][]int, len(f.Timbers))
	for _, j := range f.Joints {
		a, b := s.index[j.Into], s.index[j.Of]
		s.joints[a] = append(s.joints[a], j)
		if b != a {
			s.joints[b] = append(s.joints[b], j)
		}
		for _, p := range j.Pieces {
			s.piece[p.ID] = len(s.bodies)
			s.pieces[a] = append(s.pieces[a], len(s.bodies))
			s.add([]solid.Convex{p.Solid}, a, b)
		}
	}
	return s
}

func (s *scene) add(cells []solid.Convex, a, b int) {
	x := body{cells: cells, a: a, b: b}
	for i, c := range cells {
		x.boxes = append(x.boxes, boxOf(c))
		if i == 0 {
			x.box = x.boxes[0]
		}
		x.box = x.box.join(x.boxes[i])
	}
	n := len(s.bodies)
	if n == 0 || x.box.lo.Z < s.lowest {
		s.lowest = x.box.lo.Z
	}
	s.bodies = append(s.bodies, x)
	if len(cells) > 0 {
		each(x.box, func(k [3]int) { s.grid[k] = append(s.grid[k], n) })
	}
}

// each calls do for every cell of the grid that the box reaches into.
func each(b box, do func([3]int)) {
	at := func(x float64) int { return int(math.Floor(x / pitch)) }
	for x := at(b.lo.X); x <= at(b.hi.X); x++ {
		for y := at(b.lo.Y); y <= at(b.hi.Y); y++ {
			for z := at(b.lo.Z); z <= at(b.hi.Z); z++ {
				do([3]int{x, y, z})
			}
		}
	}
}

// near returns the bodies whose boxes the box b meets, in order.
func (s *scene) near(b box) []int {
	var r []int
	each(b, func(k [3]int) {
		for _, i := range s.grid[k] {
			if !s.bodies[i].box.apart(b) {
				r = append(r, i)
			}
		}
	})
	slices.Sort(r)
	return slices.Compact(r)
}

// hit returns the bodies that body i, set off by from, runs into on its way.
func (s *scene) hit(i int, from, way vec.V) []int {
	q := query{i, from, way}
	if r, ok := s.known[q]; ok {
		return r
	}
	var r []int
	whole := s.bodies[i].box.shift(from)
	near := s.near(whole.join(whole.shift(way)))
	found := make([]bool, len(near))
	for _, c := range s.bodies[i].cells {
		sw := swept(shifted(c, from), way)
		for k, j := range near {
			if j != i && !found[k] && s.meets(&sw, j) && !s.overlap(i, j) {
				found[k] = true
			}
		}
	}
	for k, j := range near {
		if found[k] {
			r = append(r, j)
		}
	}
	s.known[q] = r
	return r
}

func (s *scene) meets(sw *sweep, j int) bool {
	x := &s.bodies[j]
	if sw.box.apart(x.box) {
		return false
	}
	for k, c := range x.cells {
		if sw.hits(c, x.boxes[k]) {
			return true
		}
	}
	return false
}

// overlap reports whether two bodies share wood where they stand.
func (s *scene) overlap(i, j int) bool {
	k := [2]int{min(i, j), max(i, j)}
	if r, ok := s.shared[k]; ok {
		return r
	}
	r := false
	for _, c := range s.bodies[i].cells {
		sw := swept(c, vec.V{})
		if s.meets(&sw, j) {
			r = true
			break
		}
	}
	s.shared[k] = r
	return r
}

// onPier reports whether timber i stands on something that is not a timber.
func (s *scene) onPier(i int) bool {
	return slices.ContainsFunc(s.f.Supports, func(x geom.Support) bool { return x.Timber == s.f.Timbers[i].ID })
}

// parts divides a set into what hangs together by its own joints, in order.
func (s *scene) parts(set []int) [][]int {
	var r [][]int
	seen := map[int]bool{}
	for _, i := range set {
		if seen[i] {
			continue
		}
		seen[i] = true
		part := []int{i}
		for k := 0; k < len(part); k++ {
			for _, j := range s.joints[part[k]] {
				if o := s.other(j, part[k]); !seen[o] && slices.Contains(set, o) {
					seen[o] = true
					part = append(part, o)
				}
			}
		}
		slices.Sort(part)
		r = append(r, part)
	}
	return r
}

// called names a set of timbers.
func (s *scene) called(set []int) string {
	first := s.f.Timbers[set[0]].ID
	switch len(set) {
	case 1:
		return first
	case 2:
		return together(first, s.f.Timbers[set[1]].ID)
	}
	return fmt.Sprintf("%s with %d more", first, len(set)-1)
}

// shifted returns c moved by v.
func shifted(c solid.Convex, v vec.V) solid.Convex {
	if v == (vec.V{}) {
		return c
	}
	to := vec.Identity
	to.O = v
	return c.Moved(to)
}
