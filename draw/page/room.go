package page

import (
	"math"

	"pegwright/draw"
	"pegwright/draw/font"
	"pegwright/geom/vec"
)

// Crosses reports whether a segment has a point in the box.
func Crosses(a, b vec.P, box draw.Box) bool {
	if max(a.X, b.X) < box.Min.X || min(a.X, b.X) > box.Max.X || max(a.Y, b.Y) < box.Min.Y || min(a.Y, b.Y) > box.Max.Y {
		return false
	}
	// Else it misses the box only if all four corners lie on one side of its line.
	along, to := b.Sub(a), box.Mid().Sub(a)
	reach := vec.At(math.Abs(along.X), math.Abs(along.Y)).Dot(vec.At(box.H(), box.W()))
	return 2*math.Abs(along.Cross(to)) <= reach
}

// Overlap reports whether two boxes share some of the paper.
func Overlap(a, b draw.Box) bool {
	return a.Min.X < b.Max.X && b.Min.X < a.Max.X && a.Min.Y < b.Max.Y && b.Min.Y < a.Max.Y
}

// Hits reports whether an item touches a box.
func Hits(it draw.Item, b draw.Box) bool {
	switch t := it.(type) {
	case *draw.Path:
		for i := range t.Pts {
			if i+1 < len(t.Pts) && Crosses(t.Pts[i], t.Pts[i+1], b) {
				return true
			}
		}
		return t.Closed && len(t.Pts) > 2 && Crosses(t.Pts[len(t.Pts)-1], t.Pts[0], b)
	case *draw.Text:
		return Overlap(font.Turned(t), b)
	}
	return Overlap(draw.ItemBounds(it), b)
}

// AnyHits reports whether an item stands in a box.
func AnyHits(items []draw.Item, b draw.Box) bool {
	for _, it := range items {
		if Hits(it, b) {
			return true
		}
	}
	return false
}

// Obstacle is an item that is asked many times whether it touches a box.
type Obstacle struct {
	around draw.Box
	path   *draw.Path // nil for an item that takes up all the box around it
}

// ObstacleOf returns an item as an obstacle. What it tells is as the item was then.
func ObstacleOf(it draw.Item) Obstacle {
	switch t := it.(type) {
	case *draw.Path:
		return Obstacle{draw.ItemBounds(t), t}
	case *draw.Text:
		return Obstacle{font.Turned(t), nil}
	}
	return Obstacle{draw.ItemBounds(it), nil}
}

// Hits reports what the function Hits reports of the item.
func (o Obstacle) Hits(b draw.Box) bool {
	if o.path == nil {
		return Overlap(o.around, b)
	}
	apart := o.around.Min.X > b.Max.X || b.Min.X > o.around.Max.X || o.around.Min.Y > b.Max.Y || b.Min.Y > o.around.Max.Y
	return !apart && Hits(o.path, b)
}
