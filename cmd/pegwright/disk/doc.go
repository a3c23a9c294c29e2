// Package disk writes packets, and single new files, so that a kill, a full disk
// or a loss of power leaves nothing half done.
//
// The promise: after a kill at any moment the folder of a packet is one whole
// packet, every file as its manifest says; or, only where the system cannot
// exchange two folders in one step, it is absent for a moment, with the whole
// old packet beside it, which the next run brings back.
//
//   - A packet is built in a folder beside the old one, synced, and swapped in
//     by rename. The manifest (paths, sizes, SHA-256) is written last.
//   - A folder that is there and is no packet of ours is refused.
//   - Files that are not in the manifest of the old packet are the user's. They
//     are never deleted or changed: they travel to the new folder, and one that
//     stands where the new packet needs its place stops the run.
//   - A second run at the same time is turned away by a lock, which the system
//     drops when a process ends in whatever way.
//   - A run that is interrupted changes nothing.
package disk
