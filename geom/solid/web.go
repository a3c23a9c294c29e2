package solid

// web numbers the edges between points, an edge being the same whichever way it
// runs. Each is found in a list at its lesser end, where few begin.
type web struct {
	newest []int32 // per point: the newest edge at it, counted from 1; 0 for none
	edges  []strand
}

// strand is an edge of a web from its lesser point to its greater one, and the
// edge that was found there before it, counted from 1.
type strand struct{ lo, hi, older int32 }

// reset forgets all edges and makes room for those between so many points.
func (w *web) reset(points, edges int) {
	if cap(w.newest) < points {
		w.newest = make([]int32, points)
	}
	if cap(w.edges) < edges {
		w.edges = make([]strand, 0, edges)
	}
	w.newest, w.edges = w.newest[:points], w.edges[:0]
	clear(w.newest)
}

// number returns the number of the edge between two points, a new one unless it
// is known.
func (w *web) number(a, b int) int {
	lo, hi := int32(min(a, b)), int32(max(a, b))
	for i := w.newest[lo]; i > 0; i = w.edges[i-1].older {
		if w.edges[i-1].hi == hi {
			return int(i - 1)
		}
	}
	w.edges = append(w.edges, strand{lo, hi, w.newest[lo]})
	w.newest[lo] = int32(len(w.edges))
	return len(w.edges) - 1
}

// lists keeps, for each of many keys, the numbers of the things that have it, in
// order.
type lists struct {
	first []int32 // per key: the first thing, counted from 1; 0 for none
	next  []int32 // per thing: the next with its key, counted so too
}

// fill lists so many things by their keys, of which there are so many.
func (l *lists) fill(keys, things int, key func(thing int) int32) {
	if len(l.first) < keys {
		l.first = make([]int32, keys)
	}
	if cap(l.next) < things {
		l.next = make([]int32, things)
	}
	l.next = l.next[:things]
	for i := things - 1; i >= 0; i-- {
		k := key(i)
		l.next[i], l.first[k] = l.first[k], int32(i+1)
	}
}

// empty forgets the things that have a key.
func (l *lists) empty(key int32) { l.first[key] = 0 }
