package block

import (
	"math"
	"strings"
	"testing"

	"pegwright/draw"
	"pegwright/draw/font"
	"pegwright/geom"
	"pegwright/geom/vec"
)

func longTitle() Title {
	return Title{Frame: strings.Repeat("Long frame title ", 6), Sheet: strings.Repeat("sheet ", 20), Shows: strings.Repeat("shows ", 60),
		Scale: "1:2 and 4:1", Units: "ft-in", Date: "2031-04-05", Revision: "B", DrawnFor: strings.Repeat("owner ", 10),
		DrawnBy: strings.Repeat("drawer ", 5), Note: "a note", N: 123, Of: 1234, Mark: "0123456789ab"}
}

// Every text of the title block stays inside the border and apart from all
// others, on all papers and both ways, even when far too long.
func TestTitleBlockKeepsItsTextsApart(t *testing.T) {
	for _, paper := range draw.Papers() {
		for _, land := range []bool{true, false} {
			s, f := New(paper.Name, land, "test", "x", longTitle())
			if err := s.Valid(); err != nil {
				t.Fatal(err)
			}
			b := border(s)
			var boxes []draw.Box
			for _, it := range s.Items {
				x, ok := it.(*draw.Text)
				if !ok {
					continue
				}
				if x.Height < 2.5 {
					t.Errorf("%s: lettering of %v mm; ISO 3098 heights from 2.5 mm are asked for", paper.Name, x.Height)
				}
				boxes = append(boxes, font.Box(x))
			}
			for i, a := range boxes {
				if a.Min.X < b.Min.X || a.Max.X > b.Max.X || a.Min.Y < b.Min.Y-0.01 || a.Max.Y > f.Y0 {
					t.Errorf("%s: text %d leaves the title block: %v", paper.Name, i, a)
				}
				for _, c := range boxes[:i] {
					if min(a.Max.X, c.Max.X)-max(a.Min.X, c.Min.X) > 0 && min(a.Max.Y, c.Max.Y)-max(a.Min.Y, c.Min.Y) > 0 {
						t.Errorf("%s: two texts overlap: %v %v", paper.Name, a, c)
					}
				}
			}
			if f.W() < 150 || f.H() < 150 {
				t.Errorf("%s: field of %v by %v", paper.Name, f.W(), f.H())
			}
		}
	}
}

func TestNumberReplacesItself(t *testing.T) {
	s, _ := New("letter", true, "test", "x", Title{Sheet: "Sheet"})
	before := len(s.Items)
	Number(s, 1, 2, "aaaaaaaaaaaa")
	Number(s, 3, 40, "bbbbbbbbbbbb")
	d := s.Dump()
	if len(s.Items) != before+2 || !strings.Contains(d, "sheet 3 of 40") || strings.Contains(d, "aaaa") || !strings.Contains(d, "bbbbbbbbbbbb") {
		t.Errorf("%d items before, %d after:\n%s", before, len(s.Items), d)
	}
}

func TestBoxTakesItsShareOfTheField(t *testing.T) {
	s, f := New("a4", true, "test", "x", Title{Sheet: "Sheet"})
	left := Boxed(s, f, "CAUTION", []string{strings.Repeat("keep both hands behind the edge ", 12), "second line"})
	if left.Y0 <= f.Y0 || left.Y1 != f.Y1 {
		t.Fatalf("field %v left %v", f, left)
	}
	for _, it := range s.Items {
		if x, ok := it.(*draw.Text); ok && x.Layer != "title" {
			if b := font.Box(x); b.Max.Y > left.Y0 || b.Min.Y < f.Y0 || b.Max.X > f.X1 {
				t.Errorf("%q at %v outside the box", x.S, b)
			}
		}
	}
	if same := Boxed(s, left, "CAUTION", nil); same != left {
		t.Errorf("no lines changed the field to %v", same)
	}
}

func TestDoNotCutNamesTheFinding(t *testing.T) {
	s, _ := New("letter", true, "test", "x", Title{Sheet: "Sheet"})
	DoNotCut(s, 7)
	if n := strings.Count(s.Dump(), "DO NOT CUT – see finding 7"); n != 2 {
		t.Errorf("written %d times", n)
	}
}

// ISO 5456-3: lines along x and y stand at 30° to the horizontal and all three
// scales are equal.
func TestKeyViewIsIsometric(t *testing.T) {
	fr := &geom.Frame{}
	for _, d := range []vec.V{{X: 1}, {Y: 1}, {Z: 1}} {
		pl := vec.Placement{X: d, Y: vec.V{X: d.Y, Y: d.Z, Z: d.X}, Z: vec.V{X: d.Z, Y: d.X, Z: d.Y}}
		fr.Timbers = append(fr.Timbers, &geom.Timber{ID: "t", Length: 1000, Place: pl})
	}
	s := draw.NewSheet("test", "x", "", 200, 200)
	f := Field{10, 10, 90, 60}
	KeyView(s, f, fr, map[string]bool{"t": true})
	if len(s.Items) != 3 {
		t.Fatalf("%d lines", len(s.Items))
	}
	want := []float64{30, 150, 90}
	var l0 float64
	for i, it := range s.Items {
		p := it.(*draw.Path)
		d := p.Pts[1].Sub(p.Pts[0])
		if a := math.Atan2(d.Y, d.X) * 180 / math.Pi; math.Abs(a-want[i]) > 1e-9 {
			t.Errorf("axis %d at %v°, want %v°", i, a, want[i])
		}
		if i == 0 {
			l0 = d.Len()
		}
		if math.Abs(d.Len()-l0) > 1e-9 {
			t.Errorf("axis %d is %v long, the first %v", i, d.Len(), l0)
		}
		for _, q := range p.Pts {
			if q.X < f.X0 || q.X > f.X1 || q.Y < f.Y0 || q.Y > f.Y1 {
				t.Errorf("point %v outside the field", q)
			}
		}
	}
}
