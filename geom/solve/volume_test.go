package solve_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"pegwright/geom"
	"pegwright/geom/solid"
	"pegwright/geom/vec"
	"pegwright/samples/trial"
)

// Volumes by throwing points, apart from the kernel: a point is wood when it
// lies behind the blank's planes, in no cut and in no bore taken as a true
// cylinder. Boxes that lie wholly in the wood or wholly out of it are counted
// whole; the rest are halved until they are small, and two points go into each
// of these. How far the sum may be off by chance follows from the sizes of the
// boxes alone: see off.

// wood reports whether a point in timber axes is wood.
func wood(tm *geom.Timber, p vec.V) bool {
	for _, f := range tm.Blank.Faces {
		if f.Plane.N.Dot(p) > f.Plane.D {
			return false
		}
	}
	for _, c := range tm.Cuts {
		in := true
		for _, f := range c.Solid.Faces {
			if f.Plane.N.Dot(p) > f.Plane.D {
				in = false
				break
			}
		}
		if in {
			return false
		}
	}
	for _, b := range tm.Bores {
		d := b.To.Sub(b.From)
		l := d.Len()
		w := p.Sub(b.From)
		h := w.Dot(d) / l
		if h >= 0 && h <= l && w.Dot(w)-h*h <= b.Diameter*b.Diameter/4 {
			return false
		}
	}
	return true
}

// thrower adds up a timber's wood.
type thrower struct {
	tm    *geom.Timber
	r     *rand.Rand
	least float64 // half size of the smallest boxes, mm
	vol   float64
	wide  float64 // sum of the squares of what single points count for, mm⁶
}

// planes tells how a box of centre c and half size h lies to a convex volume:
// wholly in it, wholly out of it, or neither.
func planes(faces []solid.Face, c, h vec.V) (in, out bool) {
	in = true
	for _, f := range faces {
		n := f.Plane.N
		r := math.Abs(n.X)*h.X + math.Abs(n.Y)*h.Y + math.Abs(n.Z)*h.Z
		d := n.Dot(c) - f.Plane.D
		if d >= r {
			return false, true
		}
		in = in && d <= -r
	}
	return in, false
}

// box counts the box; cuts and bores are those that may still touch it.
func (q *thrower) box(c, h vec.V, cuts []geom.Cut, bores []geom.Bore) {
	in, out := planes(q.tm.Blank.Faces, c, h)
	if out {
		return
	}
	whole := in
	var near []geom.Cut
	for _, k := range cuts {
		in, out := planes(k.Solid.Faces, c, h)
		if in {
			return
		}
		if !out {
			near = append(near, k)
		}
	}
	var holes []geom.Bore
	for _, b := range bores {
		d := b.To.Sub(b.From).Unit()
		w := c.Sub(b.From)
		if w.Sub(d.Mul(w.Dot(d))).Len() < b.Diameter/2+h.Len() {
			holes = append(holes, b)
		}
	}
	size := 8 * h.X * h.Y * h.Z
	switch most := max(h.X, h.Y, h.Z); {
	case whole && len(near)+len(holes) == 0:
		q.vol += size
	case most <= q.least:
		q.throw(c, h, size)
	case h.X == most:
		q.halves(c, h, vec.V{X: h.X / 2}, near, holes)
	case h.Y == most:
		q.halves(c, h, vec.V{Y: h.Y / 2}, near, holes)
	default:
		q.halves(c, h, vec.V{Z: h.Z / 2}, near, holes)
	}
}

func (q *thrower) halves(c, h, by vec.V, cuts []geom.Cut, bores []geom.Bore) {
	q.box(c.Sub(by), h.Sub(by), cuts, bores)
	q.box(c.Add(by), h.Sub(by), cuts, bores)
}

func (q *thrower) throw(c, h vec.V, size float64) {
	got := 0
	for range 2 {
		at := func(c, h float64) float64 { return c + h*(2*q.r.Float64()-1) }
		if wood(q.tm, vec.V{X: at(c.X, h.X), Y: at(c.Y, h.Y), Z: at(c.Z, h.Z)}) {
			got++
		}
	}
	q.vol += size * float64(got) / 2
	q.wide += 2 * (size / 2) * (size / 2)
}

// off is how far a sum of points may be off, in mm³: it lies farther from the
// true volume in at most one throw of ten thousand (99.99 %). By Hoeffding's
// inequality (1963) a sum of independent terms, the i-th within a range w_i,
// is off by more than t with a chance of at most 2·exp(-2t²/Σw_i²), however the
// terms are distributed.
func (q *thrower) off() float64 { return math.Sqrt(q.wide * math.Log(2/1e-4) / 2) }

