//go:build !linux

package disk

// exchange says that there is no atomic exchange: two renames do instead.
func exchange(a, b string) error { return errNoExchange }
