package main

import (
	"path/filepath"

	"pegwright/draw/packet"
	"pegwright/geom/finding"
)

const drawUsage = `pegwright draw [FRAME.yaml] [--out DIR] [--set name=value]

Draws the packet: index.html to look at it, packet.pdf, templates.pdf (print at
100 %), every sheet as SVG, the lists and the model. No FRAME: the built-in
sample. "-" reads standard input. Findings go to the error stream.

  --out DIR          folder for the packet (FRAME-packet in this folder)
  --set name=value   replace a parameter of the description; may be repeated

The folder is replaced as a whole or not at all. A folder that is not a packet
is refused, and files of your own in a packet stay in it. With a finding that
says stop the packet is drawn all the same, exit code 1: sheets of the joints
in question say DO NOT CUT, and have no full-size templates.

  pegwright draw
  pegwright draw store.yaml --out plans/store
`

func runDraw(s *streams, args []string) int {
	f := flags("draw")
	out, sets := f.String("out", "", ""), frameFlags(f)
	if code, done := s.parse(f, args); done {
		return code
	}
	if f.Changed("out") && (*out == "" || *out == "-") {
		return s.refuse("--out wants the name of a folder")
	}
	fr, code := s.load(f.Args(), *sets)
	if fr == nil {
		return code
	}
	if *out == "" {
		*out = fr.name + "-packet"
	}
	return s.drawInto(fr, *out)
}

// drawInto builds the packet and writes it. The folder is looked at before the
// work, so that a refusal comes at once, and again when writing.
func (s *streams) drawInto(fr *solved, out string) int {
	if err := refusal(out); err != nil {
		return s.fail("%s", err)
	}
	type answer struct {
		p     *packet.Packet
		err   error
		crash any
	}
	a, ok := await(s.ctx, func() (a answer) {
		defer func() { a.crash = recover() }()
		a.p, a.err = packet.Build(packet.Input{Frame: fr.frame, Findings: nearby(fr.finds), Source: fr.source, Name: fr.name})
		return a
	})
	switch {
	case !ok:
		return s.fail("%s", errInterrupted)
	case a.crash != nil:
		panic(a.crash)
	case a.err != nil:
		return s.fail("internal fault: %s", a.err)
	}
	if err := writePacket(s.ctx, out, a.p.Files); err != nil {
		return s.fail("%s", err)
	}
	s.errs.Write([]byte(findingsText(fr.finds)))
	s.say("wrote %s: %d sheets, %d full-size templates, packet %s; open %s",
		out, a.p.Sheets, a.p.FullSize, a.p.Mark, filepath.Join(out, packet.IndexFile))
	return codeFor(fr.finds)
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
