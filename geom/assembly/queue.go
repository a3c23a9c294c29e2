package assembly

import "container/heap"

// queue holds the units of a planner that are worth trying, by their place in
// the crew's order. A unit that was tried in vain waits for the bodies that
// stood in its way, and is worth trying again once one of them has gone.
type queue struct {
	ready   places
	in      []bool        // by place: in ready
	waiting map[int][]int // places by timber, woken when it goes
	blocked [][]int       // by place: the bodies that stood in its way when it was last tried
}

func newQueue(n int) *queue {
	q := &queue{in: make([]bool, n), waiting: map[int][]int{}, blocked: make([][]int, n)}
	for k := range n {
		q.push(k)
	}
	return q
}

func (q *queue) push(k int) {
	if !q.in[k] {
		q.in[k] = true
		heap.Push(&q.ready, k)
	}
}

func (q *queue) pop() int {
	k := heap.Pop(&q.ready).(int)
	q.in[k] = false
	return k
}

// wait keeps the unit at place k until timber i has gone.
func (q *queue) wait(k, i int) { q.waiting[i] = append(q.waiting[i], k) }

// gone wakes what waited for timber i.
func (q *queue) gone(i int) {
	for _, k := range q.waiting[i] {
		q.push(k)
	}
	delete(q.waiting, i)
}

// places is a heap of places, least first.
type places []int

func (h places) Len() int           { return len(h) }
func (h places) Less(a, b int) bool { return h[a] < h[b] }
func (h places) Swap(a, b int)      { h[a], h[b] = h[b], h[a] }
func (h *places) Push(x any)        { *h = append(*h, x.(int)) }
func (h *places) Pop() any {
	last := len(*h) - 1
	x := (*h)[last]
	*h = (*h)[:last]
	return x
}
