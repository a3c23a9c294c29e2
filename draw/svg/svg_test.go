package svg

import (
	"bytes"
	"encoding/xml"
	"errors"
	"io"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"pegwright/draw"
	"pegwright/draw/crew"
	"pegwright/draw/font"
	"pegwright/draw/measured"
	"pegwright/geom/vec"
)

var hostile = []string{"<&>\"'", "]]>", "a=b", "\x00\x01", "\xff\xfe", "😀", "x\" onload=\"alert(1)", "--><script>", "\ufffe", "javascript:alert(1)", "é ⌀ ½", ""}

// Titles, ids, marks, layers, texts and links of every kind give well-formed
// XML that says nothing it was not told to.
func TestHostile(t *testing.T) {
	for _, h := range hostile {
		s := draw.NewSheet(h, h, h, 100, 100)
		for _, it := range []draw.Item{
			&draw.Path{Pts: []vec.P{{X: 1, Y: 1}, {X: 2, Y: 2}}}, &draw.Circle{R: 3}, &draw.Arc{R: 3, To: 1},
			&draw.Ellipse{RX: 2, RY: 1}, &draw.Text{Height: 3.5, S: h}, &draw.Text{Height: 3.5, S: h + " 1/2\"", Rot: 1, Halo: true},
		} {
			*it.Head() = draw.Meta{Class: draw.Class(h), Owner: h, Layer: h, Mark: h}
			s.Add(it)
		}
		s.Links = []draw.Link{{To: h}, {To: "https://example.org/" + h}}
		b, err := Render(s, Options{Mark: h, Title: h, Href: func(id string) string { return id }})
		if err != nil {
			t.Fatalf("%q: %v", h, err)
		}
		wellFormed(t, h, b)
	}
}

// A sheet carries no comment of any program: what XML 1.0 (production 15) calls
// a comment is not there, and the root element follows the declaration.
func TestNoComment(t *testing.T) {
	b, err := Render(draw.NewSheet("a", "b", "c", 100, 100), Options{})
	if err != nil {
		t.Fatal(err)
	}
	if bytes.Contains(b, []byte("<!--")) || !bytes.Contains(b, []byte("?>\n<svg")) {
		t.Errorf("%.120s", b)
	}
}

// wellFormed reads the document, holds its ids to be unique, and allows only
// the elements and attributes that we write.
func wellFormed(t *testing.T, h string, b []byte) {
	t.Helper()
	elements := regexp.MustCompile(`^(svg|title|style|rect|g|path|circle|text|a)$`)
	ids := map[string]bool{}
	dec := xml.NewDecoder(bytes.NewReader(b))
	for {
		tok, err := dec.Token()
		if errors.Is(err, io.EOF) {
			return
		}
		if err != nil {
			t.Fatalf("%q: %v", h, err)
		}
		e, ok := tok.(xml.StartElement)
		if !ok {
			continue
		}
		if !elements.MatchString(e.Name.Local) {
			t.Errorf("%q: element %s", h, e.Name.Local)
		}
		for _, a := range e.Attr {
			if strings.HasPrefix(a.Name.Local, "on") {
				t.Errorf("%q: attribute %s", h, a.Name.Local)
			}
			if a.Name.Local == "href" && strings.HasPrefix(a.Value, "javascript") {
				t.Errorf("%q: link to %s", h, a.Value)
			}
			if a.Name.Local == "id" {
				if ids[a.Value] {
					t.Errorf("%q: id %s twice", h, a.Value)
				}
				ids[a.Value] = true
			}
		}
	}
}

// Text and keys come out of encoding/xml as they went in, save that a question
// mark stands for what XML 1.0 does not allow (production 2).
func TestTextReadBack(t *testing.T) {
	for _, h := range hostile {
		s := draw.NewSheet("kind", h, "title", 100, 100)
		s.Circle(draw.Part, vec.P{}, 3).Mark = "a\t\n\r " + h
		if h != "" {
			s.Text(vec.P{}, 3.5, "- "+h)
		}
		b, err := Render(s, Options{})
		if err != nil {
			t.Fatal(err)
		}
		p, err := measured.SVG(b)
		if err != nil {
			t.Fatal(err)
		}
		allowed := strings.NewReplacer("\x00", "?", "\x01", "?", "\xff", "?", "\xfe", "?", "\ufffe", "?")
		if got, want := p.Circles[0].Mark, "a\t\n\r "+allowed.Replace(h); got != want {
			t.Errorf("mark %q, want %q", got, want)
		}
		want := ""
		for _, run := range font.Layout("- "+h, 3.5, false) {
			want += run.S
		}
		if h != "" && p.Text() != want {
			t.Errorf("text %q, want %q", p.Text(), want)
		}
	}
}

