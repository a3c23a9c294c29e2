// Package row writes descriptions of frames as long as one likes, for
// benchmarks: the same few joints again and again.
package row

import (
	"fmt"
	"strings"
)

// Timbers returns how many timbers a row of so many bents has.
func Timbers(bents int) int { return 5*bents + 2*(bents-1) }

// Source describes a row of bents, at least one: each of two posts, a tie and
// two braces, 10 ft from the next, with two girts between neighbours, all
// joined and pegged.
func Source(bents int) []byte { return Unlike(bents, 1) }

// Unlike describes the same row with bents of so many kinds, at least one, by
// turns: ties of each kind are 1/4 in higher than those of the kind before. So
// there are as many timbers, but more that differ and want sheets of their own.
func Unlike(bents, kinds int) []byte {
	var timbers, joints strings.Builder
	for i := range bents {
		bent(&timbers, &joints, i, i%kinds)
		if i > 0 {
			girts(&timbers, &joints, i)
		}
	}
	return []byte("frame: Row\nunits: in\ntimbers:\n" + timbers.String() + "joints:\n" + joints.String())
}

// bent describes the posts, the tie and the braces of a bent of a kind.
func bent(b, j *strings.Builder, i, kind int) {
	x, high := 120*i, 9+float64(kind)/4
	fmt.Fprintf(b, "  ps-%d: {role: post, section: 8 x 8, from: [%d, 0, 0], to: [%d, 0, 108], faces: [south, west]}\n", i, x, x)
	fmt.Fprintf(b, "  pn-%d: {role: post, section: 8 x 8, from: [%d, 144, 0], to: [%d, 144, 108], faces: [north, west]}\n", i, x, x)
	fmt.Fprintf(b, "  tie-%d: {role: tie, section: 8 x %g, from: [%d, 8, 96], to: [%d, 136, 96], faces: [top, west]}\n", i, high, x, x)
	fmt.Fprintf(b, "  bs-%d: {role: brace, section: 4 x 6, between: [ps-%d, tie-%d], legs: 30 x 30, toward: north}\n", i, i, i)
	fmt.Fprintf(b, "  bn-%d: {role: brace, section: 4 x 6, between: [pn-%d, tie-%d], legs: 30 x 30, toward: south}\n", i, i, i)
	fmt.Fprintf(j, "  - {kind: mortise and tenon, of: tie-%d, end: start, into: ps-%d}\n", i, i)
	fmt.Fprintf(j, "  - {kind: mortise and tenon, of: tie-%d, end: end, into: pn-%d}\n", i, i)
}

// girts describes the girts from the bent before to bent i.
func girts(b, j *strings.Builder, i int) {
	x := 120 * i
	for _, w := range []struct {
		letter, face string
		y            int
	}{{"s", "south", 0}, {"n", "north", 144}} {
		fmt.Fprintf(b, "  g%s-%d: {role: girt, section: 5 x 5, from: [%d, %d, 36], to: [%d, %d, 36], faces: [top, %s]}\n",
			w.letter, i, x-112, w.y, x, w.y, w.face)
		for end, at := range []int{i - 1, i} {
			fmt.Fprintf(j, "  - {kind: mortise and tenon, of: g%s-%d, end: %s, into: p%s-%d, tenon length: 2.5, off shoulder: 1.25}\n",
				w.letter, i, []string{"start", "end"}[end], w.letter, at)
		}
	}
}
