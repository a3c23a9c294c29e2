package joint

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"pegwright/draw/scene"
	"pegwright/geom"
	"pegwright/geom/solid"
	"pegwright/geom/vec"
	"pegwright/samples"
	"pegwright/samples/trial"
)

// A cutter can strike a plane when it is fixed by what is printed. The rule is
// plain linear algebra over the cut solids and knows no joint kind: a plane
// whose height is printed is one linear equation of the points in it, and a
// distance is known when it is a combination of such equations.
//
// What is there to begin with: the blank's faces and its ideal ones, its two
// ends, and the stations from the start end. A dimension carries the plane
// through one of its points to the plane through the other. A plane is fixed
// when its direction is square to an axis of either timber, whose angle the
// sheet gives, and one of its points is known square to it, or when two of its
// lines or three of its points are known.
type struck struct {
	t      *geom.Timber
	known  []solid.Plane
	dirs   []vec.V
	points []vec.V
}

const struckTol = 0.02 // mm

func strike(j *geom.Joint, t *geom.Timber, dims []geom.Dim) *struck {
	k := &struck{t: t}
	for n := 1; n <= 4; n++ {
		k.know(t.BlankPlane(n))
		k.know(t.IdealPlane(n))
	}
	k.station(0)
	k.station(t.Length)
	for _, s := range stations(j, t == j.Into) {
		k.station(s.x)
	}
	in := t.Place.InDir
	k.dirs = []vec.V{{X: 1}, {Y: 1}, {Z: 1}, in(j.Axes.U), in(j.Axes.V), in(j.Axes.W)}
	for _, p := range []vec.Placement{j.Into.Place, j.Of.Place} {
		k.dirs = append(k.dirs, in(p.X), in(p.Y), in(p.Z))
	}
	for _, f := range k.faces(j) {
		k.points = append(k.points, f.Outer...)
	}
	for _, d := range dims {
		k.points = append(k.points, d.From, d.To)
	}
	for {
		n := len(k.known)
		for _, d := range dims {
			a, b := solid.PlaneAt(d.From, d.Axis), solid.PlaneAt(d.To, d.Axis)
			if k.determined(a.N, d.From) || k.determined(b.N, d.To) {
				k.know(a)
				k.know(b)
			}
		}
		for _, f := range k.faces(j) {
			if k.fixed(f) {
				k.know(f.Plane)
			}
		}
		if len(k.known) == n {
			return k
		}
	}
}

// faces returns the faces that the joint cuts on the timber.
func (k *struck) faces(j *geom.Joint) []solid.Polygon {
	var out []solid.Polygon
	for _, f := range k.t.Net.Boundary() {
		for _, g := range f.Tags {
			if g.Joint == j.ID && g.Role != "" {
				out = append(out, f)
				break
			}
		}
	}
	return out
}

func (k *struck) station(x float64) { k.know(solid.Plane{N: vec.V{X: 1}, D: x}) }

func (k *struck) know(p solid.Plane) {
	if !k.has(p) {
		k.known = append(k.known, p)
	}
}

func (k *struck) has(p solid.Plane) bool {
	for _, q := range k.known {
		if c := p.N.Dot(q.N); math.Abs(c) > 1-1e-9 && math.Abs(p.D-q.D*c) < struckTol {
			return true
		}
	}
	return false
}

// determined reports whether the height of p in direction n follows from the
// known planes through p.
func (k *struck) determined(n, p vec.V) bool {
	rest := n
	var base []vec.V // orthonormal
	for _, q := range k.known {
		if math.Abs(q.Height(p)) > struckTol {
			continue
		}
		v := q.N
		for _, b := range base {
			v = v.Sub(b.Mul(b.Dot(v)))
		}
		if v.Len() > 1e-3 {
			v = v.Unit()
			base = append(base, v)
			rest = rest.Sub(v.Mul(v.Dot(rest)))
		}
	}
	return rest.Len() < 1e-6
}

// fixed reports whether a face can be struck.
func (k *struck) fixed(f solid.Polygon) bool {
	n := f.Plane.N
	if k.has(f.Plane) {
		return true
	}
	var on []vec.V
	for _, p := range k.points {
		if math.Abs(f.Plane.Height(p)) < struckTol {
			on = append(on, p)
		}
	}
	for _, d := range k.dirs {
		if math.Abs(d.Dot(n)) > 1-1e-9 {
			for _, p := range on {
				if k.determined(n, p) {
					return true
				}
			}
		}
	}
	for _, e := range k.dirs {
		if math.Abs(e.Dot(n)) > 1e-9 {
			continue
		}
		across := n.Cross(e) // in the plane, square to e
		var first *vec.V
		for _, p := range on {
			if !k.determined(n, p) || !k.determined(across, p) {
				continue
			}
			if first == nil {
				first = &p
			} else if math.Abs(across.Dot(p.Sub(*first))) > 1 {
				return true
			}
		}
	}
	return false
}

