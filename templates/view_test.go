package templates

import (
	"bytes"
	"os"
	"strings"
	"testing"

	"pegwright/draw/pdf"
)

// TestEverySheetCanBeDrawn renders every template of every sample.
func TestEverySheetCanBeDrawn(t *testing.T) {
	for name, f := range frames(t) {
		sheets := Sheets(f, nil)
		var b bytes.Buffer
		if err := pdf.Render(&b, pdf.Doc{Title: name, Sheets: sheets, PrintScalingNone: true}); err != nil {
			t.Errorf("%s: %v", name, err)
		}
		if dir := os.Getenv("TEMPLATES_OUT"); dir != "" {
			name = strings.Fields(strings.ReplaceAll(name, ",", ""))[0]
			if err := os.WriteFile(dir+"/"+name+".pdf", b.Bytes(), 0o644); err != nil {
				t.Fatal(err)
			}
			for i, s := range sheets {
				t.Log(name, i+1, s.Kind, s.ID, s.Title)
			}
		}
	}
}
