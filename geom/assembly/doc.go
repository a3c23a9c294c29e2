// Package assembly finds the order in which a solved frame goes together: which
// timbers move, onto what, which way, and which joints close and pegs are driven
// at each step.
//
// It works backwards. From the finished frame it takes away what can leave
// without running into what is left, the last thing a crew would put in first,
// and then turns the list round. Taking wood away never puts anything in the way
// of anything else, so it need not try the same choice twice: when nothing can
// leave, what is left is trapped, and that is a proof.
//
// A move is a straight line, or the two or three straight legs that a joint kind
// gives, or the rearing of a bent: turned up about the line of its feet, which is
// tested as a straight level move that ignores what the bent stands on and is
// allowed when its foot tenons are stubs. Every move is swept over twice the
// engagement of the joints that open, at least 300 mm; beyond that a stick is
// carried clear. Timbers that share wood when they are home are left out of the
// test against each other: that is another finding.
//
// Not considered: rolling a timber in, springing timbers apart, the flex of long
// sticks, the weight of what is lifted, and whether a half-built frame stands by
// itself. Bracing, propping and lifting are for those who raise the frame.
package assembly
