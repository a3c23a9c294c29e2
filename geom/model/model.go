// Package model writes the solved frame as JSON for other programs: the format
// "pegwright-model/1". Blanks, cuts and bores are all that is needed to rebuild
// every net timber with any solid modeller.
//
// Lengths are millimetres, weights kilograms. Timber entries are in the
// timber's own axes, joint entries in frame axes, and a timber's placement maps
// the first to the second. Face loops run counter-clockwise seen from outside.
package model

import (
	"bytes"
	"encoding/json"
	"fmt"

	"pegwright/geom"
	"pegwright/geom/finding"
)

// Format names the format and its version.
const Format = "pegwright-model/1"

// JSON returns the frame and its findings as one JSON document, one entry a
// line. The same frame gives the same bytes. It fails if a number of the frame
// is not finite.
func JSON(f *geom.Frame, finds []finding.Finding) ([]byte, error) {
	w := &writer{}
	w.text(`{"format": `)
	w.value(Format)
	w.text(`, "title": `)
	w.value(f.Title)
	list(w, "timbers", f.Timbers, timberEntry)
	list(w, "joints", f.Joints, jointEntry)
	list(w, "steps", f.Steps, stepEntry)
	list(w, "findings", finds, findingEntry)
	w.text("}\n")
	if w.err != nil {
		return nil, fmt.Errorf("model: %w", w.err)
	}
	return w.buf.Bytes(), nil
}

// Findings returns the findings alone, in the format "pegwright-findings/1".
func Findings(finds []finding.Finding) ([]byte, error) {
	w := &writer{}
	w.text(`{"format": "pegwright-findings/1"`)
	list(w, "findings", finds, findingEntry)
	w.text("}\n")
	if w.err != nil {
		return nil, fmt.Errorf("findings: %w", w.err)
	}
	return w.buf.Bytes(), nil
}

// writer collects the document and keeps the first error.
type writer struct {
	buf bytes.Buffer
	err error
}

func (w *writer) text(s string) { w.buf.WriteString(s) }

// value writes one value on one line.
func (w *writer) value(v any) {
	if w.err != nil {
		return
	}
	var line bytes.Buffer
	enc := json.NewEncoder(&line)
	enc.SetEscapeHTML(false)
	if w.err = enc.Encode(v); w.err == nil {
		w.buf.Write(bytes.TrimRight(line.Bytes(), "\n"))
	}
}

// list writes a member of the document that is a list, one entry a line.
func list[T, E any](w *writer, name string, items []T, entry func(T) E) {
	w.text(",\n\"" + name + "\": [")
	for i, it := range items {
		if i > 0 {
			w.text(",")
		}
		w.text("\n ")
		w.value(entry(it))
	}
	w.text("]")
}
