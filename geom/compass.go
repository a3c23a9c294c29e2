package geom

import (
	"math"

	"pegwright/geom/vec"
)

// Compass names the level part of a direction in frame axes: x runs east and y
// north, so that one between the two is "northeast". A direction straight up or
// down has none, "".
func Compass(d vec.V) string {
	out := ""
	big := max(math.Abs(d.X), math.Abs(d.Y))
	switch {
	case d.Y > 0.3*big:
		out = "north"
	case d.Y < -0.3*big:
		out = "south"
	}
	switch {
	case d.X > 0.3*big:
		out += "east"
	case d.X < -0.3*big:
		out += "west"
	}
	return out
}

// Heading tells a direction of unit length in frame axes to people at the frame:
// "straight down", "to the north", "up and to the southeast".
func Heading(d vec.V) string {
	switch {
	case d.Z > 0.99:
		return "straight up"
	case d.Z < -0.99:
		return "straight down"
	case d.Z > 0.1:
		return "up and to the " + Compass(d)
	case d.Z < -0.1:
		return "down and to the " + Compass(d)
	}
	return "to the " + Compass(d)
}
