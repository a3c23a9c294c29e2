package font

import "testing"

// BenchmarkMeasure measures texts as sheets have them, with a fraction or two or
// none: on one line, and wrapped.
func BenchmarkMeasure(b *testing.B) {
	texts := []string{"Apiary store", "toward the shoulder", `Ø 3/4"`, `6' 7 1/2"`, "off the arris – “west”",
		`Bore at the cross only: set 1/8" toward the shoulder; the outlines are those at the bearing, 1/2" below this face.`,
		"Pack the mortise with a scrap block before boring. Turn the stick, finish from the far face."}
	for _, c := range []struct {
		name string
		do   func(string)
	}{
		{"line", func(s string) { Measure(s, 3.5, false) }},
		{"wrap", func(s string) { Wrap(s, 60, 3.5) }},
		{"layout", func(s string) { Layout(s, 3.5, false) }},
	} {
		b.Run(c.name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				for _, s := range texts {
					c.do(s)
				}
			}
		})
	}
}
