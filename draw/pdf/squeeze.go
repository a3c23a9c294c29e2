package pdf

import (
	"bytes"
	"compress/zlib"
	"fmt"
	"io"
	"regexp"
	"slices"
	"strconv"
)

// press compresses streams, one after the other. (The library would make a
// compressor of more than a megabyte for every page.)
type press struct {
	zip *zlib.Writer
	buf bytes.Buffer
}

func newPress() (*press, error) {
	zip, err := zlib.NewWriterLevel(io.Discard, zlib.BestSpeed)
	if err != nil {
		return nil, fmt.Errorf("pdf: %w", err)
	}
	return &press{zip: zip}, nil
}

// squeeze returns the data compressed.
func (p *press) squeeze(data []byte) ([]byte, error) {
	p.buf.Reset()
	p.zip.Reset(&p.buf)
	if _, err := p.zip.Write(data); err != nil {
		return nil, fmt.Errorf("pdf: %w", err)
	}
	if err := p.zip.Close(); err != nil {
		return nil, fmt.Errorf("pdf: %w", err)
	}
	return bytes.Clone(p.buf.Bytes()), nil
}

// filler takes a finished PDF from the library, in one piece, and keeps it with
// the contents of the pages put in the place of the library's.
type filler struct {
	pages [][]byte // compressed contents
	out   bytes.Buffer
}

// resources is the number of the object that names the fonts.
const resources = 2

// contentOf returns the number of the object that holds the content of page i,
// counted from 0: the library gives each page two numbers, from 3 on.
func contentOf(i int) int { return 4 + 2*i }

// Write takes the whole document; it fails if that is not one of the library's.
func (q *filler) Write(pdf []byte) (int, error) {
	t, err := readTrailer(pdf)
	if err != nil {
		return 0, err
	}
	starts, err := offsets(pdf, t)
	if err != nil {
		return 0, err
	}
	size := len(pdf)
	for _, p := range q.pages {
		size += len(p) + 50
	}
	q.out.Grow(size + 4096) // what an update may add
	order := make([]int, t.size)
	for n := range order {
		order[n] = n
	}
	slices.SortFunc(order, func(a, b int) int { return starts[a] - starts[b] })
	moved := make([]int, t.size)
	for i, n := range order { // number 0 is the head of the file
		end := t.xref
		if i+1 < len(order) {
			end = starts[order[i+1]]
		}
		moved[n] = q.out.Len()
		body := pdf[starts[n]:end]
		if n == resources {
			body = namedFonts(body, pdf, starts)
		}
		if err := q.object(n, body); err != nil {
			return 0, err
		}
	}
	q.finish(pdf[t.xref:], moved)
	return len(pdf), nil
}

// offsets returns where each object starts, by its number, from the
// cross-reference table (ISO 32000-1, 7.5.4: entries of 20 bytes).
func offsets(pdf []byte, t trailer) ([]int, error) {
	const entry = 20
	head := fmt.Sprintf("xref\n0 %d\n", t.size)
	if t.xref > len(pdf)-len(head)-entry*t.size || !bytes.HasPrefix(pdf[t.xref:], []byte(head)) {
		return nil, errTrailer
	}
	out := make([]int, t.size)
	for n := 1; n < t.size; n++ {
		at, err := strconv.Atoi(string(pdf[t.xref+len(head)+entry*n:][:10]))
		if err != nil || at <= 0 || at >= t.xref {
			return nil, errTrailer
		}
		out[n] = at
	}
	return out, nil
}

// object copies an object, or puts a page's content in its place.
func (q *filler) object(n int, body []byte) error {
	page := n - contentOf(0)
	switch {
	case page >= 0 && page%2 == 0 && page/2 < len(q.pages):
		data := q.pages[page/2]
		if !bytes.HasPrefix(body, fmt.Appendf(nil, "%d 0 obj\n<</Length ", n)) {
			return errTrailer
		}
		fmt.Fprintf(&q.out, "%d 0 obj\n<</Filter /FlateDecode /Length %d>>\nstream\n", n, len(data))
		q.out.Write(data)
		body = []byte("\nendstream\nendobj\n")
	}
	q.out.Write(body)
	return nil
}

// namedFonts gives the fonts of the resources the names that contents use, in
// place of the library's. Which font is the bold one is told by its object.
func namedFonts(body, pdf []byte, starts []int) []byte {
	entry := regexp.MustCompile(`/F[0-9a-f]{40} (\d+) 0 R`)
	return entry.ReplaceAllFunc(body, func(old []byte) []byte {
		n, err := strconv.Atoi(string(entry.FindSubmatch(old)[1]))
		if err != nil || n >= len(starts) {
			return old
		}
		font, _, _ := bytes.Cut(pdf[starts[n]:], []byte("endobj"))
		bold := bytes.Contains(font, []byte("/BaseFont /utf8"+family+"B\n"))
		return fmt.Appendf(nil, "%s %d 0 R", fontName(bold), n)
	})
}

// finish writes the cross-reference table and what follows it, with the new
// places.
func (q *filler) finish(tail []byte, moved []int) {
	at := q.out.Len()
	fmt.Fprintf(&q.out, "xref\n0 %d\n0000000000 65535 f \n", len(moved))
	for _, m := range moved[1:] {
		fmt.Fprintf(&q.out, "%010d 00000 n \n", m)
	}
	i, j := bytes.Index(tail, []byte("trailer\n")), bytes.LastIndex(tail, []byte("startxref\n"))
	q.out.Write(tail[i:j])
	fmt.Fprintf(&q.out, "startxref\n%d\n%%%%EOF\n", at)
}
