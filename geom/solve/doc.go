// Package solve turns a description into a frame. Building and named timbers
// are laid on a scheme; then every joint gets its numbers, the lines of the
// sticks are run on to the tips that their joints ask for, blanks are laid, and
// each joint takes its wood: cuts, bores and pegs. Last comes the order in which
// the frame goes together.
//
// A description either makes a frame or is met with faults, each with its place
// in the file and a mend. What makes a frame and is doubtful is a finding: some
// are noted here, the rest by package check.
package solve
