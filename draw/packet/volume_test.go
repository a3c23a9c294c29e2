package packet

import (
	"fmt"
	"strings"
	"testing"

	"pegwright/draw"
)

// pagesOf returns one page of each of the kinds, in turn.
func pagesOf(n int, kinds ...string) []*page {
	var r []*page
	for i := range n {
		s := &draw.Sheet{Kind: kinds[i%len(kinds)], ID: fmt.Sprint(i)}
		r = append(r, &page{sheet: s, n: i + 1, reader: readerOf(s.Kind)})
	}
	return r
}

// Up to the limit all pages are in one file. Beyond it every reader gets a file
// of his own, and further ones where his pages are too many; every page is in
// one file, in its order, and knows where. Counts by hand.
func TestVolumes(t *testing.T) {
	for _, c := range []struct {
		pages int
		kinds []string
		want  map[string]int
	}{
		{0, []string{"cover"}, map[string]int{}},
		{10, []string{"cover", "joint"}, map[string]int{"packet.pdf": 10}},
		{11, []string{"cover", "joint"}, map[string]int{"packet-start.pdf": 6, "packet-cut.pdf": 5}},
		{12, []string{"cover", "joint", "drawbore", "raise"}, map[string]int{"packet-start.pdf": 3, "packet-cut.pdf": 3, "packet-bore.pdf": 3, "packet-raise.pdf": 3}},
		{25, []string{"timber"}, map[string]int{"packet-cut.pdf": 10, "packet-cut-2.pdf": 10, "packet-cut-3.pdf": 5}},
	} {
		set := pagesOf(c.pages, c.kinds...)
		got := map[string]int{}
		for _, v := range volumes(set, "packet", 10) {
			last := 0
			for i, pg := range v.pages {
				if pg.pdf != v.path || pg.inPDF != i+1 || pg.n <= last {
					t.Errorf("%d pages: page %d is on page %d of %s, found on %d of %s", c.pages, pg.n, pg.inPDF, pg.pdf, i+1, v.path)
				}
				last = pg.n
			}
			got[v.path] += len(v.pages)
		}
		if fmt.Sprint(got) != fmt.Sprint(c.want) {
			t.Errorf("%d pages of %v: %v, want %v", c.pages, c.kinds, got, c.want)
		}
	}
}

// A packet of more than 4,000 sheets has its PDF files by reader, each page
// once, and the index page points to them.
func TestAPacketOfVeryManySheets(t *testing.T) {
	if testing.Short() {
		t.Skip("it draws 4,001 sheets")
	}
	in := input()
	in.Sheets = stand("Sheet", 4001, "cover", "joint")
	files := build(t, in)
	if files["packet.pdf"] != nil {
		t.Error("there is one file for all")
	}
	for name, want := range map[string]int{"packet-start.pdf": 2001, "packet-cut.pdf": 2000, "templates.pdf": 3} {
		if got := len(pageObject.FindAll(files[name], -1)); got != want {
			t.Errorf("%s has %d pages, want %d", name, got, want)
		}
	}
	if !strings.Contains(string(files["index.html"]), `"packet-cut.pdf#page=2000"`) {
		t.Error("the index page does not lead to the last page of the second volume")
	}
	for _, m := range attribute.FindAllStringSubmatch(string(files["index.html"]), -1) {
		if path, _, _ := strings.Cut(m[1], "#"); path != "" && files[path] == nil {
			t.Errorf("%q is not in the packet", m[1])
		}
	}
}
