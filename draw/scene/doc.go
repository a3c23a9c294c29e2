// Package scene makes ready what drawings show of a frame: timbers and joints
// that are cut alike, drawn once; a joint broken off around its cuts and pulled
// apart along its moves; the place from which most of it is seen; and pictures of
// parts of a frame, with what shows of each.
//
// It asks geometry by role and by data and knows no kind of joint. Lengths are
// millimetres, in frame axes where nothing else is said.
package scene