// bored reports whether the axis of a bore, whose direction is known, is fixed
// by some point of it, and so is the bottom of a blind one.
func (k *struck) bored(b geom.Bore) bool {
	d := b.To.Sub(b.From).Unit()
	face := k.t.BlankPlane(b.Entry)
	on := []vec.V{b.From.Sub(d.Mul(face.Height(b.From) / face.N.Dot(d)))}
	for _, p := range k.points {
		if p.Sub(b.From).Cross(d).Len() < struckTol {
			on = append(on, p)
		}
	}
	u := d.Cross(vec.V{X: 1})
	if u.Len() < 0.1 {
		u = d.Cross(vec.V{Y: 1})
	}
	u = u.Unit()
	for _, p := range on {
		if k.determined(u, p) && k.determined(d.Cross(u), p) {
			return b.Exit != 0 || k.determined(d, b.To)
		}
	}
	return false
}

// missing lists what of the joint cannot be struck on a timber from dims.
func missing(j *geom.Joint, t *geom.Timber, dims []geom.Dim) []string {
	var own []geom.Dim
	for _, d := range dims {
		if d.Timber == t {
			own = append(own, d)
		}
	}
	k := strike(j, t, own)
	var out []string
	for _, f := range k.faces(j) {
		if !k.fixed(f) {
			out = append(out, fmt.Sprintf("%s: face %v of %s", t.ID, f.Tags, point(f)))
		}
	}
	for _, b := range t.Bores {
		if b.Joint == j.ID && !k.bored(b) {
			out = append(out, t.ID+": bore "+b.Peg)
		}
	}
	return out
}

func point(f solid.Polygon) string {
	return fmt.Sprintf("normal %.3f %.3f %.3f at %.2f", f.Plane.N.X, f.Plane.N.Y, f.Plane.N.Z, f.Plane.D)
}

// Every face that a joint cuts on either timber, and every hole, is fixed by
// the numbers of the joint's sheets: in the samples, in frames that show what no
// sample does, and in frames drawn by lot.
func TestEveryCutCanBeStruck(t *testing.T) {
	for _, name := range samples.Names() {
		everyCut(t, name, trial.Sample(t, name))
	}
	trial.EachOther(t, func(t *testing.T, f *geom.Frame) { everyCut(t, t.Name(), f) })
	n, drawn := trial.Count(6), 0
	for i := range n {
		src := trial.Building(rand.New(rand.NewPCG(uint64(i), 11)))
		f, faults := trial.Solve("random", src)
		if faults.Err() != nil || f == nil {
			continue // such a frame cannot be, and says so
		}
		drawn++
		everyCut(t, fmt.Sprint("frame ", i), f)
	}
	if 2*drawn < n {
		t.Errorf("only %d of %d frames could be solved", drawn, n)
	}
}

func everyCut(t *testing.T, name string, f *geom.Frame) {
	t.Helper()
	for _, g := range scene.Groups(f) {
		j := g.First()
		for _, m := range append(missing(j, j.Into, j.Dims), missing(j, j.Of, j.Dims)...) {
			t.Errorf("%s, %s, %s: %s", name, j.Kind, j.ID, m)
		}
	}
}

// The rule above can fail: without one of these dimensions, wherever it stands,
// some face or hole of its timber is left unfixed. (The others can be had in a
// second way as well, such as a tenon's width from what is held back.)
func TestDroppedDimensionIsMissed(t *testing.T) {
	found := map[string]bool{
		"mortise width": false, "mortise depth below bearing": false, "tenon thickness": false,
		"tenon from reference face": false, "housing width": false, "reduced past the shoulder": false,
		"slot width": false, "tongue from reference face": false, "throat to hole along the stick": false,
		"underside reduced past the seat": false, "notch along the stick": false, "outer face to hole": false,
		"rafter's reference side to hole": false, "housing below the open face": false, "pocket into the side": false,
		"mortise height, far side": false, "depth of the scarf": false, "height of the butt": false, "notch depth below face": false,
	}
	for _, name := range samples.Names() {
		for _, j := range trial.Sample(t, name).Joints {
			for i, d := range j.Dims {
				if said, listed := found[d.Label]; !listed || said {
					continue
				}
				rest := append(append([]geom.Dim(nil), j.Dims[:i]...), j.Dims[i+1:]...)
				found[d.Label] = len(missing(j, d.Timber, rest)) > 0
			}
		}
	}
	for label, missed := range found {
		if !missed {
			t.Errorf("nothing is missed without %q", label)
		}
	}
}
