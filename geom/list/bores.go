package list

import (
	"fmt"
	"math"
	"sort"
	"strconv"

	"pegwright/geom"
	"pegwright/geom/vec"
)

// Where says where a bore starts on a timber, as a borer lays it out.
type Where struct {
	Along  float64 // mm from the start end to the centre on the entry face
	Across float64 // mm from the reference arris that the entry face has
	Arris  string  // that arris, by its two faces, such as "1/2"
	Depth  float64 // mm of wood the bit passes along its axis, cuts not counted
	Lean   float64 // degrees between the axis and the square to the face
}

// Locate returns the layout of a bore of timber t. The bore starts where its
// axis meets the blank's entry face; a through bore ends at the exit face, a
// blind one at its bottom. Across is measured from the reference face that
// stands square to the entry face: face 2 for faces 1 and 3, face 1 for faces
// 2 and 4.
func Locate(t *geom.Timber, b geom.Bore) Where {
	var w Where
	from, to := b.From, b.To
	axis := to.Sub(from).Unit()
	if b.Entry >= 1 && b.Entry <= 4 {
		from = meet(t, b.Entry, from, axis)
		out := t.BlankPlane(b.Entry).N
		w.Lean = math.Acos(min(1, math.Abs(out.Dot(axis)))) * 180 / math.Pi
	}
	if b.Exit >= 1 && b.Exit <= 4 {
		to = meet(t, b.Exit, to, axis)
	}
	w.Along, w.Depth = from.X, from.Dist(to)
	switch b.Entry {
	case 1, 3:
		w.Across, w.Arris = from.Z, fmt.Sprintf("%d/2", b.Entry)
	case 2, 4:
		w.Across, w.Arris = from.Y, fmt.Sprintf("1/%d", b.Entry)
	default:
		w.Across, w.Arris = from.Y, "from face 1"
	}
	if b.Entry == 3 {
		w.Arris = "2/3"
	}
	return w
}

// meet returns where the line through p along axis meets face n of the blank,
// or p where it runs along the face.
func meet(t *geom.Timber, n int, p, axis vec.V) vec.V {
	pl := t.BlankPlane(n)
	slope := pl.N.Dot(axis)
	if math.Abs(slope) < 1e-9 {
		return p
	}
	return p.Add(axis.Mul(-pl.Height(p) / slope))
}

// Bores returns every bore, timber by timber in frame order, and within a
// timber face by face from the start end, numbered in that order. A drawn tenon's
// bore says how far and which way it is offset from the mortise's; the note of a
// bore of a stopped joint forbids it, and no offset is told.
func Bores(f *geom.Frame, stopped map[string]int) Table {
	length := lengthUnit(f.Units)
	t := Table{Name: "bores", Title: "Bores", Units: f.Units, Columns: []Column{
		{Name: "timber", Own: true},
		{Name: "no.", kind: count},
		{Name: "entry face"},
		{Name: "from start end", Unit: length, kind: fine},
		{Name: "off arris", Unit: length, kind: fine},
		{Name: "arris"},
		{Name: "bore Ø", Unit: length, kind: fine},
		{Name: "bore", Spare: true},
		{Name: "in"},
		{Name: "depth", Unit: length, kind: fine},
		{Name: "first side", Unit: length, kind: fine},
		{Name: "wander per 1°", Unit: length, kind: fine, Spare: true},
		{Name: "lean", Unit: "°", kind: amount},
		{Name: "exit face"},
		{Name: "mark", Own: true},
		{Name: "joint", Spare: true, Own: true},
		{Name: "offset", Unit: length, kind: fine},
		{Name: "which way"},
		{Name: "note"},
	}}
	marks := map[string]string{}
	for _, j := range f.Joints {
		marks[j.ID] = j.Mark
	}
	n, forbidden, lean := 0, 0, 0.0
	for _, s := range f.Timbers {
		for i, b := range byFace(s) {
			w, h, note := Locate(s, b), holeOf(f, s, b), ""
			if h.thickness > 0 {
				w.Depth = h.thickness
			}
			if x := stopped[b.Joint]; x > 0 {
				h.offset, h.way, note = nil, "", stopNote(x)
				forbidden++
			}
			t.add(s.ID, i+1, entryTitle(s, b), w.Along, w.Across, w.Arris, b.Diameter,
				through(b), h.in, w.Depth, firstSide(b, w.Depth, f.Offer.LeadScrew), Wander(w.Depth), w.Lean, exitNumber(b), marks[b.Joint], b.Joint, h.offset, h.way, note)
			n, lean = n+1, max(lean, w.Lean)
		}
	}
	t.Totals = boreTotals(n, forbidden)
	if lean < square {
		t.spare("lean")
		t.Totals = append(t.Totals, "every bore stands square to its entry face")
	}
	return t
}

// square is the lean under which a bore counts as square to its face, degrees:
// less than the list shows.
const square = 0.05

func boreTotals(n, forbidden int) []string {
	all := plural(n, "bore")
	if forbidden > 0 {
		all += ", of which " + grouped(forbidden) + " NOT to be bored until the finding named is mended"
	}
	return []string{
		all,
		"off arris is measured on the entry face from the arris named, depth along the bit from that face",
		"bore a through hole from the entry face to the depth under first side, when the lead screw shows, and finish from the other face; bored through from one side, a bit that leans one degree comes out of place by depth / 57; exit face none is a blind hole",
		"in a tenon the depth is the tenon's thickness: it is bored from the cheek on the side of the entry face",
		"offset and which way: how far the tenon's hole is set off from the mortise's, toward the shoulder or, in a brace, back up it; the places given have it in them already: do not set off again",
	}
}

// firstSide returns how deep a through bore goes from its entry face until the
// lead screw shows on the far one, mm; nil for a blind bore and for wood no
// thicker than the screw is long.
func firstSide(b geom.Bore, depth, screw float64) any {
	if b.Exit == 0 || depth <= screw {
		return nil
	}
	return depth - screw
}

// Wander returns how far from its place a bit comes out of wood of the given
// thickness, mm, for each degree that it leans: thickness x tan 1°.
func Wander(thickness float64) float64 { return thickness * math.Tan(math.Pi/180) }

func through(b geom.Bore) string {
	if b.Exit == 0 {
		return "blind"
	}
	return "through"
}

func entryTitle(t *geom.Timber, b geom.Bore) string {
	if b.Entry < 1 || b.Entry > 4 {
		return "cut surface"
	}
	return t.FaceTitle(b.Entry)
}

// exitNumber is the number alone: the words of the opposite face would cost the
// list its width on a sheet.
func exitNumber(b geom.Bore) string {
	if b.Exit < 1 || b.Exit > 4 {
		return "none"
	}
	return strconv.Itoa(b.Exit)
}

// byFace returns the bores of a timber by entry face, then along it, then
// across it.
func byFace(t *geom.Timber) []geom.Bore {
	r := append([]geom.Bore(nil), t.Bores...)
	sort.SliceStable(r, func(i, j int) bool {
		if r[i].Entry != r[j].Entry {
			return r[i].Entry < r[j].Entry
		}
		a, b := Locate(t, r[i]), Locate(t, r[j])
		if !near(a.Along, b.Along) {
			return a.Along < b.Along
		}
		return a.Across < b.Across
	})
	return r
}