// Every item is found again with its own class, owner, mark, layer, pen and size,
// whatever stands before and after it.
func TestKeysReadBack(t *testing.T) {
	s := draw.NewSheet("k", "i", "t", 100, 100)
	thin, thick := &draw.Pen{Width: 0.1}, &draw.Pen{Width: 0.9}
	for i := range 1000 {
		k := i * i / 7 // in runs of one, two and more that are alike in this or that
		m := draw.Meta{Class: []draw.Class{draw.Part, draw.Hidden}[k%2], Owner: []string{"", "post", "tie"}[k/2%3],
			Layer: []string{"", "key"}[k/6%2], Pen: []*draw.Pen{nil, thin, thick}[k/12%3], Mark: strconv.Itoa(i)}
		if k/36%3 > 0 {
			s.Add(&draw.Text{Meta: m, Height: 2 + float64(k/108%2), Bold: k/216%2 == 1, S: "x" + strconv.Itoa(i)})
		} else {
			s.Add(&draw.Circle{Meta: m, R: 1 + float64(i)})
		}
	}
	b, err := Render(s, Options{})
	if err != nil {
		t.Fatal(err)
	}
	p, err := measured.SVG(b)
	if err != nil || len(p.Circles)+len(p.Texts) != len(s.Items) {
		t.Fatalf("%d circles and %d texts of %d (%v)", len(p.Circles), len(p.Texts), len(s.Items), err)
	}
	item := func(k measured.Keys) draw.Item {
		i, _ := strconv.Atoi(k.Mark)
		m := s.Items[i].Head()
		if k != (measured.Keys{Mark: m.Mark, Owner: m.Owner, Class: string(m.Class), Layer: m.LayerName()}) {
			t.Errorf("item %d: %+v for %+v", i, k, *m)
		}
		return s.Items[i]
	}
	for _, c := range p.Circles {
		want := item(c.Keys).(*draw.Circle)
		if pen := want.PenAt(s.Step); c.R != want.R || c.StrokeWidth != pen.Width || !slices.Equal(c.Dash, pen.Dash) {
			t.Errorf("circle %+v for %+v", c, want)
		}
	}
	for _, x := range p.Texts {
		want := item(x.Keys).(*draw.Text)
		if x.S != want.S || math.Abs(x.Size-font.Size(want.Height, want.Bold)) > 1e-4 {
			t.Errorf("text %+v for %+v", x, want)
		}
	}
}

func sample(full bool) *draw.Sheet {
	s := draw.NewSheet("hole", "J1", "Near face", 215.9, 279.4)
	s.FullScale = full
	s.Circle(draw.Part, vec.P{X: 100.01234, Y: 50.04567}, 12.7).Mark = "hole:mortise:J1"
	s.Line(draw.Register, vec.P{X: 10, Y: 279.4}, vec.P{X: 205.9, Y: 279.39999999}).Mark = "register"
	s.Add(&draw.Arc{Meta: draw.Meta{Class: draw.Part, Mark: "arc"}, C: vec.P{X: 60, Y: 60}, R: 20, From: math.Pi / 4, To: 3 * math.Pi / 2})
	s.Add(&draw.Ellipse{Meta: draw.Meta{Class: draw.Part, Mark: "ellipse"}, C: vec.P{X: 120, Y: 160}, RX: 30, RY: 10, Rot: 0.4})
	s.Text(vec.P{X: 20, Y: 30}, 3.5, `bore Ø 1"`)
	s.Line(draw.Part, vec.P{X: 1, Y: 1}, vec.P{X: 2, Y: 1})
	return s
}

// Coordinates are those of the model to the last decimal that is kept: 1e-3 mm
// on sheets, 1e-4 mm at full scale.
func TestCoordinates(t *testing.T) {
	for _, full := range []bool{false, true} {
		step := map[bool]float64{false: 1e-3, true: 1e-4}[full]
		b, err := Render(sample(full), Options{})
		if err != nil {
			t.Fatal(err)
		}
		p, err := measured.SVG(b)
		if err != nil {
			t.Fatal(err)
		}
		if p.W != 215.9 || p.H != 279.4 {
			t.Errorf("paper %v x %v", p.W, p.H)
		}
		c, _ := p.Marked("hole:mortise:J1")
		if len(c) != 1 || c[0].C.Dist(vec.P{X: 100.01234, Y: 50.04567}) > 0.75*step || c[0].R != 12.7 || c[0].StrokeWidth != 0.5 {
			t.Errorf("hole %v", c)
		}
		_, reg := p.Marked("register")
		if len(reg) != 1 || reg[0].Segs[0].P.Dist(vec.P{X: 10, Y: 279.4}) > 1e-9 || reg[0].Segs[1].P.Dist(vec.P{X: 205.9, Y: 279.4}) > 1e-9 {
			t.Errorf("register line %v", reg)
		}
		if bytes.Contains(b, []byte(`"-0`)) && regexp.MustCompile(`[" ]-0(\.0*)?[" ]`).Match(b) {
			t.Error("negative zero")
		}
		for _, n := range regexp.MustCompile(`-?\d+\.(\d+)`).FindAllSubmatch(b[bytes.Index(b, []byte(`class="paper"`)):], -1) {
			if len(n[1]) > 6 {
				t.Errorf("%s has more decimals than are meant", n[0])
			}
		}
	}
}

