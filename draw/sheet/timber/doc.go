// Package timber composes the timber sheets: the four faces of a stick unrolled
// in the order it is rolled, its ends, the running dimension from its start end,
// and the table of its cuts in the order they are best made. Timbers that are cut
// alike share their sheets. Plain lengths are broken out, and running dimensions
// are true through the breaks.
package timber
