package setout

import (
	"math"
	"slices"
	"strings"

	"pegwright/geom"
	"pegwright/geom/vec"
)

// Row is timbers that lie side by side, and where they are set out.
type Row struct {
	// Name is what they are called, and Faces which of their faces are meant, ""
	// where these are their reference faces.
	Name, Faces string
	// At are the places of the faces along an axis, frame mm, in order.
	At []float64
	// Wide is the size of a stick along the axis, mm.
	Wide float64
}

// spaced are the roles of which many lie side by side, all laid out by like faces.
// Others face each other, and are set out by their reference faces.
var spaced = [...]string{"rafter", "joist", "purlin"}

// Rows puts timbers that lie square to an axis into rows by what they are called,
// each place once. Rows that step alike are one.
func Rows(timbers []*geom.Timber, axis vec.V) []Row {
	var out []Row
	for _, list := range byName(timbers, axis) {
		r := rowOf(list, axis)
		i := slices.IndexFunc(out, func(o Row) bool { return o.Faces == r.Faces && stepsAlike(o.At, r.At) })
		switch {
		case i < 0:
			out = append(out, r)
		case !slices.Contains(strings.Split(out[i].Name, ", "), r.Name):
			out[i].Name += ", " + r.Name
		}
	}
	return out
}

// byName groups the timbers that lie square to an axis by what they are called; by
// role where no other is called so. Rafters of two slopes are apart.
func byName(timbers []*geom.Timber, axis vec.V) [][]*geom.Timber {
	key := func(t *geom.Timber) string { return Called(t) + slopeOf(t) }
	count := map[string]int{}
	for _, t := range timbers {
		count[key(t)]++
	}
	at := map[string]int{}
	var out [][]*geom.Timber
	for _, t := range timbers {
		if math.Abs(t.Place.X.Dot(axis)) > 1e-6 {
			continue
		}
		k := key(t)
		if count[k] == 1 {
			k = t.Role
		}
		if _, ok := at[k]; !ok {
			at[k], out = len(out), append(out, nil)
		}
		out[at[k]] = append(out[at[k]], t)
	}
	return out
}

// slopeOf tells rafters of one side of a roof from those of the other.
func slopeOf(t *geom.Timber) string {
	switch s := t.Place.X.Z * (t.Place.X.X + t.Place.X.Y); {
	case math.Abs(t.Place.X.Z) > 1-1e-6 || math.Abs(s) < 1e-9:
		return ""
	case s > 0:
		return " up"
	}
	return " down"
}

// rowOf sets timbers out along an axis.
func rowOf(list []*geom.Timber, axis vec.V) Row {
	r := Row{Name: several(list)}
	after := 0
	for _, t := range list {
		if n := faceAlong(t, axis); n > 0 && outOf(t, n).Dot(axis) > 0 {
			after++
		}
	}
	like := slices.Contains(spaced[:], list[0].Role)
	side := -1.0
	if 2*after > len(list) {
		side = 1
	}
	arris := false
	for _, t := range list {
		n := faceAlong(t, axis)
		if n == 0 {
			arris = true
			r.At = append(r.At, t.Place.O.Dot(axis))
			continue
		}
		at, _ := Reference(t, axis)
		r.Wide = t.Section[n-1]
		if way := outOf(t, n).Dot(axis); like && way*side < 0 {
			at -= way * r.Wide
		}
		r.At = append(r.At, at)
	}
	r.At = apart(r.At)
	switch {
	case arris:
		r.Faces = "reference arrises"
	case like:
		r.Faces = wordAlong(axis.Mul(side)) + " faces"
	}
	return r
}

// faceAlong returns the reference face of a timber that is square to an axis, 0 for
// none.
func faceAlong(t *geom.Timber, axis vec.V) int {
	for n := 1; n <= 2; n++ {
		if math.Abs(outOf(t, n).Dot(axis)) > 1-1e-9 {
			return n
		}
	}
	return 0
}

func outOf(t *geom.Timber, n int) vec.V { return t.Place.OutDir(t.IdealPlane(n).N) }

// wordAlong names a direction along the building or across it.
func wordAlong(d vec.V) string {
	switch {
	case d.X > 0.5:
		return "east"
	case d.X < -0.5:
		return "west"
	case d.Y > 0.5:
		return "north"
	}
	return "south"
}

// apart returns places in order, each once.
func apart(at []float64) []float64 {
	slices.Sort(at)
	return slices.CompactFunc(at, func(a, b float64) bool { return math.Abs(b-a) < 1 })
}

func stepsAlike(a, b []float64) bool {
	if len(a) != len(b) || len(a) < 2 {
		return false
	}
	for i := range a {
		if math.Abs((a[i]-a[0])-(b[i]-b[0])) > 0.1 {
			return false
		}
	}
	return true
}

// Called returns what a timber is called for short: its id as far as a number or a
// quarter of the sky.
func Called(t *geom.Timber) string {
	words := strings.Split(t.ID, "-")
	n := slices.IndexFunc(words, func(w string) bool {
		return w != "" && w[0] >= '0' && w[0] <= '9' || slices.Contains([]string{"south", "north", "west", "east", "middle"}, w)
	})
	if n > 0 {
		words = words[:n]
	}
	return strings.Join(words, "-")
}

// several names timbers in the plural.
func several(list []*geom.Timber) string {
	name := Called(list[0])
	for _, t := range list {
		if Called(t) != name {
			name = t.Role
		}
	}
	switch {
	case len(list) == 1:
		return name
	case strings.HasSuffix(name, "s"):
		return name + "es"
	}
	return name + "s"
}

// Chain returns the dimensions between the places of the row, equal ones that follow
// each other at once, and from the nearest lines outside it where these are not at
// the row's own sticks. The longest says what is measured.
func (r Row) Chain(lines []Line) []Stretch {
	if len(r.At) == 0 {
		return nil
	}
	at := slices.Clone(r.At)
	lo, hi := math.Inf(-1), math.Inf(1)
	for _, l := range lines {
		if l.At < at[0] {
			lo = max(lo, l.At)
		}
		if l.At > at[len(at)-1] {
			hi = min(hi, l.At)
		}
	}
	if near := r.Wide + 1; at[0]-lo > near && !math.IsInf(lo, 0) {
		at = append([]float64{lo}, at...)
	}
	if near := r.Wide + 1; hi-r.At[len(r.At)-1] > near && !math.IsInf(hi, 0) {
		at = append(at, hi)
	}
	return Named(EqualSteps(at), r.Name)
}
