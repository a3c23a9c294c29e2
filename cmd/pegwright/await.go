package main

import "context"

// await runs work and returns its result, or ok == false when ctx ends first.
// Work that was given up goes on until the program ends, so it must change
// nothing outside itself.
func await[T any](ctx context.Context, work func() T) (result T, ok bool) {
	if ctx.Err() != nil {
		return result, false
	}
	done := make(chan T, 1)
	go func() { done <- work() }()
	select {
	case result = <-done:
		return result, true
	case <-ctx.Done():
		return result, false
	}
}
