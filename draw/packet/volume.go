package packet

import "fmt"

// mostPages is how many pages a PDF file has at most: a longer one is slow to
// open, and no bindery takes it.
const mostPages = 4000

// volume is one PDF file of a packet.
type volume struct {
	path  string
	title string // of the reader it is for; "" when it is for all
	pages []*page
}

// volumes lays pages into PDF files and tells every page its place: all in one
// file when they are not more than most, else one for each reader, and where
// that is still too many, further ones with a number.
func volumes(pages []*page, file string, most int) []volume {
	if len(pages) == 0 {
		return nil
	}
	var out []volume
	if len(pages) <= most {
		out = []volume{{path: file + ".pdf", pages: pages}}
	} else {
		for _, g := range readers() {
			out = append(out, volumesFor(g.reader, pages, file, most)...)
		}
	}
	for _, v := range out {
		for i, pg := range v.pages {
			pg.pdf, pg.inPDF = v.path, i+1
		}
	}
	return out
}

// volumesFor lays the pages of one reader into as many files as they need.
func volumesFor(r reader, pages []*page, file string, most int) []volume {
	var own []*page
	for _, pg := range pages {
		if pg.reader == r {
			own = append(own, pg)
		}
	}
	var out []volume
	for n := 1; len(own) > 0; n++ {
		v := volume{path: fmt.Sprintf("%s-%s.pdf", file, r.Key), title: r.Title, pages: own[:min(most, len(own))]}
		if n > 1 {
			v.path, v.title = fmt.Sprintf("%s-%s-%d.pdf", file, r.Key, n), fmt.Sprintf("%s, volume %d", r.Title, n)
		}
		out, own = append(out, v), own[len(v.pages):]
	}
	return out
}
