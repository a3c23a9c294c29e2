package golden

import (
	"fmt"
	"testing"
)

// Words count exactly and numbers to 2e-3, wherever a dump puts them.
func TestDifference(t *testing.T) {
	const line = "cut wall x=12.0000 (1.5,-2) 3..4 of post-1\nend 250000"
	for _, c := range []struct {
		name, got string
		same      bool
	}{
		{"itself", line, true},
		{"numbers that are near", "cut wall x=12.0019 (1.4981,-2) 3.001..4 of post-1\nend 250000.004", true},
		{"a number that is not", "cut wall x=12.0021 (1.5,-2) 3..4 of post-1\nend 250000", false},
		{"the second of a range", "cut wall x=12.0000 (1.5,-2) 3..4.1 of post-1\nend 250000", false},
		{"a sign", "cut wall x=12.0000 (1.5,2) 3..4 of post-1\nend 250000", false},
		{"a large number that is not", "cut wall x=12.0000 (1.5,-2) 3..4 of post-1\nend 250000.006", false},
		{"a word", "cut floor x=12.0000 (1.5,-2) 3..4 of post-1\nend 250000", false},
		{"a name with another number", "cut wall x=12.0000 (1.5,-2) 3..4 of post-2\nend 250000", false},
		{"a word more", "cut wall x=12.0000 (1.5,-2) 3..4 of post-1 6\nend 250000", false},
		{"a line less", "cut wall x=12.0000 (1.5,-2) 3..4 of post-1", false},
		{"not a number", "cut wall x=NaN (1.5,-2) 3..4 of post-1\nend 250000", false},
	} {
		if why := Difference(c.got, line); (why == "") != c.same {
			t.Errorf("%s: %q", c.name, why)
		}
	}
}

// A file that is not there, or not the same, fails the test.
func TestCompareFails(t *testing.T) {
	if *update {
		return // nothing is compared
	}
	for name, fails := range map[string]bool{"rail-and-post.frame.txt": true, "no-such-file.txt": true} {
		r := &recorder{TB: t}
		func() {
			defer func() { _ = recover() }() // a fatal error ends the comparison
			Compare(r, name, "other words")
		}()
		if r.failed != fails {
			t.Errorf("%s: failed %v, want %v", name, r.failed, fails)
		}
	}
}

// recorder is a test that notes whether it failed.
type recorder struct {
	testing.TB
	failed bool
}

func (r *recorder) Helper()               {}
func (r *recorder) Errorf(string, ...any) { r.failed = true }
func (r *recorder) Fatal(...any) {
	r.failed = true
	panic("ended")
}

func ExampleDifference() {
	fmt.Println(Difference("post 0 2438.4001", "post 0 2438.4") == "")
	fmt.Println(Difference("post 0 2438.5", "post 0 2438.4"))
	// Output:
	// true
	// line 1:
	//  got post 0 2438.5
	// want post 0 2438.4
}
