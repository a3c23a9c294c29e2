package draw

import (
	"crypto/sha256"
	"encoding/binary"
	"hash"
	"math"

	"pegwright/geom/vec"
)

// Sum returns the SHA-256 of all that is drawn on the sheet: the same for sheets
// that look the same, another where anything differs that a renderer shows.
// Numbers count as they are rounded for the paper, so that it is the same on
// every machine. Two sheets cannot run together in it: texts and lists have their
// lengths before them.
func (s *Sheet) Sum() [sha256.Size]byte {
	d := &digest{hash: sha256.New(), scale: math.Pow10(s.Places())}
	d.words(s.Kind, s.ID, s.Title)
	d.lengths(s.W, s.H)
	d.count(s.Step)
	d.flags(s.FullScale)
	d.count(len(s.Items))
	for _, it := range s.Items {
		d.meta(it.Head())
		d.shape(it)
	}
	d.count(len(s.Links))
	for _, l := range s.Links {
		d.points(l.Rect.Min, l.Rect.Max)
		d.words(l.To)
	}
	d.pour()
	return [sha256.Size]byte(d.hash.Sum(nil))
}

// digest gathers numbers and texts for a hash.
type digest struct {
	hash  hash.Hash
	scale float64 // of coordinates
	room  [1024]byte
	n     int // of room, used
}

// pour gives the hash what is gathered. (A hash never fails: hash.Hash.)
func (d *digest) pour() {
	d.hash.Write(d.room[:d.n])
	d.n = 0
}

// space makes sure of room for a number.
func (d *digest) space() {
	if d.n+binary.MaxVarintLen64 > len(d.room) {
		d.pour()
	}
}

func (d *digest) count(n int) {
	d.space()
	if 0 <= n && n < 0x80 { // as most are: one byte
		d.room[d.n] = byte(n)
		d.n++
		return
	}
	d.n += binary.PutUvarint(d.room[d.n:], uint64(n))
}

// number takes a number in steps of 1/scale, half a step away from zero; -0
// counts as 0.
func (d *digest) number(x, scale float64) {
	d.space()
	binary.LittleEndian.PutUint64(d.room[d.n:], math.Float64bits(math.Round(x*scale)+0))
	d.n += 8
}

func (d *digest) lengths(xs ...float64) {
	for _, x := range xs {
		d.number(x, d.scale)
	}
}

// angles takes radians in steps of a millionth of a degree.
func (d *digest) angles(xs ...float64) {
	for _, x := range xs {
		d.number(x, 180/math.Pi*1e6)
	}
}

func (d *digest) points(pts ...vec.P) {
	for _, p := range pts {
		d.number(p.X, d.scale)
		d.number(p.Y, d.scale)
	}
}

func (d *digest) flags(set ...bool) {
	bits := 0
	for i, b := range set {
		if b {
			bits |= 1 << i
		}
	}
	d.count(bits)
}

// filling takes a tone where there is one.
func (d *digest) filling(filled bool, grey float64) {
	d.flags(filled)
	if filled {
		d.number(grey, 1e3)
	}
}

func (d *digest) words(texts ...string) {
	for _, s := range texts {
		d.count(len(s))
		for len(s) > 0 {
			if d.n == len(d.room) {
				d.pour()
			}
			k := copy(d.room[d.n:], s)
			d.n, s = d.n+k, s[k:]
		}
	}
}

func (d *digest) meta(m *Meta) {
	d.words(string(m.Class), m.Owner, m.Layer, m.Mark)
	d.flags(m.Pen != nil)
	if m.Pen != nil {
		d.number(m.Pen.Width, 1e4)
		d.number(m.Pen.Grey, 1e3)
		d.count(len(m.Pen.Dash))
		for _, x := range m.Pen.Dash {
			d.number(x, 1e4)
		}
	}
}

// shape takes an item as a number for its kind and its fields in order.
func (d *digest) shape(it Item) {
	switch t := it.(type) {
	case *Path:
		d.count(1)
		d.flags(t.Closed)
		d.filling(t.Filled, t.Grey)
		d.count(len(t.Pts))
		d.points(t.Pts...)
		d.count(len(t.Holes))
		for _, h := range t.Holes {
			d.count(len(h))
			d.points(h...)
		}
	case *Circle:
		d.count(2)
		d.points(t.C)
		d.lengths(t.R)
		d.filling(t.Filled, t.Grey)
	case *Arc:
		d.count(3)
		d.points(t.C)
		d.lengths(t.R)
		d.angles(t.From, t.To)
	case *Ellipse:
		d.count(4)
		d.points(t.C)
		d.lengths(t.RX, t.RY)
		d.angles(t.Rot, t.From, t.To)
		d.filling(t.Filled, t.Grey)
	case *Text:
		d.count(5)
		d.points(t.At)
		d.lengths(t.Height)
		d.count(int(t.Anchor))
		d.angles(t.Rot)
		d.flags(t.Bold, t.Halo)
		d.words(t.S)
	}
}
