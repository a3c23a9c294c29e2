package model

import (
	"fmt"
	"math"
	"strconv"

	"pegwright/geom/solid"
	"pegwright/geom/vec"
)

// num is a length, area, volume or weight: rounded to 1e-6, written in the
// shortest decimal form, without exponent and without a negative zero.
type num float64

// MarshalJSON returns the number, or an error when it is not finite.
func (n num) MarshalJSON() ([]byte, error) { return shortest(float64(n), 1e6) }

// unit is a component of a direction or of a rotation: rounded to 1e-9, so that
// a timber ten metres long is placed within 1e-5 mm.
type unit float64

// MarshalJSON returns the number, or an error when it is not finite.
func (u unit) MarshalJSON() ([]byte, error) { return shortest(float64(u), 1e9) }

// shortest rounds x to a whole number of 1/per.
func shortest(x, per float64) ([]byte, error) {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return nil, fmt.Errorf("a number is not finite")
	}
	if r := math.Round(x * per); math.Abs(r) < 1<<53 {
		x = r / per
	}
	return strconv.AppendFloat(nil, x+0, 'f', -1, 64), nil
}

type point [3]num

func pointOf(v vec.V) point { return point{num(v.X), num(v.Y), num(v.Z)} }

func pointsOf(vs []vec.V) []point {
	r := make([]point, len(vs))
	for i, v := range vs {
		r[i] = pointOf(v)
	}
	return r
}

type direction [3]unit

func directionOf(v vec.V) direction { return direction{unit(v.X), unit(v.Y), unit(v.Z)} }

// loopsOf returns the face loops of a volume.
func loopsOf(c solid.Convex) [][]int {
	r := make([][]int, len(c.Faces))
	for i, f := range c.Faces {
		r[i] = f.Loop
	}
	return r
}
