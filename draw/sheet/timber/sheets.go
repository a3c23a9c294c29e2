package timber

import (
	"fmt"
	"math"

	"pegwright/draw"
	"pegwright/draw/block"
	"pegwright/draw/dim"
	"pegwright/draw/font"
	"pegwright/draw/page"
	"pegwright/draw/scene"
	"pegwright/geom"
	"pegwright/geom/measure"
)

// Sheets returns the sheets of sticks that are cut alike: the four faces
// unrolled, on as many sheets as the length takes, then the table of cuts with
// both ends, under the last faces where these leave it room. Where a stop
// finding names one of their joints every sheet says so.
func Sheets(f *geom.Frame, g scene.Sticks, stops map[string]int) []*draw.Sheet {
	t := g.First()
	v := newStickView(f, g)
	var out []*draw.Sheet
	n := len(v.strips) * len(v.rows)
	for i, s := range v.strips {
		for r, faces := range v.rows {
			page := i*len(v.rows) + r + 1
			out = append(out, v.sheet(s, faces, page, n))
		}
	}
	if !v.tabled {
		out = append(out, v.cutSheets()...)
	}
	g.Warn(f, stops, out...)
	for i, s := range out {
		s.ID = "timber-" + t.ID
		if i > 0 {
			s.ID = fmt.Sprintf("timber-%s-%d", t.ID, i+1)
		}
	}
	return out
}

// stickView is how the faces of a timber are put on sheets.
type stickView struct {
	f      *geom.Frame
	g      scene.Sticks
	t      *geom.Timber
	feats  []feature
	texts  [][]string     // of every feature, as figures has them
	group  dim.Group      // of all labels
	across [5]float64     // width of every face
	busy   []scene.Span   // stretches that are drawn, see busy
	items  [5][]draw.Item // lines of every face at full size, see faceCamera
	places []float64      // of the running dimension
	k      float64        // scale
	scale  string
	rows   [][]int // faces of the sheets that show one stretch of length
	strips []strip
	foot   float64
	table  *cutTable
	tabled bool // the table stands under the faces of the last sheet
}

// Room on a sheet of faces, paper mm.
const (
	faceWords = 23.0 // column with the words of the faces, left
	faceLane  = 6.3  // lane of labels over a face
	faceGap   = 4.0  // gap over a face without labels
	footLine  = 4.6  // from the lowest face to the line of the running dimension
	markStep  = 1.45*dim.Text + 0.5
	tableGap  = 7.0 // from the running dimension to a table under it

	tableScale = 5 // for a table under the faces they are made no smaller than 1:5
)

// newStickView chooses scale and arrangement: the fewest sheets, all four faces
// together before two and two, then the larger scale; a scale under 1:6 only for
// a stick that no larger one holds.
func newStickView(f *geom.Frame, g scene.Sticks) *stickView {
	v := &stickView{f: f, g: g, t: g.First()}
	v.feats = features(f, v.t)
	v.labelled()
	v.busy = busy(v.t)
	for n := 1; n <= 4; n++ {
		v.across[n] = faceWidth(v.t, n)
	}
	v.places = v.stations()
	v.renderFaces()
	field := block.FieldFor(f)
	width := field.W() - faceWords
	for _, x := range v.places {
		v.foot = max(v.foot, font.Measure(f.Units.PlainJoint(x), dim.Text, false))
	}
	v.foot += footLine + 5.6
	v.table = newCutTable(f, g, v.feats, field.W(), true)
	scales := stickScales(f.Units)
	large := 0
	for large < len(scales) && scales[large] <= 6 {
		large++
	}
	if !v.choose(scales[:large], width, field.H()) {
		v.choose(scales[large:], width, field.H())
	}
	return v
}

// choose settles scale and arrangement from the scales given and reports whether
// one of them serves.
func (v *stickView) choose(scales []float64, width, height float64) bool {
	best := math.MaxInt
	most := int(width / markStep)
	for _, rows := range [][][]int{{{1, 2, 3, 4}}, {{1, 2}, {3, 4}}, {{1}, {2}, {3}, {4}}} {
		for _, n := range scales {
			if v.height(rows[0], 1/n) > height || len(rows) > 1 && v.height(rows[1], 1/n) > height {
				continue
			}
			strips := v.lay(1/n, width, tornMargin, most)
			c := len(strips)*len(rows) + 1
			under := v.under(rows[len(rows)-1], 1/n, height)
			tabled := v.table.whole(under) <= under
			if tabled && n <= tableScale {
				c--
			}
			if c < best {
				best = c
				v.k, v.scale, v.rows, v.strips, v.tabled = 1/n, page.Scale(n), rows, strips, tabled
			}
		}
	}
	for _, m := range []float64{10, 14, 20, 30, 45} { // as much plain wood as there is room for
		if best == math.MaxInt {
			break
		}
		wider := v.lay(v.k, width, m, most)
		if len(wider) > len(v.strips) {
			break
		}
		v.strips = wider
	}
	return best < math.MaxInt
}

