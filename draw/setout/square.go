package setout

import (
	"cmp"
	"math"
	"slices"

	"pegwright/draw/scene"
	"pegwright/geom"
	"pegwright/geom/vec"
)

// The diagonals that a crew tapes to check square: a bent or a bay is square
// when the two of a pair agree. Their ends are points that a tape reaches:
// reference arrises where a shoulder line is squared round them, or corners
// where reference planes meet.

// BentDiagonals returns the two diagonals of a bent between its posts: from the
// shoulder at each foot to the line that the tie bears on at the other post, or
// to the shoulder at the other post's top where no tie runs between two posts.
func BentDiagonals(f *geom.Frame, n int) []Diagonal {
	type post struct {
		t    *geom.Timber
		line float64
		tie  string
	}
	var posts []post
	for _, j := range f.Joints {
		if j.Into.Role != "post" || j.Into.Bent != n || j.Of.Role != "tie" {
			continue
		}
		posts = append(posts, post{j.Into, scene.MainLine(j), j.Of.ID})
	}
	if len(posts) != 2 {
		return topDiagonals(f, n)
	}
	var out []Diagonal
	for i := range posts {
		a, b := posts[i], posts[1-i]
		foot, at := footOf(f, a.t)
		out = append(out, Diagonal{a.t.Place.Out(vec.V{X: at}), b.t.Place.Out(vec.V{X: b.line}),
			a.t.ID + ", " + foot, b.t.ID + ", " + b.tie + "'s bearing line"})
	}
	return out
}

// topDiagonals returns the diagonals between the outermost posts of a bent that
// stand in the walls, from foot to top.
func topDiagonals(f *geom.Frame, n int) []Diagonal {
	var posts []*geom.Timber
	for _, t := range f.Timbers {
		if t.Role == "post" && t.Bent == n && t.Wall != "" {
			posts = append(posts, t)
		}
	}
	if len(posts) < 2 {
		return nil
	}
	slices.SortStableFunc(posts, func(a, b *geom.Timber) int { return cmp.Compare(a.Place.O.Y, b.Place.O.Y) })
	return crossed(f, posts[0], posts[len(posts)-1])
}

// crossed returns the two diagonals between two posts: from the shoulder at each
// foot to the shoulder at the other's top.
func crossed(f *geom.Frame, a, b *geom.Timber) []Diagonal {
	var out []Diagonal
	for _, pair := range [][2]*geom.Timber{{a, b}, {b, a}} {
		from, to := pair[0], pair[1]
		foot, low := footOf(f, from)
		top, high := topOf(f, to)
		out = append(out, Diagonal{from.Place.Out(vec.V{X: low}), to.Place.Out(vec.V{X: high}), from.ID + ", " + foot, to.ID + ", " + top})
	}
	return out
}

// topOf returns where a post's top lies along it: at the shoulder of its tenon,
// or at its end.
func topOf(f *geom.Frame, t *geom.Timber) (string, float64) {
	for _, j := range f.JointsOf(t) {
		if x, ok := shoulderOf(j); ok && j.Of == t && j.OfEnd == geom.Finish {
			return "top shoulder", x
		}
	}
	return "top", t.Length
}

// footOf returns where a post's foot stands along it: at the shoulder of its
// tenon, or at its end.
func footOf(f *geom.Frame, t *geom.Timber) (string, float64) {
	for _, j := range f.JointsOf(t) {
		if j.Of == t && j.OfEnd == geom.Start {
			if x, ok := shoulderOf(j); ok {
				return "foot shoulder", x
			}
		}
	}
	return "foot", 0
}

// shoulderOf returns the place of the enterer's shoulder on its reference arris.
func shoulderOf(j *geom.Joint) (float64, bool) {
	for _, p := range j.Places {
		if p.On == j.Of && p.Label == "shoulder on the reference arris" {
			return p.X, true
		}
	}
	return 0, false
}

// WallDiagonals returns the diagonals of every bay of a wall: from the shoulder
// at each post's foot to the shoulder under the plate at the next post.
func WallDiagonals(f *geom.Frame, named []*geom.Timber) []Diagonal {
	var posts []*geom.Timber
	for _, t := range named {
		if t.Role == "post" && t.Bent > 0 {
			posts = append(posts, t)
		}
	}
	slices.SortStableFunc(posts, func(a, b *geom.Timber) int { return cmp.Compare(a.Place.O.X, b.Place.O.X) })
	var out []Diagonal
	for i := 1; i < len(posts); i++ {
		out = append(out, crossed(f, posts[i-1], posts[i])...)
	}
	return out
}

// LeanToDiagonals returns the diagonals between the outermost of the bents' lines
// and, of every lean-to, its own line and the nearest wall's.
func LeanToDiagonals(f *geom.Frame, xs []Line, z float64, where string) []Diagonal {
	walls := WallLines(f)
	var out []Diagonal
	for _, l := range LeanToLines(f) {
		near := walls[0]
		if l.At > walls[1].At {
			near = walls[1]
		}
		out = append(out, PlanDiagonals(xs, []Line{near, l}, z, where)...)
	}
	return out
}

// PlanDiagonals returns the diagonals between the outermost grid lines.
func PlanDiagonals(xs, ys []Line, z float64, where string) []Diagonal {
	a, b := xs[0], xs[len(xs)-1]
	c, d := ys[0], ys[len(ys)-1]
	corner := func(x, y Line) (vec.V, string) {
		return vec.V{X: x.At, Y: y.At, Z: z}, y.Name + x.Name
	}
	var out []Diagonal
	for _, p := range [][4]Line{{a, c, b, d}, {a, d, b, c}} {
		u, nu := corner(p[0], p[1])
		w, nw := corner(p[2], p[3])
		out = append(out, Diagonal{u, w, where + " " + nu, nw})
	}
	return out
}

// Length is the length that the tape reads.
func (d Diagonal) Length() float64 { return math.Abs(d.B.Sub(d.A).Len()) }

// Diagonal is what a crew tapes to check square, from one named point to
// another.
type Diagonal struct {
	A, B         vec.V  // its ends, frame axes
	NameA, NameB string // what lies there: a timber and a line on it, or a corner
}
