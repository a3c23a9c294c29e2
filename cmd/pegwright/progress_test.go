package main

import (
	"bytes"
	"context"
	"fmt"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"sync"
	"testing"
)

// drawnWatched draws a small sample and returns what stands on the error stream.
func drawnWatched(t *testing.T, watched bool) string {
	t.Helper()
	var errs bytes.Buffer
	s := &streams{ctx: context.Background(), out: &bytes.Buffer{}, errs: &errs, watched: watched}
	code := dispatch(s, []string{"draw", filepath.Join("..", "..", "samples", "rail-and-post.yaml"), "--out", filepath.Join(t.TempDir(), "packet")})
	if code != exitDone && code != exitStop {
		t.Fatalf("code %d: %s", code, errs.String())
	}
	return errs.String()
}

// On a terminal the count of sheets is written over one line, grows to the
// number of all sheets, and is gone before the findings are told. What stays is
// what is written when nobody watches.
func TestProgressOnTerminal(t *testing.T) {
	text := drawnWatched(t, true)
	at := strings.LastIndex(text, "\r\x1b[K")
	if at < 0 {
		t.Fatalf("no progress in %q", text)
	}
	shown, rest := text[:at], text[at+len("\r\x1b[K"):]
	if strings.Contains(shown, "\n") {
		t.Errorf("progress takes more than one line: %q", shown)
	}
	last := 0
	counts := regexp.MustCompile(`sheets (\d+) of (\d+)`).FindAllStringSubmatch(shown, -1)
	for _, c := range counts {
		done, _ := strconv.Atoi(c[1])
		if done <= last && done > 0 {
			t.Errorf("%d sheets after %d", done, last)
		}
		last = done
	}
	if len(counts) < 3 || counts[len(counts)-1][1] != counts[len(counts)-1][2] {
		t.Errorf("the count does not run to its end: %q", counts)
	}
	piped := drawnWatched(t, false)
	cut := func(s string) string { before, _, _ := strings.Cut(s, "wrote "); return before }
	if cut(rest) != cut(piped) {
		t.Errorf("after progress stands %q, without it %q", cut(rest), cut(piped))
	}
}

// Nothing moves where nobody watches.
func TestNoProgressWhenPiped(t *testing.T) {
	if text := drawnWatched(t, false); strings.ContainsAny(text, "\r\x1b") {
		t.Errorf("%q", text)
	}
	if moves(&bytes.Buffer{}) {
		t.Error("a buffer is taken for a terminal")
	}
}

// What is told from many sides at once comes out line by line, and nothing
// after the end.
func TestProgressEnds(t *testing.T) {
	var b bytes.Buffer
	p := &progress{w: &b}
	var all sync.WaitGroup
	for i := range 8 {
		all.Go(func() { p.show(fmt.Sprintf("part %d.", i)) })
	}
	all.Wait()
	p.end()
	p.show("late")
	if got := b.String(); strings.Count(got, ".") != 8 || !strings.HasSuffix(got, "\r\x1b[K") {
		t.Errorf("%q", got)
	}
}