// lay is lay for the drawn timber and the places of its running dimension.
func (v *stickView) lay(k, width, margin float64, most int) []strip {
	return lay(v.t, v.busy, k, width, margin, v.places, most)
}

// stickScales are the scales at which timbers are customarily drawn, larger
// first.
func stickScales(u measure.Units) []float64 {
	if u == measure.Metric {
		return []float64{2, 2.5, 4, 5, 6, 8, 10, 15, 20, 30, 50, 100}
	}
	return []float64{2, 3, 4, 6, 8, 12, 16, 24, 32, 48, 96}
}

// lane is the room over a face: for its labels, or a gap where it has none.
func (v *stickView) lane(face int) float64 {
	for _, f := range v.feats {
		if f.face == face {
			return faceLane
		}
	}
	return faceGap
}

// height is what the given faces take on a sheet at scale k.
func (v *stickView) height(faces []int, k float64) float64 {
	h := v.foot
	for _, n := range faces {
		h += v.lane(n) + v.across[n]*k
	}
	return h
}

// fresh begins a sheet of faces.
func (v *stickView) fresh(what, scale string) (*draw.Sheet, block.Field) {
	u := v.f.Units
	title := block.TitleFor(v.f, "Timber"+what, v.g.Shows(), scale)
	rough := v.t.Length + 2*trimOf(u, v.t)
	title.Note = fmt.Sprintf("finished %s, rough %s; heavy line: reference arris; ...: see cuts", u.FormatJoint(v.t.Length), u.Format(rough))
	return block.ForFrame(v.f, "timber", "timber-"+v.t.ID, title)
}

// sheet draws the given faces over one stretch of length.
func (v *stickView) sheet(st strip, faces []int, n, of int) *draw.Sheet {
	what := ""
	if of > 1 {
		what = fmt.Sprintf(", faces, part %d of %d", n, of)
	}
	if v.tabled && n == of {
		return v.withTable(st, faces, what)
	}
	s, field := v.fresh(what, v.scale)
	v.draw(s, field, st, faces)
	return s
}

// withTable draws the given faces over one stretch of length, and the table of
// cuts under them.
func (v *stickView) withTable(st strip, faces []int, what string) *draw.Sheet {
	room := v.under(faces, v.k, block.FieldFor(v.f).H())
	band := v.table.band(room)
	s, field := v.fresh(what+", with its cuts in order", v.scale+", "+v.table.endsWords(band))
	foot := field
	foot.Y1 = foot.Y0 + v.table.whole(room)
	v.table.under(s, foot, band)
	field.Y0 = foot.Y1 + tableGap
	v.draw(s, field, st, faces)
	return s
}

// under is the height that the given faces leave for a table under them.
func (v *stickView) under(faces []int, k, height float64) float64 {
	return height - v.height(faces, k) - tableGap
}

// draw sets the given faces over one stretch of length in a field.
func (v *stickView) draw(s *draw.Sheet, field block.Field, st strip, faces []int) {
	p := &facePage{stickView: v, s: s, field: field, st: st, x0: field.X0 + faceWords}
	p.lanes = map[int]*lane{}
	for _, f := range faces {
		p.lanes[f] = p.laneOf(f)
	}
	left := openRows(p.lanes, faces, field.H()-v.height(faces, v.k))
	extra := min(left/float64(len(faces)), 6)
	y := field.Y1 - (left-extra*float64(len(faces)))/2
	for _, f := range faces {
		y -= v.lane(f) + p.lanes[f].extra() + extra
		p.rows = append(p.rows, faceRow{n: f, top: y})
		y -= v.across[f] * v.k
	}
	p.low = y
	p.running(faces)
	for _, r := range p.rows {
		p.face(r)
	}
	p.matchLines()
	p.balance()
	block.KeyView(s, block.Field{X0: field.X0, Y0: max(field.Y0, p.low-footLine-v.foot), X1: field.X0 + faceWords - 3, Y1: p.low - 3}, v.f, v.g.Dark())
}
