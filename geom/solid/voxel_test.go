package solid

import (
	"errors"
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"pegwright/geom/vec"
)

// voxels is a second, brute-force model of a body whose cuts lie on a grid:
// full or empty cubes. It knows no planes and no cells.
type voxels struct {
	n    [3]int
	full map[[3]int]bool
}

const cube = 20.0 // mm: one face is 400 mm², more than LeastJoin

func newVoxels(n [3]int) *voxels {
	v := &voxels{n, map[[3]int]bool{}}
	v.each(func(p [3]int) { v.full[p] = true })
	return v
}

func (v *voxels) each(do func(p [3]int)) {
	for x := range v.n[0] {
		for y := range v.n[1] {
			for z := range v.n[2] {
				do([3]int{x, y, z})
			}
		}
	}
}

func (v *voxels) cut(lo, hi [3]int) {
	v.each(func(p [3]int) {
		for i := range p {
			if p[i] < lo[i] || p[i] >= hi[i] {
				return
			}
		}
		delete(v.full, p)
	})
}

// count returns the number of faces, the total length of true edges and the
// number of grid edges at which cubes touch corner to corner only.
func (v *voxels) count() (faces, edges, contacts int) {
	for x := -1; x <= v.n[0]; x++ {
		for y := -1; y <= v.n[1]; y++ {
			for z := -1; z <= v.n[2]; z++ {
				p := [3]int{x, y, z}
				for k := range 3 {
					a, b := p, p
					a[(k+1)%3]++
					b[(k+2)%3]++
					d := a
					d[(k+2)%3]++
					if v.full[p] != v.full[a] {
						faces++
					}
					n := 0
					for _, q := range [4][3]int{p, a, b, d} {
						if v.full[q] {
							n++
						}
					}
					switch {
					case n == 1 || n == 3:
						edges++
					case n == 2 && v.full[p] == v.full[d]:
						edges += 2
						contacts++
					}
				}
			}
		}
	}
	return
}

// groups returns the number of sets of cubes that hang together face to face.
func (v *voxels) groups() int {
	seen := map[[3]int]bool{}
	n := 0
	var visit func(p [3]int)
	visit = func(p [3]int) {
		if !v.full[p] || seen[p] {
			return
		}
		seen[p] = true
		for k := range 3 {
			q := p
			q[k]++
			visit(q)
			q[k] -= 2
			visit(q)
		}
	}
	v.each(func(p [3]int) {
		if v.full[p] && !seen[p] {
			n++
			visit(p)
		}
	})
	return n
}

// layer returns the number of full cubes in layer i along axis k.
func (v *voxels) layer(k, i int) int {
	n := 0
	for p := range v.full {
		if p[k] == i {
			n++
		}
	}
	return n
}

func gridPoint(p [3]int) vec.V { return at(float64(p[0]), float64(p[1]), float64(p[2])).Mul(cube) }

// Bodies cut on a grid, so that walls and floors are flush, shared, doubled and
// corner to corner all the time, agree with the brute-force model; so do the
// same bodies turned to a random place and cut there.
func TestAgainstVoxels(t *testing.T) {
	for seed := range uint64(80) {
		t.Run(fmt.Sprint(seed), func(t *testing.T) {
			rnd := rand.New(rand.NewPCG(seed, 1))
			n := [3]int{3 + rnd.IntN(6), 2 + rnd.IntN(4), 2 + rnd.IntN(4)}
			place := vec.Identity
			if seed%2 == 1 {
				place = randomPlace(rnd)
			}
			grid := newVoxels(n)
			b := NewBody(timber(float64(n[0])*cube, float64(n[1])*cube, float64(n[2])*cube).Moved(place))
			for i := range 1 + rnd.IntN(9) {
				var lo, hi [3]int
				for k := range 3 {
					lo[k] = rnd.IntN(n[k]+1) - 1
					hi[k] = lo[k] + 1 + rnd.IntN(n[k])
				}
				grid.cut(lo, hi)
				b.Subtract(block(gridPoint(lo), gridPoint(hi)).Moved(place), fmt.Sprint("joint ", i))
				compareVoxels(t, b, grid, place)
				if t.Failed() {
					t.Fatalf("after cut %d", i)
				}
			}
		})
	}
}

func randomPlace(rnd *rand.Rand) vec.Placement {
	x := at(rnd.NormFloat64(), rnd.NormFloat64(), rnd.NormFloat64()).Unit()
	y := x.Cross(at(rnd.NormFloat64(), rnd.NormFloat64(), rnd.NormFloat64())).Unit()
	o := at(rnd.NormFloat64(), rnd.NormFloat64(), rnd.NormFloat64()).Mul(5000)
	return vec.Placement{X: x, Y: y, Z: x.Cross(y), O: o}
}

