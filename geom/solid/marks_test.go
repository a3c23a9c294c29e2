package solid

import (
	"math"
	"testing"

	"pegwright/geom/vec"
)

// notched returns a box of 100 x 100 x 400 mm less a box of 60 x 40 x 50 in its
// corner, n of them at different places so that nothing can be kept from one to
// the next.
func notched(n int) *Body {
	o := vec.V{X: float64(n)}
	b := NewBody(Box(o, o.Add(vec.V{X: 100, Y: 100, Z: 400})))
	b.Subtract(Box(o.Add(vec.V{X: -10, Y: -10, Z: -10}), o.Add(vec.V{X: 60, Y: 40, Z: 50})), "notch")
	return b
}

// boredBox returns the body with a bore of 25 mm through it, and the volume
// that is left by its formula.
func boredBox(n int) (volume, want float64) {
	b := notched(n)
	from, to := vec.V{X: float64(n) + 50, Y: 0, Z: 200}, vec.V{X: float64(n) + 50, Y: 100, Z: 200}
	return b.Volume() - BoreVolume(b.Cells(), from, to, 25, nil), 100*100*400 - 60*40*50 - math.Pi*25*25/4*100
}

// The shapes that the benchmarks time have the volumes of the formulas for box
// and cylinder.
func TestMarkVolumes(t *testing.T) {
	if got := notched(3).Volume(); math.Abs(got-(100*100*400-60*40*50)) > 1e-3 {
		t.Errorf("notched: %v", got)
	}
	if got, want := boredBox(3); math.Abs(got-want) > 1e-3 {
		t.Errorf("bored: %v, want %v", got, want)
	}
}

// BenchmarkThousand times a thousand boxes less a box, and the same with a bore
// and volumes. The marks are what a general solid kernel of triangles takes for
// the same on the machine where they were measured, its cylinders of 64 sides:
// 160 ms and 3,151 ms.
func BenchmarkThousand(b *testing.B) {
	b.Run("box-box", func(b *testing.B) {
		for b.Loop() {
			for i := range 1000 {
				notched(i)
			}
		}
		b.ReportMetric(160, "mark-ms")
		b.ReportMetric(float64(b.Elapsed().Microseconds())/1e3/float64(b.N), "ms")
	})
	b.Run("box-box-bore-volume", func(b *testing.B) {
		for b.Loop() {
			for i := range 1000 {
				if v, want := boredBox(i); math.Abs(v-want) > 1e-3 {
					b.Fatal(v, want)
				}
			}
		}
		b.ReportMetric(3151, "mark-ms")
		b.ReportMetric(float64(b.Elapsed().Microseconds())/1e3/float64(b.N), "ms")
	})
}
