package solid

import "pegwright/geom/vec"

// LeastJoin is the shared face (mm²) through which two parts of a timber must
// hang together to be one stick.
const LeastJoin = 100

// leastPart is the volume (mm³, a cube of 10 mm) under which a part that hangs
// on by less than LeastJoin belongs to the part it shares most face with: it is
// a small cell of a bigger piece of wood, or a chip that does no harm.
const leastPart = 1000

// Pieces returns the cells in groups that hang together through at least
// LeastJoin of shared face: one group means one stick. Shared faces between
// two groups count together.
func (b *Body) Pieces() [][]Convex {
	group := make([]int, len(b.cells))
	for i := range group {
		group[i] = i
	}
	joins := b.joins()
	for {
		shared := map[[2]int]float64{}
		for _, j := range joins {
			shared[lesserFirst(group[j.a], group[j.b])] += j.area
		}
		if !unite(group, joins, shared) && !b.absorb(group, joins, shared) {
			break
		}
	}
	var out [][]Convex
	at := map[int]int{}
	for i, c := range b.cells {
		k, ok := at[group[i]]
		if !ok {
			k = len(out)
			at[group[i]] = k
			out = append(out, nil)
		}
		out[k] = append(out[k], c)
	}
	return out
}

// unite makes one every two groups with enough shared face, and reports whether
// there were any. What is shared is as it was before the first union.
func unite(group []int, joins []join, shared map[[2]int]float64) bool {
	joined := false
	for _, j := range joins {
		k := lesserFirst(group[j.a], group[j.b])
		if k[0] != k[1] && shared[k] >= LeastJoin {
			joined = true
			regroup(group, k[1], k[0])
		}
	}
	return joined
}

// absorb gives the first group that is too small to count to the one that it
// shares most face with, and reports whether there was one.
func (b *Body) absorb(group []int, joins []join, shared map[[2]int]float64) bool {
	volume := make([]float64, len(group))
	for i, c := range b.cells {
		volume[group[i]] += c.Volume()
	}
	for g, v := range volume {
		if v == 0 || v >= leastPart {
			continue
		}
		best, most := -1, 0.0
		for _, j := range joins {
			k := lesserFirst(group[j.a], group[j.b])
			if k[0] != k[1] && (k[0] == g || k[1] == g) && shared[k] > most {
				best, most = k[0]+k[1]-g, shared[k]
			}
		}
		if best >= 0 {
			regroup(group, g, best)
			return true
		}
	}
	return false
}

func regroup(group []int, from, to int) {
	for i := range group {
		if group[i] == from {
			group[i] = to
		}
	}
}

// join is an area of face shared by two cells.
type join struct {
	a, b int
	area float64
}

// joins returns every pair of cell faces that touch.
func (b *Body) joins() []join {
	type side struct {
		cell int
		loop []vec.V
		n    vec.V
	}
	at := make([][]side, 2*len(b.planes))
	for i, c := range b.cells {
		for _, f := range c.Faces {
			loop := make([]vec.V, len(f.Loop))
			for j, v := range f.Loop {
				loop[j] = c.V[v]
			}
			at[f.flat] = append(at[f.flat], side{i, loop, f.Plane.N})
		}
	}
	var out []join
	for flat := 0; flat < len(at); flat += 2 {
		for _, p := range at[flat] {
			var room [16]Plane
			sides := sidesOf(room[:0], p.loop, p.n)
			for _, q := range at[flat+1] {
				if a := 0 - share(q.loop, sides, p.n); a > leastOverlap {
					out = append(out, join{p.cell, q.cell, a})
				}
			}
		}
	}
	return out
}
