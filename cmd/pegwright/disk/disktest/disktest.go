// Package disktest reads packets back from the disk, for tests of what was
// written there. It is written apart from the code that writes.
package disktest

import (
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"sort"
	"testing"
)

// Verify reports why a folder is not one whole packet, every file as its
// manifest says, and names the files in it that are not of the packet.
func Verify(dir string) (foreign []string, err error) {
	text, err := os.ReadFile(filepath.Join(dir, "packet-manifest.json"))
	if err != nil {
		return nil, err
	}
	var m struct {
		Format string
		Files  []struct {
			Path, SHA256 string
			Size         int
		}
	}
	if err := json.Unmarshal(text, &m); err != nil || m.Format != "pegwright-packet/1" || len(m.Files) == 0 {
		return nil, fmt.Errorf("manifest: %v, format %q, %d files", err, m.Format, len(m.Files))
	}
	ours := map[string]bool{"packet-manifest.json": true}
	for _, f := range m.Files {
		ours[f.Path] = true
		data, err := os.ReadFile(filepath.Join(dir, f.Path))
		if err != nil {
			return nil, err
		}
		sum := sha256.Sum256(data)
		if len(data) != f.Size || hex.EncodeToString(sum[:]) != f.SHA256 {
			return nil, fmt.Errorf("%s is not as the manifest says", f.Path)
		}
	}
	err = filepath.WalkDir(dir, func(path string, d fs.DirEntry, err error) error {
		rel, _ := filepath.Rel(dir, path)
		if err == nil && !d.IsDir() && !ours[filepath.ToSlash(rel)] {
			foreign = append(foreign, filepath.ToSlash(rel))
		}
		return err
	})
	return foreign, err
}

// Whole demands one whole packet with nothing else in it.
func Whole(t testing.TB, dir string) {
	t.Helper()
	foreign, err := Verify(dir)
	if err != nil || len(foreign) > 0 {
		t.Errorf("%s: %v, foreign files %v", dir, err, foreign)
	}
}

// Tree returns every file with its bytes, and every folder and link.
func Tree(t testing.TB, dir string) map[string]string {
	t.Helper()
	all := map[string]string{}
	err := filepath.WalkDir(dir, func(path string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		rel, _ := filepath.Rel(dir, path)
		switch {
		case d.IsDir():
			all[rel] = "folder"
		case d.Type()&fs.ModeSymlink != 0:
			to, err := os.Readlink(path)
			all[rel] = "link to " + to
			return err
		default:
			data, err := os.ReadFile(path)
			all[rel] = string(data)
			return err
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	return all
}

// Same compares two trees, and fails the test with the names that differ.
func Same(t testing.TB, a, b map[string]string) {
	t.Helper()
	names := map[string]bool{}
	for n := range a {
		names[n] = true
	}
	for n := range b {
		names[n] = true
	}
	var differ []string
	for n := range names {
		if x, y := a[n], b[n]; x != y {
			differ = append(differ, n)
		}
	}
	sort.Strings(differ)
	if len(differ) > 0 {
		t.Errorf("these differ: %v", differ)
	}
}

// Leftovers are the names that writing uses beside a packet.
func Leftovers(t testing.TB, dir string) []string {
	t.Helper()
	left, err := filepath.Glob(filepath.Join(dir, ".*.pegwright-*"))
	if err != nil {
		t.Fatal(err)
	}
	return left
}