func compareVoxels(t *testing.T, b *Body, grid *voxels, place vec.Placement) {
	t.Helper()
	faces, edges, contacts := grid.count()
	approx(t, "volume", b.Volume(), float64(len(grid.full))*cube*cube*cube, 1e-2)
	var surface float64
	for _, p := range b.Boundary() {
		surface += p.Area()
		if len(p.Tags) == 0 {
			t.Error("a polygon has no tag")
		}
	}
	approx(t, "surface", surface, float64(faces)*cube*cube, 1e-2)
	var length float64
	for _, e := range b.Edges() {
		length += e.A.Dist(e.B)
	}
	approx(t, "edge length", length, float64(edges)*cube, 1e-3)
	if got, want := len(b.Pieces()), grid.groups(); got != want {
		t.Errorf("%d pieces, want %d", got, want)
	}
	var flaw *Flaw
	if err := b.Valid(); errors.As(err, &flaw) != (contacts > 0) || (flaw != nil && !flaw.Contact) {
		t.Errorf("Valid: %v, but %d contacts", err, contacts)
	}
	for k, dir := range [3]vec.V{{X: 1}, {Y: 1}, {Z: 1}} {
		for i := range grid.n[k] {
			want := float64(grid.layer(k, i)) * cube * cube
			for _, h := range [2]float64{0.37, 1} { // inside the layer; on its far side, wood behind
				pl := PlaneAt(place.Out(dir.Mul((float64(i)+h)*cube)), place.OutDir(dir))
				approx(t, "section", areaOf(b.Section(pl), pl.N), want, 1e-2)
			}
			pl := PlaneAt(place.Out(dir.Mul(float64(i)*cube)), place.OutDir(dir.Neg()))
			approx(t, "section facing back", areaOf(b.Section(pl), pl.N), want, 1e-2)
		}
	}
}

func areaOf(loops [][]vec.V, n vec.V) float64 {
	var a float64
	for _, l := range loops {
		a += area(l, n)
	}
	return a
}

// Random slanted cuts: the wood is, point by point, what lies in the blank and
// in no cut; the volume agrees with the share of such points to five standard
// deviations (a chance of 6e-7 each to fail when right); the surface encloses
// the volume; the section areas integrate to it.
func TestAgainstPoints(t *testing.T) {
	const points = 4000
	for seed := range uint64(60) {
		rnd := rand.New(rand.NewPCG(seed, 2))
		blank := timber(600, 150, 200)
		var cuts []Convex
		for range 1 + rnd.IntN(6) {
			place := randomPlace(rnd)
			place.O = at(rnd.Float64()*600, rnd.Float64()*150, rnd.Float64()*200)
			half := at(20+rnd.Float64()*100, 20+rnd.Float64()*60, 20+rnd.Float64()*60)
			cuts = append(cuts, block(half.Neg(), half).Moved(place))
		}
		b := NewBody(blank)
		for _, c := range cuts {
			b.Subtract(c, "j")
			if err := b.Valid(); err != nil {
				t.Fatalf("seed %d: %v", seed, err)
			}
		}
		in := 0
		for range points {
			p := at(rnd.Float64()*600, rnd.Float64()*150, rnd.Float64()*200)
			wood := true
			for _, c := range cuts {
				wood = wood && !c.Contains(p, 0)
			}
			if wood {
				in++
			}
			if wood != b.Contains(p, 0) {
				t.Errorf("seed %d: wood at %v: %v", seed, p, wood)
			}
		}
		v := b.Volume()
		share := v / blank.Volume()
		approx(t, "share", float64(in)/points, share, 5*math.Sqrt(share*(1-share)/points)+1e-12)
		approx(t, "volume by surface", surfaceVolume(b), v, 1e-6*v)
		if got := volumeBySections(b, at(1, 0.3, 0.2).Unit()); math.Abs(got-v) > 1e-6*v {
			t.Errorf("seed %d: sections integrate to %v, volume %v", seed, got, v)
		}
	}
}

// volumeBySections integrates section areas along dir: between two heights of
// corners the area is a quadratic, for which two-point Gauss quadrature is
// exact.
func volumeBySections(b *Body, dir vec.V) float64 {
	var hs []float64
	for _, p := range b.Boundary() {
		for _, l := range append(p.Holes, p.Outer) {
			for _, v := range l {
				hs = append(hs, dir.Dot(v))
			}
		}
	}
	hs = distinct(hs)
	var sum float64
	for i := 1; i < len(hs); i++ {
		mid, half := (hs[i]+hs[i-1])/2, (hs[i]-hs[i-1])/2
		for _, s := range [2]float64{-1, 1} {
			pl := Plane{dir, mid + s*half/math.Sqrt(3)}
			sum += half * areaOf(b.Section(pl), dir)
		}
	}
	return sum
}
