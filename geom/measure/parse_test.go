package measure

import (
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"
)

// width is the one name that the tables know: 8 ft.
func testScope(u Unit) Scope {
	return Scope{Unit: u, Lookup: func(name string) (Value, error) {
		if name == "width" {
			return Value{8 * 304.8, Length}, nil
		}
		return Value{}, &Error{Text: "no value is called " + name, Mend: "use width"}
	}}
}

func TestParseLength(t *testing.T) {
	for _, c := range lengthCases {
		mm, err := ParseLength(c.src, testScope(c.unit))
		if c.fault == "" {
			if err != nil || math.Abs(mm/25.4-c.in) > 1e-9 {
				t.Errorf("%q: %v in, %v; want %v", c.src, mm/25.4, err, c.in)
			}
			continue
		}
		checkError(t, c.src, err, c.fault, c.at)
	}
}

// checkError holds an error to its words and offset; -1 leaves the offset out.
func checkError(t *testing.T, src string, err error, words string, at int) {
	t.Helper()
	var e *Error
	switch {
	case !errors.As(err, &e):
		t.Errorf("%.60q: read without an error (%v), want %q", src, err, words)
	case !strings.Contains(e.Text, words):
		t.Errorf("%.60q: error %q, want %q", src, e.Text, words)
	case at >= 0 && e.Offset != at:
		t.Errorf("%.60q: %q at %d, want %d", src, e.Text, e.Offset, at)
	case e.Mend == "":
		t.Errorf("%.60q: %q has no mend", src, e.Text)
	}
}

// A hundred parentheses are allowed, one more is in the table.
func TestDepthLimit(t *testing.T) {
	src := strings.Repeat("(", 100) + "1" + strings.Repeat(")", 100)
	if mm, err := ParseLength(src, Scope{}); err != nil || mm != 25.4 {
		t.Errorf("100 parentheses: %v, %v", mm, err)
	}
}

// Arithmetic on whole millimetres agrees with Go's own on the same tree.
func TestArithmeticAgreesWithGo(t *testing.T) {
	for a := 1.0; a < 8; a++ {
		for b := 1.0; b < 8; b++ {
			for c := 1.0; c < 8; c++ {
				for text, want := range map[string]float64{
					"%v mm + %v * %v mm":      a + b*c,
					"(%v mm + %v mm) * %v":    (a + b) * c,
					"%v mm / %v / %v":         a / b / c,
					"%v mm - (%v mm - %v mm)": a - (b - c),
					"-%v mm - %v mm - %v mm":  -a - b - c,
				} {
					src := fmt.Sprintf(text, a, b, c)
					got, err := ParseLength(src, Scope{Unit: Inch})
					if err != nil || math.Abs(got-want) > 1e-12 {
						t.Fatalf("%s = %v, %v; want %v", src, got, err, want)
					}
				}
			}
		}
	}
}

func TestDimensions(t *testing.T) {
	for src, want := range map[string]Value{
		`3`:                {3, Bare},
		`3/4`:              {0.75, Bare},
		`width/6'`:         {8.0 / 6, Ratio},
		`width/6' + 1`:     {8.0/6 + 1, Ratio},
		`2 * (6' / width)`: {1.5, Ratio},
		`width`:            {2438.4, Length},
	} {
		got, err := Eval(src, testScope(Inch))
		if err != nil || got.Dim != want.Dim || math.Abs(got.V-want.V) > 1e-12 {
			t.Errorf("%s = %v, %v; want %v", src, got, err, want)
		}
	}
	if n, err := ParseNumber("2 + 1", Scope{}); err != nil || n != 3 {
		t.Errorf("2 + 1 = %v, %v", n, err)
	}
	_, err := ParseNumber("2 in", Scope{})
	checkError(t, "2 in", err, "plain number", 0)
}

func TestCausePassesThrough(t *testing.T) {
	cause := errors.New("spoilt")
	_, err := Eval("1 + a", Scope{Lookup: func(string) (Value, error) { return Value{}, cause }})
	if !errors.Is(err, cause) {
		t.Errorf("%v does not carry its cause", err)
	}
}

