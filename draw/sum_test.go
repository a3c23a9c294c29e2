package draw

import (
	"crypto/sha256"
	"fmt"
	"math"
	"reflect"
	"strings"
	"testing"

	"pegwright/geom/vec"
)

// everything returns a sheet with an item of every kind and no field left empty.
func everything() *Sheet {
	s := NewSheet("hole", "J12", "Near face", 215.9, 279.4)
	s.Step = 1
	head := func() Meta {
		return Meta{Class: Part, Owner: "post-1", Layer: "key view", Mark: "hole:J12", Group: "notes",
			Pen: &Pen{Width: 0.35, Dash: []float64{3, 1.5}, Grey: 0.25}}
	}
	s.Add(&Path{Meta: head(), Pts: []vec.P{{X: 1, Y: 2}, {X: 3, Y: 4}}, Filled: true, Grey: 0.5, Holes: [][]vec.P{{{X: 5, Y: 6}, {X: 7, Y: 8}}}},
		&Circle{Meta: head(), C: vec.P{X: 5, Y: 6}, R: 12.7, Filled: true, Grey: 0.5},
		&Arc{Meta: head(), C: vec.P{X: 5, Y: 6}, R: 12.7, From: 1, To: 2},
		&Ellipse{Meta: head(), C: vec.P{X: 5, Y: 6}, RX: 12.7, RY: 6, Rot: 0.5, From: 1, To: 2, Filled: true, Grey: 0.5},
		&Text{Meta: head(), At: vec.P{X: 5, Y: 6}, Height: 3.5, S: "7'-6\"", Anchor: Middle, Rot: 1})
	s.Links = append(s.Links, Link{Box{vec.P{X: 1, Y: 1}, vec.P{X: 2, Y: 2}}, "cover"})
	return s
}

// vary changes everything that can be reached from v, one thing at a time, puts
// it back, and calls seen with the name of what is other.
func vary(v reflect.Value, name string, seen func(name string)) {
	try := func(how string, other reflect.Value) {
		was := reflect.New(v.Type()).Elem()
		was.Set(v)
		v.Set(other.Convert(v.Type()))
		seen(name + how)
		v.Set(was)
	}
	switch v.Kind() {
	case reflect.Float64:
		try("", reflect.ValueOf(v.Float()+0.002))
	case reflect.Int:
		try("", reflect.ValueOf(v.Int()+1))
	case reflect.Bool:
		try("", reflect.ValueOf(!v.Bool()))
	case reflect.String:
		try("", reflect.ValueOf(v.String()+"x"))
	case reflect.Pointer:
		if v.CanSet() && strings.HasSuffix(name, ".Pen") {
			try(" left out", reflect.Zero(v.Type()))
		}
		vary(v.Elem(), name, seen)
	case reflect.Interface:
		vary(v.Elem(), name, seen)
	case reflect.Slice:
		try(" less one", v.Slice(0, v.Len()-1))
		try(" and one more", reflect.Append(v.Slice3(0, v.Len(), v.Len()), v.Index(0)))
		for i := range v.Len() {
			vary(v.Index(i), fmt.Sprintf("%s[%d]", name, i), seen)
		}
	case reflect.Struct:
		for i := range v.NumField() {
			vary(v.Field(i), name+"."+v.Type().Field(i).Name, seen)
		}
	default:
		panic(name + " is of a kind that vary does not know")
	}
}

// Whatever is changed of a sheet changes its sum, each change in its own way; what
// no renderer shows does not: the group of a text. The fields are found by
// reflection, so one that is new is tried too.
func TestSumTellsEveryChange(t *testing.T) {
	s := everything()
	sums := map[[sha256.Size]byte]string{s.Sum(): "the sheet as it was"}
	tried := 0
	vary(reflect.ValueOf(s).Elem(), "sheet", func(name string) {
		tried++
		other, known := sums[s.Sum()]
		if strings.HasSuffix(name, ".Group") {
			if !known {
				t.Errorf("%s changes the sum, and is not drawn", name)
			}
			return
		}
		if known {
			t.Errorf("%s has the same sum as %s", name, other)
		}
		sums[s.Sum()] = name
	})
	if tried < 100 {
		t.Errorf("%d changes tried", tried)
	}
	if s.Sum() != everything().Sum() {
		t.Error("the sheet was not put back")
	}
}

// Texts and loops do not run together, and the order of items counts.
func TestSumKeepsPartsApart(t *testing.T) {
	a, b := NewSheet("k", "ab", "c", 100, 100), NewSheet("k", "a", "bc", 100, 100)
	if a.Sum() == b.Sum() {
		t.Error("the end of the id and the start of the title can be exchanged")
	}
	long := NewSheet("k", "i", strings.Repeat("x", 5000), 100, 100)
	same := NewSheet("k", "i", strings.Repeat("x", 4999)+"y", 100, 100)
	if long.Sum() == same.Sum() {
		t.Error("the end of a long text is lost")
	}
	cut := func(at int) *Sheet {
		pts := []vec.P{{X: 1}, {X: 2}, {X: 3}, {X: 4}}
		s := NewSheet("k", "i", "t", 100, 100)
		s.Add(&Path{Holes: [][]vec.P{pts[:at], pts[at:]}})
		return s
	}
	if cut(1).Sum() == cut(2).Sum() {
		t.Error("a point can go from one hole to the next")
	}
	one, two := everything(), everything()
	two.Items[1], two.Items[2] = two.Items[2], two.Items[1]
	if one.Sum() == two.Sum() {
		t.Error("two items can be exchanged")
	}
}

// What is lost in rounding for the paper (design: 1e-3 mm, 1e-4 mm at full size)
// does not count, and -0 is 0; a step of the rounding does.
func TestSumRounds(t *testing.T) {
	for _, full := range []bool{false, true} {
		at := func(x float64) [sha256.Size]byte {
			s := NewSheet("k", "i", "t", 100, 100)
			s.FullScale = full
			s.Line(Part, vec.P{X: x}, vec.P{X: 50, Y: 50})
			return s.Sum()
		}
		step := math.Pow10(-3)
		if full {
			step = math.Pow10(-4)
		}
		if at(0) != at(math.Copysign(0, -1)) || at(0) != at(-0.4*step) || at(10) != at(10+0.4*step) {
			t.Errorf("full size %v: what is rounded off counts", full)
		}
		if at(10) == at(10+step) {
			t.Errorf("full size %v: a step of %v mm does not count", full, step)
		}
	}
}
