package sheet

import (
	"fmt"
	"slices"
	"strconv"

	"pegwright/draw"
	"pegwright/draw/block"
	"pegwright/draw/page"
	"pegwright/draw/scene"
	"pegwright/draw/setout"
	"pegwright/draw/view"
	"pegwright/geom"
	"pegwright/geom/finding"
	"pegwright/geom/list"
	"pegwright/geom/measure"
	"pegwright/geom/vec"
)

// Cover returns the cover and as many further sheets as its lists need: a picture
// of the frame and what it is, the findings with their numbers, the drawing list,
// general notes and cautions. The drawing list is asked for with the number of
// sheets of the cover; nil leaves it out.
func Cover(f *geom.Frame, finds []finding.Finding, drawn func(before int) []Entry) []*draw.Sheet {
	c := cover{f: f, finds: sorted(finds), stopped: list.Stopped(f, finds), picture: scene.TakePicture(view.IsometricFrom(-1, -1), scene.FrameParts(f), false)}
	if drawn == nil {
		return c.sheets(nil)
	}
	out := c.sheets(drawn(2))
	if n := len(out); n != 2 {
		out = c.sheets(drawn(n))
	}
	return out
}

// cover is a cover about to be set.
type cover struct {
	f       *geom.Frame
	finds   []finding.Finding
	stopped map[string]int // by finding, of joints
	picture scene.Picture
}

// pictureShares are the parts of the field's height that the picture may take, the
// largest first: the first with which the fewest sheets hold the cover is taken.
var pictureShares = [...]float64{0.72, 0.64, 0.56, 0.48, 0.4}

// sheets sets the cover: on one sheet where a large one holds it, else on two, the
// drawing list on the second. Where two do not hold it the notes begin a sheet of
// their own.
func (c cover) sheets(list []Entry) []*draw.Sheet {
	for n := 1; n <= 2; n++ {
		for _, share := range pictureShares {
			if w := c.all(share, list, n-1); len(w) == n {
				return w
			}
		}
	}
	return c.all(pictureShares[0], list, 2)
}

// all sets the cover with a picture of the given share. The drawing list comes on
// the first sheet only where before is 0, and the notes on a sheet after that many.
func (c cover) all(share float64, list []Entry, before int) []*draw.Sheet {
	w := c.first(share)
	if before > 0 && len(w.Sheets) == 1 {
		w.Turn()
	}
	drawings(w, list)
	if len(w.Sheets) == before {
		w.Turn()
	}
	notes(w, c.f)
	return w.Sheets
}

// first sets what the frame is beside its picture, and the findings under that.
func (c cover) first(share float64) *page.Flow {
	next := func(n int) (*draw.Sheet, block.Field) { return coverPage(c.f, n) }
	_, field := next(1)
	high := share * field.H()
	w := page.NewFlowUnder([]float64{0, high, high}, 3, next)
	c.picture.Fill(w.S, block.Field{X0: w.Column(1).X0, Y0: w.Field.Y1 - high + 4, X1: w.Field.X1, Y1: w.Field.Y1})
	said := page.Texts(slices.Concat(ofFrame(c.f, c.stopped), ofWood(c.f), setout.Criteria(c.f)))
	for _, x := range c.finds {
		said = append(said, told(x))
	}
	w.Together("frame and findings", append(said, c.f.InfoText("note"))...)
	w.Block("The frame", ofFrame(c.f, c.stopped))
	w.Block("Wood and weight", ofWood(c.f))
	w.From(1)
	criteria(w, c.f)
	listed(w, c.finds)
	return w
}

// coverPage begins the n-th sheet of the cover; the first carries the title
// large.
func coverPage(f *geom.Frame, n int) (*draw.Sheet, block.Field) {
	id := "cover"
	title := "Cover"
	if n > 1 {
		id, title = fmt.Sprintf("cover-%d", n), fmt.Sprintf("Cover, page %d", n)
	}
	t := block.TitleFor(f, title, "drawings for cutting, boring and raising", "none")
	t.Note = "reference faces are 1 and 2; see the general notes"
	s, field := block.ForFrame(f, "cover", id, t)
	s.Title = title
	if n > 1 {
		return s, field
	}
	h := 10.0
	name := block.Fit(f.Title, field.W(), 7, true)
	x := s.Text(vec.At(field.X0, field.Y1-h+1), 7, name)
	x.Bold = true
	y := field.Y1 - h - 3.5
	if p := f.InfoText("place"); p != "" {
		s.Text(vec.At(field.X0, y-2.5), 3.5, block.Fit(p, field.W(), 3.5, false))
		y -= 6.5
	}
	s.Line(draw.FrameLine, vec.At(field.X0, y), vec.At(field.X1, y))
	field.Y1 = y - 4
	return s, field
}

