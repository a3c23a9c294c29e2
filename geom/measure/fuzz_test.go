package measure

import (
	"fmt"
	"go/ast"
	"go/constant"
	goparser "go/parser"
	gotoken "go/token"
	"math"
	"testing"
	"time"
)

// written turns bytes into an expression of plain numbers, with every operand
// in parentheses so that no sign can be read as part of a number.
func written(program []byte) string {
	text := "1"
	for i, b := range program {
		if i >= 40 {
			break
		}
		n := fmt.Sprintf("%d.%d", b>>3, b&7)
		switch b % 6 {
		case 0:
			text = "(" + text + ") + (" + n + ")"
		case 1:
			text = "(" + n + ") - (" + text + ")"
		case 2:
			text = "(" + text + ") * (" + n + ")"
		case 3:
			text = "(" + n + ") / (" + text + ")"
		case 4:
			text = "-(" + text + ")"
		case 5:
			text = n + " + " + text // precedence, from the left
		}
	}
	return text
}

// figure is a number in exact arithmetic, and how far off it double precision
// may be.
type figure struct {
	v   constant.Value
	off float64
}

// size is the magnitude of a figure.
func (f figure) size() float64 {
	x, _ := constant.Float64Val(f.v)
	return math.Abs(x)
}

// rounded adds the rounding of the last operation to the error carried into it.
// Two operations are allowed for one, since a length is turned into the unit of
// the file as well.
func (f figure) rounded(carried float64) figure {
	const unit = 0x1p-53 // the unit roundoff of IEEE 754 double precision
	f.off = carried + 2*unit*(f.size()+carried)
	return f
}

// exact evaluates an expression with the parser and the exact arithmetic of the
// Go language, and carries the bound of floating-point error along: the standard
// model of Higham, Accuracy and Stability of Numerical Algorithms, 2.4 (from
// memory). ok is false where it divides by zero, and the figure then tells how
// far off zero the divisor in double precision may be.
func exact(e ast.Expr) (f figure, ok bool) {
	switch e := e.(type) {
	case *ast.BasicLit:
		f.v = constant.ToFloat(constant.MakeFromLiteral(e.Value, e.Kind, 0))
		return f.rounded(0), true
	case *ast.ParenExpr:
		return exact(e.X)
	case *ast.UnaryExpr:
		if f, ok = exact(e.X); ok {
			f.v = constant.UnaryOp(e.Op, f.v, 0)
		}
		return f, ok
	case *ast.BinaryExpr:
		a, okA := exact(e.X)
		b, okB := exact(e.Y)
		switch {
		case !okA:
			return a, false
		case !okB, e.Op == gotoken.QUO && constant.Sign(b.v) == 0:
			return b, false
		}
		f.v = constant.BinaryOp(a.v, e.Op, b.v)
		return f.rounded(carried(e.Op, a, b, f.size())), true
	}
	return f, false
}

// carried is the error that two operands bring into the result of an operation.
// It is without bound where a divisor may be zero for all that is known of it.
func carried(op gotoken.Token, a, b figure, result float64) float64 {
	switch op {
	case gotoken.MUL:
		return a.size()*b.off + b.size()*a.off + a.off*b.off
	case gotoken.QUO:
		if b.off >= b.size() {
			return math.Inf(1)
		}
		return (a.off + result*b.off) / (b.size() - b.off)
	}
	return a.off + b.off
}

// FuzzExpression: arithmetic agrees with Go's own parser and exact arithmetic
// (go/parser, go/constant); what it cannot compute is refused.
func FuzzExpression(f *testing.F) {
	f.Add([]byte{})
	f.Add([]byte("peg"))
	f.Add([]byte{0, 1, 2, 3, 4, 5, 255, 254, 253, 252, 251, 250})
	f.Add([]byte{3, 3, 9, 3})
	f.Fuzz(func(t *testing.T, program []byte) {
		src := written(program)
		tree, err := goparser.ParseExpr(src)
		if err != nil {
			t.Fatal(err)
		}
		want, ok := exact(tree)
		got, bad := Eval(src, Scope{Unit: Inch})
		if !ok {
			if bad == nil && want.off < nothing {
				t.Errorf("%s = %v, but it divides by zero", src, got.V)
			}
			return
		}
		w, _ := constant.Float64Val(want.v)
		if bad == nil && math.Abs(got.V-w) > want.off {
			t.Errorf("%s = %v, want %v within %g", src, got.V, w, want.off)
		}
	})
}

// FuzzEval: any text is evaluated or refused, soon, never a panic; the place of
// an error lies in the text; figures are finite.
func FuzzEval(f *testing.F) {
	for _, c := range lengthCases {
		f.Add(c.src)
	}
	f.Add("((((width))))")
	f.Add("1/0 + width/width")
	f.Fuzz(func(t *testing.T, src string) {
		watch := time.AfterFunc(20*time.Second, func() { panic("an expression takes for ever: " + src) })
		defer watch.Stop()
		v, err := Eval(src, testScope(Inch))
		if err == nil {
			if math.IsNaN(v.V) || math.IsInf(v.V, 0) {
				t.Errorf("%q = %v", src, v)
			}
			return
		}
		e, ok := err.(*Error)
		if !ok || e.Text == "" || e.Mend == "" || e.Offset < 0 || e.Offset > len([]rune(src)) {
			t.Errorf("%q: %#v", src, err)
		}
	})
}
