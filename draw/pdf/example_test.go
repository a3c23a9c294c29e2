package pdf_test

import (
	"bytes"
	"fmt"

	"pegwright/draw"
	"pegwright/draw/pdf"
)

// A PDF file begins with its version (ISO 32000-1, 7.5.2).
func Example() {
	var b bytes.Buffer
	err := pdf.Render(&b, pdf.Doc{Title: "One sheet", Sheets: []*draw.Sheet{draw.NewSheet("note", "one", "Empty", 210, 297)}})
	fmt.Println(err, bytes.HasPrefix(b.Bytes(), []byte("%PDF-1.")))
	// Output:
	// <nil> true
}