// criteria sets the design criteria and the note that the description gives.
func criteria(w *page.Flow, f *geom.Frame) {
	w.Heading("Design criteria as stated")
	if len(f.Criteria) == 0 {
		w.Item("", "None stated in the description. Loads, sizes and connections are for the owner and the owner's engineer to settle.")
	}
	w.Facts(setout.Criteria(f))
	if n := f.InfoText("note"); n != "" {
		w.Heading("Note")
		w.Item("", n)
	}
}

// ofFrame are the sizes of the frame and its counts.
func ofFrame(f *geom.Frame, stopped map[string]int) []page.Fact {
	var out []page.Fact
	say := func(name, value string) { out = append(out, page.Fact{Name: name, Value: value}) }
	x, y, z := setout.Overall(f, "")
	if name, fx, fy := setout.Footprint(f); name != "all timbers" {
		say("over the "+name, f.Units.Format(fx)+" x "+f.Units.Format(fy))
	}
	say("over all timbers", f.Units.Format(x)+" x "+f.Units.Format(y))
	say("height", f.Units.Format(z))
	out = append(out, levels(f)...)
	say("timbers", strconv.Itoa(len(f.Timbers)))
	say("joints", strconv.Itoa(len(f.Joints)))
	for _, p := range pegSizes(f, stopped) {
		out = append(out, page.Fact{Name: "pegs " + p.size, Value: p.count, Share: 0.57})
	}
	return out
}

// ofWood are what the timbers weigh and what they and the pegs are made of.
func ofWood(f *geom.Frame) []page.Fact {
	var green, dry, most float64
	heaviest := ""
	for _, t := range f.Timbers {
		g, d := t.Weight()
		green, dry = green+g, dry+d
		if g > most {
			most, heaviest = g, t.ID
		}
	}
	out := []page.Fact{
		{Name: "weight", Value: mass(f, green) + " as cut, " + mass(f, dry) + " in service"},
		{Name: "wood", Value: volume(f) + " nominal, with trim"},
	}
	if heaviest != "" {
		out = append(out, page.Fact{Name: "heaviest timber", Value: heaviest + ", " + mass(f, most) + " as cut"})
	}
	return append(out,
		page.Fact{Name: "timbers of", Value: fmt.Sprintf("%s, %s (%.0f %%)", f.Stock.Timber, f.Stock.Seasoning, f.Stock.Green)},
		page.Fact{Name: "pegs of", Value: fmt.Sprintf("%s, %s (%.0f %%)", f.Stock.Peg, f.Stock.PegDry, f.Stock.PegMC)},
		page.Fact{Name: "moisture", Value: fmt.Sprintf("%.0f %% in service", f.Stock.Service)})
}

// volume shows what the list of timbers sums: board feet, or cubic metres.
func volume(f *geom.Frame) string {
	if f.Units == measure.Metric {
		return fmt.Sprintf("%.2f m³", list.Wood(f))
	}
	return fmt.Sprintf("%.0f board feet", list.Wood(f))
}

const pound = 0.45359237 // kg, exact (NIST SP 811)

// mass shows a mass given in kilograms.
func mass(f *geom.Frame, kg float64) string {
	if f.Units == measure.Metric {
		return fmt.Sprintf("%.0f kg", kg)
	}
	return fmt.Sprintf("%.0f lb", kg/pound)
}

type pegSize struct{ size, count string }

// pegSizes counts the pegs by bore and length, and their spares, as the list of
// pegs does: sizes that differ in their heads or tapers alone are one here.
func pegSizes(f *geom.Frame, stopped map[string]int) []pegSize {
	var out []pegSize
	count, spares := 0, 0
	sizes := list.PegSizes(f, stopped)
	for i, s := range sizes {
		count, spares = count+s.Count, spares+s.Spares()
		size := pegTitle(f, s)
		if i+1 < len(sizes) && pegTitle(f, sizes[i+1]) == size {
			continue
		}
		out = append(out, pegSize{size, fmt.Sprintf("%d + %d spare", count, spares)})
		count, spares = 0, 0
	}
	return out
}

func pegTitle(f *geom.Frame, s list.PegSize) string {
	return "Ø " + f.Units.PlainJoint(s.Bore) + " x " + f.Units.PlainJoint(s.Length)
}
