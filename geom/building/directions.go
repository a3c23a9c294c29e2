package building

import "pegwright/geom/vec"

const inch = 25.4 // mm, exactly

// The directions of the frame: x runs east, y north, z up.
var (
	east, north, up   = vec.V{X: 1}, vec.V{Y: 1}, vec.V{Z: 1}
	west, south, down = vec.V{X: -1}, vec.V{Y: -1}, vec.V{Z: -1}
)
