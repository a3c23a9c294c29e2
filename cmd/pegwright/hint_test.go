package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// A file's name with a slip in it, or without its ending, brings up the file
// that is there; a name that is like nothing brings up nothing.
func TestNameOfAFileBesideIt(t *testing.T) {
	dir := t.TempDir()
	there := filepath.Join(dir, "shed.yaml")
	if err := os.WriteFile(there, nil, 0o600); err != nil {
		t.Fatal(err)
	}
	for name, hint := range map[string]bool{"shed": true, "shed.yml": true, "shde.yaml": true, "boathouse-by-the-lake": false} {
		var errs bytes.Buffer
		code := run([]string{"check", filepath.Join(dir, name)}, strings.NewReader(""), &errs, &errs)
		if got := strings.Contains(errs.String(), "did you mean "+there+"?"); got != hint || code != exitFailed {
			t.Errorf("%s: exit code %d, hint %v: %s", name, code, got, errs.String())
		}
	}
}
