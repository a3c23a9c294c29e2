package main

import (
	"fmt"
	"path/filepath"

	"pegwright/cmd/pegwright/disk"
	"pegwright/draw/packet"
	"pegwright/geom/finding"
)

func drawCommand() command {
	return command{name: "draw", short: "draw the packet: sheets, templates, lists", operands: "[FRAME.yaml]",
		about: "Draws the packet: index.html to look at it, packet.pdf, templates.pdf (print at 100 %), every sheet as SVG, the lists and the model. Findings go to the error stream. " + readsFrame + "\n" +
			"The folder is replaced as a whole or not at all. A folder that is not a packet is refused, and files of your own in a packet stay in it. With a finding that says stop the packet is drawn all the same, exit code 1: sheets of the joints in question say DO NOT CUT, and have no full-size templates.",
		options:  []option{{name: "out", value: "DIR", about: "folder for the packet (FRAME-packet in this folder)", files: true}, setOption()},
		examples: []string{"pegwright draw", "pegwright draw store.yaml --out plans/store"}, run: runDraw}
}

func runDraw(s *streams, a given) int {
	out := a.text("out")
	if a.has("out") && (out == "" || out == "-") {
		return s.refuse("--out wants the name of a folder")
	}
	fr, code := s.load(a)
	if fr == nil {
		return code
	}
	if out == "" {
		out = fr.name + "-packet"
	}
	return s.drawInto(fr, out)
}

// drawInto builds the packet and writes it. The folder is looked at before the
// work, so that a refusal comes at once, and again when writing.
func (s *streams) drawInto(fr *solved, out string) int {
	if err := disk.Refusal(out); err != nil {
		return s.fail("%s", err)
	}
	p, err := s.build(fr)
	if err != nil {
		return s.fail("%s", err)
	}
	shown := s.progress()
	shown.show("writing the packet")
	err = disk.Write(s.ctx, out, p.Files)
	shown.end()
	if err != nil {
		return s.fail("%s", err)
	}
	s.findings(fr)
	s.say("wrote %s: %d sheets, %d full-size templates, packet %s", out, p.Sheets, p.FullSize, p.Mark)
	s.say("next: %s", nextSteps(out, p, codeFor(fr.finds)))
	return codeFor(fr.finds)
}

// nextSteps says what to do with a packet.
func nextSteps(out string, p *packet.Packet, code int) string {
	open := "open " + filepath.Join(out, packet.IndexFile) + " in a browser"
	switch {
	case code == exitStop:
		return open + ", and mend what says stop before anything is cut"
	case p.FullSize == 0:
		return open
	}
	return open + "; of templates.pdf print page 1 alone at 100 % and measure it"
}

// build makes the packet and shows how far that has come. It fails when it is
// interrupted, and panics when the work does.
func (s *streams) build(fr *solved) (*packet.Packet, error) {
	type answer struct {
		p     *packet.Packet
		err   error
		crash any
	}
	shown := s.progress()
	defer shown.end()
	shown.show("laying out the sheets")
	a, ok := await(s.ctx, func() (a answer) {
		defer func() { a.crash = recover() }()
		a.p, a.err = packet.Build(packet.Input{Frame: fr.frame, Findings: nearby(fr.finds), Source: fr.source, Name: fr.name, Done: shown.sheets})
		return a
	})
	switch {
	case !ok:
		return nil, disk.ErrInterrupted
	case a.crash != nil:
		panic(a.crash)
	case a.err != nil:
		return nil, fmt.Errorf("internal fault: %w", a.err)
	}
	return a.p, nil
}

// nearby returns the findings with file names without their folders: a packet
// does not depend on where its description was read from.
func nearby(finds []finding.Finding) []finding.Finding {
	out := append([]finding.Finding(nil), finds...)
	for i, f := range out {
		out[i].At.File = shortName(f.At.File)
		out[i].Also = append([]finding.Pos(nil), f.Also...)
		for k, p := range f.Also {
			out[i].Also[k].File = shortName(p.File)
		}
	}
	return out
}

func shortName(file string) string {
	if file == "" {
		return ""
	}
	return filepath.Base(file)
}
