package main

import (
	"errors"
	"io/fs"
	"path/filepath"
	"strings"

	"pegwright/cmd/pegwright/disk"
	"pegwright/cmd/pegwright/plain"
	"pegwright/samples"
)

func startCommand() command {
	return command{name: "start", short: "write a commented description to begin with", operands: "FILE",
		about:    "Writes a commented description into FILE, a plain text file to change in any editor. FILE must not exist: it is never overwritten.\nThe samples are " + strings.Join(samples.Names(), ", ") + ".",
		options:  []option{{name: "from", value: "SAMPLE", fallback: samples.Default(), about: "which sample to begin with (" + samples.Default() + ")"}},
		examples: []string{"pegwright start store.yaml", "pegwright check store.yaml"}, run: runStart}
}

func runStart(s *streams, a given) int {
	from := a.text("from")
	if len(a.rest) != 1 || a.rest[0] == "-" || a.rest[0] == "" {
		return s.refuse("start wants the name of one new file, such as: pegwright start store.yaml")
	}
	src, ok := samples.Source(from)
	if !ok {
		return s.refuse("there is no sample %s%s; the samples are %s",
			plain.Quoted(from), nearest(from, samples.Names()), strings.Join(samples.Names(), ", "))
	}
	name := a.rest[0]
	err := disk.Create(name, src)
	if errors.Is(err, fs.ErrExist) {
		return s.fail("cannot write %s: it exists already and is left as it is; name another file", plain.Quoted(name))
	}
	if dir := filepath.Dir(name); errors.Is(err, fs.ErrNotExist) && !exists(dir) {
		return s.fail("cannot write %s: the folder %s does not exist; make it first", plain.Quoted(name), plain.Quoted(dir))
	}
	if err != nil {
		return s.fail("cannot write %s: %s", plain.Quoted(name), plain.Reason(err))
	}
	s.say("wrote %s, begun from %s; next: change it in a text editor, and say pegwright check %s", name, from, plain.Typed(name))
	return exitDone
}
