// Package building lays out a building: from its span, bays, eave and roof come
// the sills, posts, plates, ties, braces, girts, openings, floors and rafters of
// a frame, each on its line, and the joints between them.
//
// Defaults must build. Where two joints would meet in one stick, or two sticks
// in one place, a brace gets other legs, girts are staggered, a joist moves
// aside, a long plate is scarfed clear of its joints; what finds no room is left
// out. Whatever is settled otherwise than asked is said in a note.
//
// The generator lays on a scheme and sees nothing of what its joints become:
// ends and cuts are settled in package solve.
package building
