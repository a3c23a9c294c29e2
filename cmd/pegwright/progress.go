package main

import (
	"fmt"
	"io"
	"os"
	"sync"

	"golang.org/x/term"
)

// isTerminal reports whether somebody reads w on a terminal.
func isTerminal(w io.Writer) bool {
	f, ok := w.(*os.File)
	return ok && term.IsTerminal(int(f.Fd()))
}

// moves reports whether w is a terminal on which a line can be written over.
func moves(w io.Writer) bool { return isTerminal(w) && os.Getenv("TERM") != "dumb" }

// progress shows on one line of a terminal, written over again and again, how
// far long work has come. Where nobody watches it shows nothing. It may be told
// by many at a time.
type progress struct {
	w     io.Writer
	mu    sync.Mutex
	shown string
	over  bool
}

// progress begins to show how far work has come.
func (s *streams) progress() *progress {
	return &progress{w: s.errs, over: !s.watched}
}

// show puts text in the place of what stands there.
func (p *progress) show(text string) {
	p.mu.Lock()
	defer p.mu.Unlock()
	if p.over || text == p.shown {
		return
	}
	p.shown = text
	fmt.Fprintf(p.w, "\r\x1b[K%s", text) // ECMA-48, 8.3.41: erase to the end of the line
}

// sheets tells how many sheets are done, at each hundredth of all.
func (p *progress) sheets(done, all int) {
	if done == all || done%max(1, all/100) == 0 {
		p.show(fmt.Sprintf("sheets %d of %d", done, all))
	}
}

// end takes the line away. What is told afterwards, by work that was given up,
// is not shown.
func (p *progress) end() {
	p.mu.Lock()
	defer p.mu.Unlock()
	if !p.over && p.shown != "" {
		io.WriteString(p.w, "\r\x1b[K")
	}
	p.over = true
}
