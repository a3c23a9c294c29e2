//go:build !linux

package disk

// createUnnamed says that every file has a name here.
func createUnnamed(name string, data []byte) error { return errNoUnnamed }
