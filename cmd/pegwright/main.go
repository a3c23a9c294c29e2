// Command pegwright reads the description of a small pegged timber frame and
// writes what is needed to cut it: sheets, full-size templates and lists.
//
// Exit codes: 0 done, no finding says stop; 1 solved, but a finding says stop;
// 2 the description or the command line cannot be used, nothing was written;
// 3 cannot read or write, interrupted, or a fault of the program itself.
package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"os/signal"
	"pegwright/cmd/pegwright/plain"
	"syscall"
)

// The exit codes of every command.
const (
	exitDone     = 0
	exitStop     = 1
	exitUnusable = 2
	exitFailed   = 3
)

func main() {
	ignoreSignals()
	paceCollections()
	ctx, stop := signal.NotifyContext(context.Background(), interrupts()...)
	defer stop()
	os.Exit(runContext(ctx, os.Args[1:], os.Stdin, os.Stdout, os.Stderr))
}

// run executes one command line and returns its exit code.
func run(args []string, stdin io.Reader, stdout, stderr io.Writer) int {
	return runContext(context.Background(), args, stdin, stdout, stderr)
}

// streams are what a command reads and writes.
type streams struct {
	ctx     context.Context
	in      io.Reader
	out     io.Writer
	errs    io.Writer
	outErr  error // first error of writing data to out
	machine bool  // findings and faults as JSON
	watched bool  // errs is a terminal whose lines can be written over
}

// runContext is run with a context that an interrupt ends.
func runContext(ctx context.Context, args []string, stdin io.Reader, stdout, stderr io.Writer) (code int) {
	s := &streams{ctx: ctx, in: stdin, out: stdout, errs: stderr, watched: moves(stderr)}
	defer func() {
		if r := recover(); r != nil {
			s.say("pegwright: internal fault: %v", r)
			code = exitFailed
		}
	}()
	code = dispatch(s, args)
	if s.outErr != nil {
		if !errors.Is(s.outErr, syscall.EPIPE) { // whoever reads has seen enough
			s.say("pegwright: cannot write the result: %s", plain.Reason(s.outErr))
		}
		return exitFailed
	}
	return code
}

func dispatch(s *streams, args []string) int {
	if len(args) == 0 {
		fmt.Fprint(s.errs, overview())
		return exitUnusable
	}
	switch args[0] {
	case "-h", "--help":
		return helpCommand().perform(s, nil)
	case "-v", "--version":
		return versionCommand().perform(s, nil)
	}
	if c, ok := commandNamed(args[0]); ok {
		return c.perform(s, args[1:])
	}
	if len(args[0]) > 1 && args[0][0] == '-' {
		return s.refuse("%s: flags come after the command; try: pegwright help", plain.Quoted(args[0]))
	}
	return s.refuse("there is no command %s%s; try: pegwright help", plain.Quoted(args[0]), nearest(args[0], commandNames()))
}
