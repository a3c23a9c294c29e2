package pdf

import (
	"bytes"
	"compress/zlib"
	"io"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/klippa-app/go-pdfium"
	"github.com/klippa-app/go-pdfium/references"
	"github.com/klippa-app/go-pdfium/requests"

	"pegwright/draw"
	"pegwright/draw/measured"
	"pegwright/geom/vec"
)

// Every page's content is compressed, has the length that it says, and inflates
// to content that balances (ISO 32000-1, 7.3.8, 8.4.2, 9.4.1).
func TestContents(t *testing.T) {
	var sheets []*draw.Sheet
	for i := range 30 {
		s := page("p"+strconv.Itoa(i), 210, 297)
		for k := range 1 + i*5 {
			s.Line(draw.Part, vec.P{X: 10, Y: 10 + float64(k)}, vec.P{X: 200, Y: 12 + float64(k)})
		}
		s.Text(vec.P{X: 20, Y: 150}, 3.5, `(a\b) č 6 1/2"`).Bold = i%2 == 0
		sheets = append(sheets, s)
	}
	data := render(t, Doc{Sheets: sheets})
	heads := regexp.MustCompile(`<</Filter /FlateDecode /Length (\d+)>>\nstream\n`).FindAllSubmatchIndex(data, -1)
	if len(heads) != len(sheets) {
		t.Fatalf("%d compressed contents of %d pages", len(heads), len(sheets))
	}
	for i, h := range heads {
		n, _ := strconv.Atoi(string(data[h[2]:h[3]]))
		stream := data[h[1] : h[1]+n]
		if !bytes.HasPrefix(data[h[1]+n:], []byte("\nendstream\nendobj\n")) {
			t.Fatalf("page %d: the stream does not end after %d bytes", i+1, n)
		}
		r, err := zlib.NewReader(bytes.NewReader(stream))
		if err != nil {
			t.Fatalf("page %d: %v", i+1, err)
		}
		text, err := io.ReadAll(r)
		if err != nil {
			t.Fatalf("page %d: %v", i+1, err)
		}
		for _, pair := range [][2]string{{"q", "Q"}, {"BT", "ET"}} {
			open, shut := word(text, pair[0]), word(text, pair[1])
			if open == 0 || open != shut {
				t.Errorf("page %d: %d times %s, %d times %s", i+1, open, pair[0], shut, pair[1])
			}
		}
	}
}

// word counts an operator in content.
func word(text []byte, op string) int {
	return len(regexp.MustCompile(`(?:^|[ \n])`+op+`(?:[ \n])`).FindAll(text, -1))
}

// A document that is not one of the library's is refused, not written out of
// joint.
func TestFillerRefuses(t *testing.T) {
	for _, bad := range []string{"", "%PDF-1.3\n", "1 0 obj\n<<>>\nendobj\nxref\n0 2\n\ntrailer\n/Size 2\n/Root 1 0 R\n/Info 1 0 R\nstartxref\n25\n%%EOF\n"} {
		q := filler{}
		if _, err := q.Write([]byte(bad)); err == nil {
			t.Errorf("%q was taken", bad)
		}
	}
}

// Bold text is set in the bold face and other text in the regular one, as
// PDFium reads the file, whatever order they come in.
func TestFacesAreNotExchanged(t *testing.T) {
	for _, first := range []bool{true, false} {
		s := draw.NewSheet("t", "t", "t", 210, 297)
		for i, bold := range []bool{first, !first} {
			text := map[bool]string{true: "heavy", false: "plain"}[bold]
			s.Text(vec.P{X: 20, Y: 100 + 50*float64(i)}, 5, text).Bold = bold
		}
		data := render(t, Doc{Sheets: []*draw.Sheet{s}})
		err := measured.Open(data, func(in pdfium.Pdfium, doc references.FPDF_DOCUMENT) error {
			r, err := in.GetPageTextStructured(&requests.GetPageTextStructured{
				Page: requests.Page{ByIndex: &requests.PageByIndex{Document: doc}},
				Mode: requests.GetPageTextStructuredModeRects, CollectFontInformation: true})
			if err != nil {
				return err
			}
			if len(r.Rects) != 2 {
				t.Errorf("%d texts", len(r.Rects))
			}
			for _, x := range r.Rects {
				if strings.HasSuffix(x.FontInformation.Name, "B") != (x.Text == "heavy") {
					t.Errorf("%q is set in %s", x.Text, x.FontInformation.Name)
				}
			}
			return nil
		})
		if err != nil {
			t.Fatal(err)
		}
	}
}
