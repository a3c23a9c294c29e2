package pdf

import (
	"bytes"
	"crypto/sha256"
	"errors"
	"fmt"
	"strconv"
	"strings"
	"unicode/utf16"
)

// update returns what is appended to a finished PDF to say the two things that
// the library cannot: how to print it, and what file it carries. It is an
// incremental update (ISO 32000-1, 7.5.6): the catalog once more with further
// entries, the new objects, a cross-reference section that points back, and an
// ID made from the content.
func update(pdf []byte, doc Doc) ([]byte, error) {
	t, err := readTrailer(pdf)
	if err != nil {
		return nil, err
	}
	a := &appendix{start: len(pdf), next: t.size, offsets: map[int]int{}}
	extra := "/Version /1.7\n" // the library heads its files 1.3
	if doc.PrintScalingNone {
		extra += "/ViewerPreferences <</PrintScaling /None>>\n"
	}
	catalog := t.catalog
	if doc.Attachment != nil {
		names, list := a.attach(*doc.Attachment)
		if catalog, err = withNames(catalog, names); err != nil {
			return nil, err
		}
		extra += list
	}
	a.object(t.root, strings.TrimSuffix(strings.TrimSpace(catalog), ">>")+extra+">>")
	a.finish(t, pdf)
	return a.buf.Bytes(), nil
}

// trailer is what the end of a PDF says.
type trailer struct {
	size, root, info, xref int
	catalog                string
}

var errTrailer = errors.New("pdf: the end of the document cannot be read")

func readTrailer(pdf []byte) (trailer, error) {
	var t trailer
	i := bytes.LastIndex(pdf, []byte("\ntrailer\n"))
	j := bytes.LastIndex(pdf, []byte("\nstartxref\n"))
	if i < 0 || j < i {
		return t, errTrailer
	}
	dict := string(pdf[i:j])
	t.size, t.root, t.info = numberAfter(dict, "/Size "), numberAfter(dict, "/Root "), numberAfter(dict, "/Info ")
	t.xref = numberAfter(string(pdf[j:]), "startxref\n")
	if t.size <= 0 || t.root <= 0 || t.info <= 0 || t.xref <= 0 {
		return t, errTrailer
	}
	head := []byte(fmt.Sprintf("\n%d 0 obj\n", t.root))
	k := bytes.LastIndex(pdf, head)
	if k < 0 {
		return t, errTrailer
	}
	body, _, ok := bytes.Cut(pdf[k+len(head):], []byte("\nendobj"))
	t.catalog = string(body)
	if !ok || !strings.HasPrefix(t.catalog, "<<") {
		return t, errTrailer
	}
	return t, nil
}

// numberAfter returns the whole number that follows key in s, or -1.
func numberAfter(s, key string) int {
	_, rest, ok := strings.Cut(s, key)
	if !ok {
		return -1
	}
	end := 0
	for end < len(rest) && rest[end] >= '0' && rest[end] <= '9' {
		end++
	}
	n, err := strconv.Atoi(rest[:end])
	if err != nil {
		return -1
	}
	return n
}

// withNames puts names in the place of the empty list of embedded files that
// the library writes into every catalog.
func withNames(catalog, names string) (string, error) {
	const key = "/EmbeddedFiles <<"
	before, rest, ok := strings.Cut(catalog, key)
	list, after, ok2 := strings.Cut(rest, ">>")
	if !ok || !ok2 || strings.Contains(list, "<<") || strings.Contains(after, key) {
		return "", errTrailer
	}
	return before + names + after, nil
}

// appendix gathers the objects of an update.
type appendix struct {
	start, next int
	buf         bytes.Buffer
	order       []int
	offsets     map[int]int
}

// object writes an object under a number.
func (a *appendix) object(n int, body string) {
	a.order = append(a.order, n)
	a.offsets[n] = a.start + a.buf.Len()
	fmt.Fprintf(&a.buf, "%d 0 obj\n%s\nendobj\n", n, body)
}

// add writes an object under a new number and returns the number.
func (a *appendix) add(body string) int {
	n := a.next
	a.next++
	a.object(n, body)
	return n
}

// attach writes an attached file and returns the entries that name it in the
// name dictionary and in the catalog.
func (a *appendix) attach(at Attachment) (names, list string) {
	file := a.add(fmt.Sprintf("<</Type /EmbeddedFile /Length %d /Params <</Size %d>>>>\nstream\n%s\nendstream",
		len(at.Data), len(at.Data), at.Data))
	name := textString(at.Name)
	spec := a.add(fmt.Sprintf("<</Type /Filespec /F %s /UF %s /EF <</F %d 0 R /UF %d 0 R>> /AFRelationship /Source>>",
		name, name, file, file))
	return fmt.Sprintf("/EmbeddedFiles <</Names [%s %d 0 R]>>", name, spec), fmt.Sprintf("/AF [%d 0 R]\n", spec)
}

// textString returns s as a PDF text string: UTF-16 with a mark, in hex.
func textString(s string) string {
	var b strings.Builder
	b.WriteString("<FEFF")
	for _, u := range utf16.Encode([]rune(plainText(s))) {
		fmt.Fprintf(&b, "%04X", u)
	}
	return b.String() + ">"
}

// finish writes the cross-reference section, one subsection for each object,
// and the trailer.
func (a *appendix) finish(t trailer, pdf []byte) {
	h := sha256.New()
	h.Write(pdf)
	h.Write(a.buf.Bytes())
	id := fmt.Sprintf("<%X>", h.Sum(nil)[:16])
	at := a.start + a.buf.Len()
	a.buf.WriteString("xref\n")
	for _, n := range a.order {
		fmt.Fprintf(&a.buf, "%d 1\n%010d 00000 n \n", n, a.offsets[n])
	}
	fmt.Fprintf(&a.buf, "trailer\n<</Size %d /Root %d 0 R /Info %d 0 R /Prev %d /ID [%s %s]>>\nstartxref\n%d\n%%%%EOF\n",
		a.next, t.root, t.info, t.xref, id, id, at)
}
