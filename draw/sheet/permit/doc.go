// Package permit composes the set for a building official: what is to be built and
// the criteria as stated with blanks for the rest, plans and elevations with the
// sizes of the timbers, what the frame stands on, a detail of every kind of joint,
// the joints with their reference values, and the load path with blanks for what
// the designer of record decides. Nothing in it is a structural design, and its
// cover says so.
package permit
