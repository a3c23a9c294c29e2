package main

import (
	"errors"
	"io"
	"os"
	"path/filepath"
	"strings"

	"pegwright/cmd/pegwright/disk"
	"pegwright/cmd/pegwright/plain"
	"pegwright/geom"
	"pegwright/geom/check"
	"pegwright/geom/finding"
	"pegwright/geom/solve"
	"pegwright/geom/spec"
	"pegwright/samples"
)

// mostBytes is what is read of a description before giving up; the reader of
// descriptions has a lower limit and says so.
const mostBytes = 4 << 20

// settings turns the values of --set into a map; the last of a name counts.
func settings(values []string) (sets map[string]string, bad string) {
	sets = map[string]string{}
	for _, v := range values {
		name, value, ok := strings.Cut(v, "=")
		name, value = strings.TrimSpace(name), strings.TrimSpace(value)
		if !ok || name == "" || value == "" {
			return nil, v
		}
		sets[name] = value
	}
	return sets, ""
}

// solved is a frame that was read, solved and proved.
type solved struct {
	name   string // short name, for files
	source []byte
	desc   *spec.Description
	frame  *geom.Frame
	finds  []finding.Finding
}

// load reads, solves and proves the frame that args name: nothing for the
// default sample, "-" for standard input, else a file. When it returns nil the
// command is over with the code.
func (s *streams) load(a given) (*solved, int) {
	args := a.rest
	if len(args) > 1 {
		return nil, s.refuse("one frame at a time: %s is one too many", plain.Quoted(args[1]))
	}
	sets, bad := settings(a.all("set"))
	if sets == nil {
		return nil, s.refuse("--set wants name=value, not %s", plain.Quoted(bad))
	}
	f, label, code := s.source(args)
	if f == nil {
		return nil, code
	}
	type answer struct {
		faults finding.Faults
		crash  any
	}
	r, ok := await(s.ctx, func() (r answer) {
		defer func() { r.crash = recover() }()
		r.faults = f.solve(label, sets)
		return r
	})
	switch {
	case !ok:
		return nil, s.fail("%s", disk.ErrInterrupted)
	case r.crash != nil:
		panic(r.crash)
	case len(r.faults) > 0:
		return nil, s.faults(r.faults, f.source)
	}
	return f, exitDone
}

// source reads the description; the label is its name in messages.
func (s *streams) source(args []string) (f *solved, label string, code int) {
	if len(args) == 0 {
		name := samples.Default()
		src, ok := samples.Source(name)
		if !ok {
			return nil, "", s.fail("internal fault: the default sample is missing")
		}
		return &solved{name: name, source: src}, name + ".yaml", exitDone
	}
	name, in := args[0], s.in
	if name != "-" {
		file, err := os.Open(name)
		if err != nil {
			return nil, "", s.fail("cannot read %s: %s%s", plain.Quoted(name), plain.Reason(err), sampleHint(name))
		}
		defer file.Close()
		in = file
	}
	src, err := s.readAll(in)
	switch {
	case errors.Is(err, disk.ErrInterrupted):
		return nil, "", s.fail("%s", err)
	case err != nil:
		return nil, "", s.fail("cannot read %s: %s", plain.Quoted(name), plain.Reason(err))
	}
	if name == "-" {
		return &solved{name: "frame", source: src}, "standard input", exitDone
	}
	return &solved{name: baseName(name), source: src}, name, exitDone
}

// sampleHint says how to get at a sample that was taken for a file, or names
// the description beside a file's wrong name that may have been meant.
func sampleHint(name string) string {
	if _, ok := samples.Source(name); ok {
		return "; there is a sample of that name: pegwright start " + name + ".yaml --from " + name
	}
	if exists(name) {
		return ""
	}
	list, _ := os.ReadDir(filepath.Dir(name)) // no hint without a folder
	var beside []string
	for _, e := range list {
		path := filepath.Join(filepath.Dir(name), e.Name())
		switch {
		case e.IsDir() || baseName(path) == e.Name():
		case baseName(path) == baseName(name):
			return " (did you mean " + path + "?)"
		default:
			beside = append(beside, path)
		}
	}
	return nearest(name, beside)
}

// readAll reads the whole input, unless an interrupt comes first.
func (s *streams) readAll(in io.Reader) ([]byte, error) {
	type answer struct {
		text []byte
		err  error
	}
	a, ok := await(s.ctx, func() answer {
		text, err := io.ReadAll(io.LimitReader(in, mostBytes))
		return answer{text, err}
	})
	if !ok {
		return nil, disk.ErrInterrupted
	}
	return a.text, a.err
}

// baseName returns the name of a file without folder and YAML ending.
func baseName(path string) string {
	base := filepath.Base(path)
	for _, ext := range []string{".yaml", ".yml"} {
		if len(base) > len(ext) && strings.EqualFold(base[len(base)-len(ext):], ext) {
			return base[:len(base)-len(ext)]
		}
	}
	return base
}

// solve takes the description through reading, solving and proving.
func (f *solved) solve(label string, sets map[string]string) finding.Faults {
	d, faults := spec.Read(label, f.source, sets)
	if len(faults) > 0 {
		return faults
	}
	f.desc = d
	f.frame, faults = solve.Solve(d)
	if len(faults) > 0 {
		return faults
	}
	f.finds = check.Check(f.frame)
	finding.Sort(f.finds)
	return nil
}

// exists reports whether there is a file or a folder of that name.
func exists(name string) bool {
	_, err := os.Stat(name)
	return err == nil
}