// Points of the arc and the ellipse against their equations.
func TestCurves(t *testing.T) {
	b, _ := Render(sample(true), Options{})
	p, err := measured.SVG(b)
	if err != nil {
		t.Fatal(err)
	}
	_, arc := p.Marked("arc")
	_, ell := p.Marked("ellipse")
	if len(arc) != 1 || len(ell) != 1 {
		t.Fatalf("%d arcs, %d ellipses", len(arc), len(ell))
	}
	for _, q := range arc[0].Points() {
		d := q.Sub(vec.P{X: 60, Y: 60})
		if a := math.Atan2(d.Y, d.X); math.Abs(d.Len()-20) > 1e-3 || a > -math.Pi/2+1e-4 && a < math.Pi/4-1e-4 {
			t.Errorf("arc at %v: radius %v, angle %v", q, d.Len(), a)
		}
	}
	if n := len(arc[0].Segs); n < 5 {
		t.Errorf("arc of %d segments: the short way round was taken", n)
	}
	sin, cos := math.Sincos(0.4)
	for _, q := range ell[0].Points() {
		d := q.Sub(vec.P{X: 120, Y: 160})
		u, v := (d.X*cos+d.Y*sin)/30, (-d.X*sin+d.Y*cos)/10
		if math.Abs(math.Hypot(u, v)-1) > 1e-4 {
			t.Errorf("ellipse at %v: %v", q, math.Hypot(u, v))
		}
	}
}

func TestGroupsAndFont(t *testing.T) {
	b, err := Render(sample(false), Options{Mark: "0123456789ab"})
	if err != nil {
		t.Fatal(err)
	}
	s := string(b)
	for _, want := range []string{`width="215.9mm"`, `viewBox="0 0 215.9 279.4"`, `<g id="part" data-layer="part"`, `data-packet="0123456789ab"`, "@font-face", "Near face"} {
		if !strings.Contains(s, want) {
			t.Errorf("no %s", want)
		}
	}
	for _, layer := range []string{"part", "register", "text"} {
		if n := strings.Count(s, `data-layer="`+layer+`"`); n != 1 {
			t.Errorf("%d groups of layer %s", n, layer)
		}
	}
	if n := strings.Count(s, "@font-face"); n != 1 {
		t.Errorf("%d faces embedded for one face used", n)
	}
	if len(b) > 30_000 {
		t.Errorf("%d bytes", len(b))
	}
	plain := draw.NewSheet("k", "i", "t", 10, 10)
	if b, _ := Render(plain, Options{}); bytes.Contains(b, []byte("@font-face")) {
		t.Error("a sheet without text carries a font")
	}
}

func TestSameBytes(t *testing.T) {
	first, _ := Render(sample(true), Options{})
	for range 20 {
		if again, _ := Render(sample(true), Options{}); !bytes.Equal(first, again) {
			t.Fatal("bytes differ")
		}
	}
}

func TestNotDrawable(t *testing.T) {
	s := draw.NewSheet("k", "i", "t", 100, 100)
	s.Circle(draw.Part, vec.P{X: math.NaN()}, 1)
	if b, err := Render(s, Options{}); err == nil || b != nil {
		t.Error("NaN was drawn")
	}
}

// Sheets of one book, rendered at the same time and in any order, are what they
// are alone.
func TestBook(t *testing.T) {
	var sheets []*draw.Sheet
	for i := range 40 {
		s := sample(i%2 == 0)
		s.ID = strconv.Itoa(i)
		s.Text(vec.P{X: 20, Y: 60}, 3.5, strings.Repeat("wide", i%5)+hostile[i%len(hostile)]).Bold = i%3 == 0
		sheets = append(sheets, s)
	}
	b := NewBook()
	together := make([][]byte, len(sheets))
	crew.Each(len(sheets), func(i int) { together[i], _ = b.Render(sheets[i], Options{}) })
	for i, s := range sheets {
		if alone, err := Render(s, Options{}); err != nil || !bytes.Equal(alone, together[i]) {
			t.Errorf("sheet %d differs (%v)", i, err)
		}
	}
}

func TestLinks(t *testing.T) {
	s := draw.NewSheet("k", "i", "t", 100, 100)
	s.Links = []draw.Link{{Rect: draw.Box{Max: vec.P{X: 5, Y: 5}}, To: "other"}, {To: "https://example.org/?a=1&b=2"}}
	b, _ := Render(s, Options{})
	if n := strings.Count(string(b), "<a "); n != 1 {
		t.Errorf("%d links without Href, want the web one only", n)
	}
	b, _ = Render(s, Options{Href: func(id string) string { return id + ".svg" }})
	for _, want := range []string{`href="other.svg"`, `href="https://example.org/?a=1&amp;b=2"`} {
		if !strings.Contains(string(b), want) {
			t.Errorf("no %s", want)
		}
	}
}
