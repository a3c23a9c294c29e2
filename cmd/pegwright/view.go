package main

import (
	"errors"
	"fmt"
	"os"
	"strconv"

	"pegwright/cmd/pegwright/live"
	"pegwright/cmd/pegwright/plain"
	"pegwright/draw/packet"
	"pegwright/geom/finding"
	"pegwright/geom/spec"
	"pegwright/samples"
)

func viewCommand() command {
	return command{name: "view", short: "a page that redraws as the description is saved", operands: "[FRAME.yaml]",
		about:    "Serves a page on this machine's loopback address and prints where. The page shows every sheet with the findings beside it and redraws when the file is saved; while the file is broken the last good drawing stays and the error shows. Parameters can be tried there without touching the file. It needs no network and ends with Ctrl-C. Without FRAME the built-in sample is shown.",
		options:  []option{{name: "port", value: "N", fallback: "0", about: "the port to listen on (any that is free)"}, setOption()},
		examples: []string{"pegwright view store.yaml", "pegwright view store.yaml --port 8040"}, run: runView}
}

func runView(s *streams, a given) int {
	port, err := strconv.Atoi(a.text("port"))
	if err != nil || port < 0 || port > 65535 {
		return s.refuse("--port is a number up to 65535, not %s", plain.Quoted(a.text("port")))
	}
	if len(a.rest) > 1 {
		return s.refuse("one frame at a time: %s is one too many", plain.Quoted(a.rest[1]))
	}
	if len(a.rest) == 1 && a.rest[0] == "-" {
		return s.refuse("view wants a file that it can look at again, not standard input")
	}
	sets, bad := settings(a.all("set"))
	if sets == nil {
		return s.refuse("--set wants name=value, not %s", plain.Quoted(bad))
	}
	read, name := sampleReader(), samples.Default()
	if len(a.rest) == 1 {
		read, name = fileReader(a.rest[0]), a.rest[0]
		if _, err := read(); err != nil {
			return s.fail("cannot read %s: %s%s", plain.Quoted(name), plain.Reason(err), sampleHint(name))
		}
		read = plainly(read)
	}
	l, err := live.Listen(port)
	if err != nil {
		return s.fail("cannot listen on port %d: %s", port, plain.Reason(err))
	}
	s.say("%s is shown at http://%s/ until you press Ctrl-C", name, l.Addr())
	srv := &live.Server{Read: read, Solve: s.solver(name), Sets: sets}
	if err := srv.Serve(s.ctx, l); err != nil {
		return s.fail("%s", err)
	}
	return exitDone
}

// plainly is a reader that says in plain words why it cannot read.
func plainly(read func() ([]byte, error)) func() ([]byte, error) {
	return func() ([]byte, error) {
		source, err := read()
		if err != nil {
			err = errors.New(plain.Reason(err))
		}
		return source, err
	}
}

func sampleReader() func() ([]byte, error) {
	return func() ([]byte, error) {
		src, ok := samples.Source(samples.Default())
		if !ok {
			return nil, errors.New("the default sample is missing")
		}
		return src, nil
	}
}

func fileReader(name string) func() ([]byte, error) {
	return func() ([]byte, error) {
		info, err := os.Stat(name)
		if err != nil {
			return nil, err
		}
		if info.Size() > mostBytes {
			return nil, errors.New("the file is larger than 4 MB")
		}
		return os.ReadFile(name)
	}
}

// solver solves a description for the page. A crash on one description must not
// end the page: it is shown as a fault.
func (s *streams) solver(name string) live.Solver {
	return func(source []byte, sets map[string]string) (r live.Solved) {
		defer func() {
			if c := recover(); c != nil {
				r = live.Solved{Faults: finding.Faults{{Text: fmt.Sprintf("internal fault: %v", c), Mend: "save the file with another value"}}}
			}
		}()
		fr := &solved{name: baseName(name), source: source}
		if faults := fr.solve(name, sets); len(faults) > 0 {
			return live.Solved{Faults: faults}
		}
		r = live.Solved{Title: fr.frame.Title, Findings: fr.finds}
		for _, p := range fr.desc.Params {
			r.Parameters = append(r.Parameters, live.Parameter{Name: p.Name, Source: p.Src, Value: shownValue(p, fr)})
		}
		r.Draw = func() (p *packet.Packet, err error) {
			defer func() {
				if c := recover(); c != nil {
					err = fmt.Errorf("internal fault: %v", c)
				}
			}()
			return packet.Build(packet.Input{Frame: fr.frame, Findings: nearby(fr.finds), Source: source, Name: fr.name})
		}
		return r
	}
}

func shownValue(p spec.Param, fr *solved) string {
	if mm, ok := p.Value.MM(fr.desc.Unit); ok {
		return fr.frame.Units.Format(mm)
	}
	n, _ := p.Value.Number()
	return strconv.FormatFloat(n, 'g', 6, 64)
}
