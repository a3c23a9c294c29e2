package templates

import "testing"

// BenchmarkSheets draws every full-size sheet of the default sample.
func BenchmarkSheets(b *testing.B) {
	f := sample(b)
	b.ReportAllocs()
	for b.Loop() {
		Sheets(f, nil)
	}
}
