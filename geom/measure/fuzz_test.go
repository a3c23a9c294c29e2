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

// exact evaluates an expression with the parser and the exact arithmetic of the
// Go language; ok is false where it divides by zero.
func exact(e ast.Expr) (v constant.Value, ok bool) {
	switch e := e.(type) {
	case *ast.BasicLit:
		return constant.ToFloat(constant.MakeFromLiteral(e.Value, e.Kind, 0)), true
	case *ast.ParenExpr:
		return exact(e.X)
	case *ast.UnaryExpr:
		if v, ok = exact(e.X); ok {
			v = constant.UnaryOp(e.Op, v, 0)
		}
		return v, ok
	case *ast.BinaryExpr:
		a, okA := exact(e.X)
		b, okB := exact(e.Y)
		if !okA || !okB || e.Op == gotoken.QUO && constant.Sign(b) == 0 {
			return nil, false
		}
		return constant.BinaryOp(a, e.Op, b), true
	}
	return nil, false
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
			if bad == nil && math.Abs(got.V) < 1e9 {
				t.Errorf("%s = %v, but it divides by zero", src, got.V)
			}
			return
		}
		w, _ := constant.Float64Val(want)
		if bad == nil && math.Abs(got.V-w) > 1e-6*max(1, math.Abs(w)) && !cancels(program) {
			t.Errorf("%s = %v, want %v", src, got.V, w)
		}
	})
}

// cancels reports whether an expression may lose its figures by taking like
// numbers from each other and dividing by what is left: floating point is then
// no measure.
func cancels(program []byte) bool {
	less := false
	for _, b := range program {
		if b%6 == 3 && less {
			return true
		}
		less = less || b%6 == 1 || b%6 == 4
	}
	return false
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
