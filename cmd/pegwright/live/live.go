// Package live is a page on the loopback address that shows a frame while its
// description is being written: it redraws when the file is saved, keeps the
// last good drawing when the file is broken, and takes other values for the
// parameters without touching the file. It serves what it has drawn from
// memory; no path of a request ever reaches the disk.
package live

import (
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"maps"
	"slices"
	"strings"
	"sync"

	"pegwright/draw/packet"
	"pegwright/geom/finding"
)

// Parameter is a named value of the description.
type Parameter struct {
	Name   string `json:"name"`
	Source string `json:"source"` // as written
	Value  string `json:"value"`  // as shown
}

// Solved is what one description came to: faults, or a frame that is ready to
// be drawn.
type Solved struct {
	Title      string
	Parameters []Parameter
	Findings   []finding.Finding
	Faults     finding.Faults
	Draw       func() (*packet.Packet, error) // nil with faults
}

// Solver reads and solves a description with other values for some parameters.
type Solver func(source []byte, sets map[string]string) Solved

// drawing is a description with settings, solved once and drawn once.
type drawing struct {
	key    string
	solved Solved
	once   sync.Once
	packet *packet.Packet
	files  map[string][]byte
	err    error
}

// drawn draws the packet the first time it is asked for.
func (d *drawing) drawn() (*packet.Packet, error) {
	d.once.Do(func() {
		d.packet, d.err = d.solved.Draw()
		d.files = map[string][]byte{}
		if d.err == nil {
			for _, f := range d.packet.Files {
				d.files[f.Path] = f.Data
			}
		}
	})
	return d.packet, d.err
}

// kept is how many drawings are held in memory, so that a page that still shows
// the last one can go on fetching from it.
const kept = 4

// book holds the drawings made last, and the last good one for every set of
// parameters that it still holds.
type book struct {
	mu     sync.Mutex
	solve  Solver
	recent []*drawing // the latest last
	good   *drawing
}

// of returns the drawing of a description with settings.
func (b *book) of(source []byte, sets map[string]string) *drawing {
	b.mu.Lock()
	defer b.mu.Unlock()
	key := keyOf(source, sets)
	for _, d := range b.recent {
		if d.key == key {
			return d
		}
	}
	d := &drawing{key: key, solved: b.solve(source, sets)}
	b.recent = append(b.recent, d)
	if len(b.recent) > kept {
		b.recent = slices.Delete(b.recent, 0, 1)
	}
	if len(d.solved.Faults) == 0 {
		b.good = d
	}
	return d
}

// find returns the drawing with the key, nil when it is gone.
func (b *book) find(key string) *drawing {
	b.mu.Lock()
	defer b.mu.Unlock()
	for _, d := range b.recent {
		if d.key == key {
			return d
		}
	}
	if b.good != nil && b.good.key == key {
		return b.good
	}
	return nil
}

func (b *book) lastGood() *drawing {
	b.mu.Lock()
	defer b.mu.Unlock()
	return b.good
}

// keyOf names a description with settings: figures that say nothing of where
// they come from.
func keyOf(source []byte, sets map[string]string) string {
	h := sha256.New()
	h.Write(source)
	for _, name := range slices.Sorted(maps.Keys(sets)) {
		h.Write([]byte("\x00" + name + "\x00" + sets[name]))
	}
	return hex.EncodeToString(h.Sum(nil))[:16]
}

// message is a finding or a fault as the page shows it.
type message struct {
	Severity string   `json:"severity"`
	Rule     string   `json:"rule"`
	Text     string   `json:"text"`
	Mend     string   `json:"mend"`
	Line     int      `json:"line"`
	Column   int      `json:"column"`
	Snippet  string   `json:"snippet"`
	About    []string `json:"about"`
}

// state is what the page asks for first: quick to make, without a drawing.
type state struct {
	Title      string      `json:"title"`
	Key        string      `json:"key"`  // of this description
	Show       string      `json:"show"` // of the drawing to show; "" for none
	Parameters []Parameter `json:"parameters"`
	Faults     []message   `json:"faults"`
	Findings   []message   `json:"findings"`
}

func (b *book) state(source []byte, sets map[string]string) state {
	d := b.of(source, sets)
	lines := strings.Split(string(source), "\n")
	st := state{Title: d.solved.Title, Key: d.key, Parameters: []Parameter{}, Faults: []message{}, Findings: []message{}}
	for _, f := range d.solved.Faults {
		st.Faults = append(st.Faults, message{"fault", "", f.Said(), f.Mend, f.At.Line, f.At.Col, lineAt(lines, f.At.Line), []string{}})
	}
	show := d
	if len(st.Faults) > 0 {
		show = b.lastGood()
	}
	if show == nil {
		return st
	}
	st.Show, st.Title = show.key, show.solved.Title
	st.Parameters = append(st.Parameters, show.solved.Parameters...)
	for _, f := range show.solved.Findings {
		about := append(append([]string{}, f.Joints...), f.Timbers...)
		st.Findings = append(st.Findings, message{f.Severity.String(), f.Rule, f.Text, f.Mend, f.At.Line, f.At.Col, lineAt(lines, f.At.Line), about})
	}
	if len(st.Faults) > 0 {
		for i := range st.Findings {
			st.Findings[i].Snippet = "" // the file has changed since
		}
	}
	return st
}

func lineAt(lines []string, n int) string {
	if n < 1 || n > len(lines) {
		return ""
	}
	return strings.TrimRight(lines[n-1], "\r ")
}

// sheetEntry is one sheet as the page lists it.
type sheetEntry struct {
	Number int    `json:"number"`
	Kind   string `json:"kind"`
	ID     string `json:"id"`
	Title  string `json:"title"`
	Group  string `json:"group"`
	SVG    string `json:"svg"`
}

func sheetsJSON(p *packet.Packet) []byte {
	out := []sheetEntry{}
	for _, e := range p.Contents {
		out = append(out, sheetEntry{e.Number, e.Kind, e.ID, e.Title, e.Group, e.SVG})
	}
	b, _ := json.Marshal(out) // strings and whole numbers only: cannot fail
	return b
}
