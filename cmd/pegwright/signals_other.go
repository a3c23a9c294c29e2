//go:build !unix

package main

import "os"

// interrupts are the signals that ask the program to end.
func interrupts() []os.Signal { return []os.Signal{os.Interrupt} }

// ignoreSignals has nothing to do where there are no such signals.
func ignoreSignals() {}
