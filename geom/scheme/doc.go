// Package scheme holds a frame while it is being planned: sticks on their
// lines and pacts between them, before any end is cut. It knows the section and
// the wood of a stick, the numbers that a joint would have, and what it would
// take from its receiver, so that whoever lays sticks can try a place, ask what
// is in the way, and take back what does not clear.
//
// What is laid comes from the packages above: a building, or the timbers and
// joints that a description names one by one. The ends of the sticks and the
// wood that each joint really takes are settled later, in package solve.
//
// Lengths are millimetres, in the axes of the frame: x along the building, y
// across it, z up. A stick runs along the x of its own axes; its reference
// arris is its line.
package scheme
