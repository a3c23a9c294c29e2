package main

import (
	"os"
	"strings"

	"pegwright/samples"
)

// startUsage is the help on start, with the samples that there are.
func startUsage() string {
	return strings.Replace(startText, "SAMPLES", strings.Join(samples.Names(), ", "), 1)
}

const startText = `pegwright start FILE [--from SAMPLE]

Writes a commented description into FILE to begin with. FILE must not exist: it
is never overwritten.

  --from SAMPLE   which sample to begin with, one of
                  SAMPLES

  pegwright start store.yaml
  pegwright check store.yaml
`

func runStart(s *streams, args []string) int {
	f := flags("start")
	from := f.String("from", samples.Default(), "")
	if code, done := s.parse(f, args); done {
		return code
	}
	if f.NArg() != 1 || f.Arg(0) == "-" || f.Arg(0) == "" {
		return s.refuse("start wants the name of one new file, such as: pegwright start store.yaml")
	}
	src, ok := samples.Source(*from)
	if !ok {
		return s.refuse("there is no sample %s%s; the samples are %s",
			quoted(*from), nearest(*from, samples.Names()), strings.Join(samples.Names(), ", "))
	}
	name := f.Arg(0)
	if err := createFile(name, src); err != nil {
		return s.fail("cannot write %s: %s", quoted(name), reason(err))
	}
	s.say("wrote %s, begun from %s; next: pegwright check %s", name, *from, name)
	return exitDone
}

// createFile writes a new file and leaves none behind when it cannot.
func createFile(name string, data []byte) error {
	file, err := os.OpenFile(name, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o666)
	if err != nil {
		return err
	}
	_, err = file.Write(data)
	if err == nil {
		err = file.Sync()
	}
	if e := file.Close(); err == nil {
		err = e
	}
	if err != nil {
		os.Remove(name)
	}
	return err
}
