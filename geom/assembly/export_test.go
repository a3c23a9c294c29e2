package assembly

import (
	"pegwright/geom/solid"
	"pegwright/geom/vec"
)

// Hits lets tests ask the sweep itself.
func Hits(a solid.Convex, way vec.V, b solid.Convex) bool {
	s := swept(a, way)
	return s.hits(b, boxOf(b))
}
