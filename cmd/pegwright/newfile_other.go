//go:build !linux

package main

// createUnnamed says that every file has a name here.
func createUnnamed(name string, data []byte) error { return errNoUnnamed }