func TestParseSection(t *testing.T) {
	for _, c := range []struct {
		src  string
		unit Unit
		a, b float64
	}{
		{`6 x 8`, Inch, 6 * 25.4, 8 * 25.4},
		{`6x8`, Inch, 6 * 25.4, 8 * 25.4},
		{`150 x 150`, Millimetre, 150, 150},
		{`150×200`, Millimetre, 150, 200},
		{`6 1/8" x 5 15/16"`, Inch, 6.125 * 25.4, 5.9375 * 25.4},
		{`6-1/8" X 5-15/16"`, Inch, 6.125 * 25.4, 5.9375 * 25.4},
		{`6 by 8`, Inch, 6 * 25.4, 8 * 25.4},
		{`150 mm x 6 in`, Foot, 150, 152.4},
		{`width/16 x (width/2)/6`, Inch, 152.4, 203.2},
	} {
		a, b, err := ParseSection(c.src, testScope(c.unit))
		if err != nil || math.Abs(a-c.a) > 1e-9 || math.Abs(b-c.b) > 1e-9 {
			t.Errorf("%q: %v x %v, %v; want %v x %v", c.src, a, b, err, c.a, c.b)
		}
	}
	for _, c := range []struct {
		src, fault string
		at         int
	}{
		{`6`, "two sizes", 0}, {``, "two sizes", 0},
		{`6 x 8 x 10`, "not more", 6}, {`6 x`, "no value", -1},
		{`x 6`, "no value", 0}, {`6 x 8 $`, "cannot stand", 6},
		{`6 xx 8`, "two sizes", 0}, {`(6 x 8)`, "two sizes", 0},
	} {
		_, _, err := ParseSection(c.src, testScope(Inch))
		checkError(t, c.src, err, c.fault, c.at)
	}
}

// Angles: arctangents by hand; 12 in 12 is 45 degrees, 9 in 12 the 3-4-5
// triangle.
func TestParsePitch(t *testing.T) {
	for src, want := range map[string]float64{
		"12 in 12": 45, "9 in 12": math.Asin(3.0/5) * 180 / math.Pi, "37 deg": 37, "37°": 37,
		"37.5 degrees": 37.5, "9 in in 12 in": math.Asin(3.0/5) * 180 / math.Pi,
		`9" in 12"`: math.Asin(3.0/5) * 180 / math.Pi, `1' in 12`: 45,
	} {
		p, err := ParsePitch(src, testScope(Inch))
		if err != nil || math.Abs(p.Degrees-want) > 1e-12 {
			t.Errorf("%q = %v, %v; want %v", src, p, err, want)
		}
	}
	for _, src := range []string{"9/12", "9 : 12", "steep", "", "9 in 0", "9 in", "-1 in 12", "6\" deg", "9 mm in"} {
		if p, err := ParsePitch(src, testScope(Inch)); err == nil {
			t.Errorf("%q read as %v", src, p)
		}
	}
}

func TestIsName(t *testing.T) {
	for _, s := range []string{"width", "eave_2", "höhe", "_a", "xs"} {
		if !IsName(s) {
			t.Errorf("%q refused", s)
		}
	}
	for _, s := range []string{"", "2a", "a-b", "a b", "in", "X", "x2", "mm", "by", "auto", strings.Repeat("a", 41)} {
		if IsName(s) {
			t.Errorf("%q accepted", s)
		}
	}
}

// FuzzLength: any text is read or refused, never a panic, never a value that
// is not finite; offsets lie in the text; sections and pitches the same.
func FuzzLength(f *testing.F) {
	for _, c := range lengthCases {
		f.Add(c.src)
	}
	f.Add("6 x 8")
	f.Add("9 in 12")
	f.Fuzz(func(t *testing.T, src string) {
		scope := testScope(Inch)
		mm, err := ParseLength(src, scope)
		a, b, err2 := ParseSection(src, scope)
		p, err3 := ParsePitch(src, scope)
		for _, v := range []float64{mm, a, b, p.Degrees} {
			if math.IsNaN(v) || math.IsInf(v, 0) {
				t.Errorf("%q gives %v", src, v)
			}
		}
		for _, err := range []error{err, err2, err3} {
			var e *Error
			if errors.As(err, &e) && (e.Offset < 0 || e.Offset > len([]rune(src))) {
				t.Errorf("%q: offset %d", src, e.Offset)
			}
		}
	})
}
