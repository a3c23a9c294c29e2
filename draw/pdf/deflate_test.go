package pdf

import (
	"bytes"
	"compress/zlib"
	"fmt"
	"io"
	"math/rand/v2"
	"strings"
	"testing"

	"pegwright/draw"
	"pegwright/geom/vec"
)

// inflated returns what the standard library makes of compressed data; it checks
// the sum at the end.
func inflated(t *testing.T, data []byte) []byte {
	t.Helper()
	r, err := zlib.NewReader(bytes.NewReader(data))
	if err != nil {
		t.Fatal(err)
	}
	out, err := io.ReadAll(r)
	if err != nil {
		t.Fatal(err)
	}
	return out
}

// noise returns n bytes drawn by lot.
func noise(n int) []byte {
	r := rand.New(rand.NewPCG(1, uint64(n)))
	out := make([]byte, n)
	for i := range out {
		out[i] = byte(r.Uint32())
	}
	return out
}

// What is compressed comes out again by compress/zlib, whatever it is, one after
// the other from the same deflater: bytes that never come in pages, references of
// every length, and as far back as they reach and one further.
func TestDeflaterLosesNothing(t *testing.T) {
	cases := map[string][]byte{"nothing": nil, "one byte": {7}, "three bytes": []byte("abc"), "noise": noise(200_000),
		"zeros": make([]byte, 300_000), "page": pageContent()}
	for n := range 600 {
		cases[fmt.Sprintf("%d bytes twice", n)] = append(noise(n), noise(n)...)
	}
	for _, back := range []int{1, 2, 3, 4, 5, 8, 9, 4096, 4097, 24576, 24577, window - 1, window, window + 1, 3 * window} {
		word := []byte("the same again")
		cases[fmt.Sprintf("%d bytes back", back)] = bytes.Join([][]byte{word, make([]byte, max(0, back-len(word))), word}, nil)
		cases[fmt.Sprintf("every %d bytes", back)] = bytes.Repeat(noise(back), 1+600/back)
	}
	d := newDeflater()
	for name, data := range cases {
		if got := inflated(t, d.squeeze(data)); !bytes.Equal(got, data) {
			t.Errorf("%s: %d bytes came out other than they went in", name, len(data))
		}
	}
	d.past = 1<<30 + 1
	if got := inflated(t, d.squeeze(cases["page"])); !bytes.Equal(got, cases["page"]) {
		t.Error("the page after very many came out other than it went in")
	}
}

// pageContent returns the content of a sheet of lines, circles and lettering.
func pageContent() []byte {
	s := draw.NewSheet("t", "t", "t", 297, 210)
	for i := range 100 {
		f := float64(i)
		s.Line(draw.Part, vec.P{X: 10.1234 + 1.7*f, Y: 20.3 + f}, vec.P{X: 100 + 0.77*f, Y: 180.25 - f/3})
		s.Text(vec.P{X: 12 + 1.3*f, Y: 30 + 1.1*f}, 2.5, fmt.Sprintf(`%d' %d 1/2" from the arris`, i%12, i%11))
		if i%10 == 0 {
			s.Circle(draw.Hidden, vec.P{X: 33.3 + f, Y: 44.4 + f}, 6.35)
		}
	}
	return new(content).write(s)
}

// The codes of a kind fill their space to the last, as an inflater asks (Kraft:
// the sum of 2^-n is 1).
func TestCodesAreComplete(t *testing.T) {
	for _, lengths := range []string{symbolBits, distanceBits, tellingBits} {
		sum := 0
		for i := range len(lengths) {
			if n := figure(lengths[i]); n > 0 {
				sum += 1 << (15 - n)
			}
		}
		if sum != 1<<15 {
			t.Errorf("%s: filled to %d of %d", lengths, sum, 1<<15)
		}
	}
	if strings.ContainsAny(symbolBits+distanceBits, "0") {
		t.Error("a symbol has no code")
	}
}

// A page is compressed nearly as well as by the standard library at its fastest.
func TestDeflaterFitsPages(t *testing.T) {
	page := pageContent()
	var b bytes.Buffer
	w, err := zlib.NewWriterLevel(&b, zlib.BestSpeed)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := w.Write(page); err != nil {
		t.Fatal(err)
	}
	if err := w.Close(); err != nil {
		t.Fatal(err)
	}
	if ours, theirs := len(newDeflater().squeeze(page)), b.Len(); float64(ours) > 1.1*float64(theirs) {
		t.Errorf("%d bytes became %d, by compress/zlib %d", len(page), ours, theirs)
	}
}

func FuzzDeflater(f *testing.F) {
	f.Add([]byte("BT 1 2 Td(\x00a\x00b)Tj ET\n"), 3)
	f.Add(make([]byte, 70), 9)
	f.Fuzz(func(t *testing.T, data []byte, times int) {
		data = bytes.Repeat(data, 1+times&31)
		d := newDeflater()
		for range 2 {
			if got := inflated(t, d.squeeze(data)); !bytes.Equal(got, data) {
				t.Errorf("%q came out as %q", data, got)
			}
		}
	})
}

func BenchmarkDeflater(b *testing.B) {
	page, d := pageContent(), newDeflater()
	b.SetBytes(int64(len(page)))
	for b.Loop() {
		d.squeeze(page)
	}
}
