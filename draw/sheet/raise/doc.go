// Package raise composes the raising sheets: one picture for each step in which
// the frame goes together, what moves and what it weighs, the pegs to drive,
// what must be braced, and what to check before the next step. They are read by
// helpers who have never seen a frame, so lettering is large and words plain.
package raise
