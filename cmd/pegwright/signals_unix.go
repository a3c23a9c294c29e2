//go:build unix

package main

import (
	"os"
	"os/signal"
	"syscall"
)

// interrupts are the signals that ask the program to end.
func interrupts() []os.Signal { return []os.Signal{os.Interrupt, syscall.SIGTERM} }

// ignoreSignals makes a reader that goes away, and a file that the system lets
// grow no further, errors of writing, which end with an exit code and a message,
// and not signals.
func ignoreSignals() { signal.Ignore(syscall.SIGPIPE, syscall.SIGXFSZ) }