// thrown returns the volume of a timber's wood and how far it may be off.
func thrown(tm *geom.Timber, least float64, seed uint64) (vol, off float64) {
	q := &thrower{tm: tm, r: rand.New(rand.NewPCG(seed, 3)), least: least}
	lo, hi := tm.Blank.Bounds()
	q.box(lo.Lerp(hi, 0.5), hi.Sub(lo).Mul(0.5), tm.Cuts, tm.Bores)
	return q.vol, q.off()
}

// fails reports whether a volume differs by more than chance allows.
func fails(got, vol, off float64) bool { return math.Abs(got-vol) > off+1e-9*vol }

// fine is the half size of the smallest boxes, mm: a bore too few is then more
// than chance allows.
const fine = 1.5

func TestNetVolumes(t *testing.T) {
	trial.EachSample(t, func(t *testing.T, f *geom.Frame) {
		seen := map[int64]bool{}
		roles := map[string]bool{}
		for i, tm := range f.Timbers {
			if !long() { // one timber of every other role
				if roles[tm.Role] {
					continue
				}
				roles[tm.Role] = true
				if (len(roles)+len(f.Timbers))%2 > 0 && len(f.Timbers) > 2 {
					continue
				}
			}
			if key := int64(math.Round(tm.NetVolume)); seen[key] {
				continue // the same stick, or its mirror image
			} else {
				seen[key] = true
			}
			vol, off := thrown(tm, fine, uint64(i))
			if fails(tm.NetVolume, vol, off) {
				t.Errorf("%s: net volume %.0f mm³, by points %.0f ± %.0f", tm.ID, tm.NetVolume, vol, off)
			}
		}
	})
}

// One bore, or one mortise, left out of the points must be found: the test
// above can see faults of that size.
func TestNetVolumeFaultsAreSeen(t *testing.T) {
	trial.EachSample(t, func(t *testing.T, f *geom.Frame) {
		bores, mortises, most := 0, 0, 1
		if long() {
			most = 2
		}
		for i, tm := range f.Timbers {
			if tm.Role != "post" || bores >= most {
				continue
			}
			if len(tm.Bores) > 0 {
				bores++
				short := *tm
				short.Bores = tm.Bores[1:]
				if vol, off := thrown(&short, fine, uint64(i)); !fails(tm.NetVolume, vol, off) {
					t.Errorf("%s: a bore too few is not seen: %.0f, by points %.0f ± %.0f", tm.ID, tm.NetVolume, vol, off)
				}
			}
			for k, c := range tm.Cuts {
				if c.Name != "mortise" {
					continue
				}
				mortises++
				short := *tm
				short.Cuts = append(append([]geom.Cut{}, tm.Cuts[:k]...), tm.Cuts[k+1:]...)
				if vol, off := thrown(&short, fine, uint64(i)); !fails(tm.NetVolume, vol, off) {
					t.Errorf("%s: %s without its mortise is not seen", tm.ID, c.Joint)
				}
				break
			}
		}
		if bores == 0 || mortises == 0 {
			t.Errorf("tried %d bores and %d mortises", bores, mortises)
		}
	})
}

// The throwing itself is held to a volume known in closed form: a stick with a
// notch, a hole through it and a wedge off its end.
func TestThrownVolumeIsRight(t *testing.T) {
	tm := &geom.Timber{Length: 1000, Section: [2]float64{150, 160}, Blank: geom.BlankOf(1000, [2]float64{150, 160}, [2]float64{150, 160})}
	wedge := solid.Box(vec.V{X: 800, Y: -10, Z: -10}, vec.V{X: 1010, Y: 160, Z: 170}).Clip(solid.PlaneAt(vec.V{X: 1000}, vec.V{X: -160, Z: -100}), "")
	tm.Cuts = []geom.Cut{{Solid: solid.Box(vec.V{X: 200, Y: -10, Z: 120}, vec.V{X: 300, Y: 160, Z: 170})}, {Solid: wedge}}
	tm.Bores = []geom.Bore{{From: vec.V{X: 500, Y: -8, Z: 60}, To: vec.V{X: 500, Y: 158, Z: 60}, Diameter: 25}}
	// The wedge's plane runs from x = 1000 at z = 0 to x = 900 at z = 160.
	want := 1000*150*160 - 100*150*40 - math.Pi*25*25/4*150 - 100*160/2*150
	vol, off := thrown(tm, fine, 1)
	if fails(want, vol, off) || off > 6000 {
		t.Errorf("by points %.0f ± %.0f, in closed form %.0f", vol, off, want)
	}
}
