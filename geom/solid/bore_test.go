package solid

import (
	"math"
	"testing"
)

// A bore square through a timber takes π/4·d²·length whatever cells the timber
// is in; a second one in the same place takes nothing; an equal one that
// crosses it square on takes less by the Steinmetz solid, 2/3·d³ (Archimedes).
func TestBoreVolume(t *testing.T) {
	b := NewBody(timber(1000, 150, 200))
	b.Subtract(block(at(400, 50, 100), at(500, 90, 210)), "m")
	const d = 25.4
	round := math.Pi / 4 * d * d

	clear := Bore{at(700, -5, 60), at(700, 155, 60), d}
	approx(t, "through", BoreVolume(b.Cells(), clear.From, clear.To, d, nil), round*150, 1e-6*round*150)
	approx(t, "again", BoreVolume(b.Cells(), clear.From, clear.To, d, []Bore{clear}), 0, 1e-6)
	approx(t, "blind", BoreVolume(b.Cells(), at(700, -5, 60), at(700, 80, 60), d, nil), round*80, 1e-3)
	approx(t, "across the mortise", BoreVolume(b.Cells(), at(450, -5, 150), at(450, 155, 150), d, nil), round*110, 1e-3)
	approx(t, "slanted", BoreVolume(b.Cells(), at(640, -40, 60), at(860, 180, 60), d, nil), round*150*math.Sqrt2, 1e-3)

	crossing := BoreVolume(b.Cells(), at(700, 75, -5), at(700, 75, 205), d, []Bore{clear})
	want := round*200 - 2.0/3*d*d*d
	approx(t, "crossing", crossing, want, 0.01*2.0/3*d*d*d)
}
