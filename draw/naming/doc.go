// Package naming sets the names of timbers on a view of the frame. A Sight tells
// whose wood is seen at a point and at which places in its wood a timber can be
// pointed to. Set finds a place for every name: in the wood, along it, or as near as
// can be with a leader that ends in a dot on the wood, clear of lines and of other
// words.
//
// Lengths are paper millimetres, y up, where nothing else is said.
package naming
