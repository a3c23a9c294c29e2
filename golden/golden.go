// Package golden compares what a test made with the file of that name in this
// folder: words exactly, numbers to 2e-3, so that another architecture's
// rounding does not matter. It proves no number right: it shows which one
// changed. With the flag -update a test writes its file anew. Only tests use it.
package golden

import (
	"errors"
	"flag"
	"io/fs"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
)

var update = flag.Bool("update", false, "write the golden files anew")

// Near is how far two numbers may lie apart, in the unit of the file: mm, as a
// rule. A number above 1e5 may differ in proportion, because a dump writes so
// many figures and no more.
const Near = 2e-3

// Compare fails the test where got differs from the golden file of that name,
// and shows the first line that does. With -update it writes the file instead.
func Compare(t testing.TB, name, got string) {
	t.Helper()
	dir, err := folder()
	if err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(dir, name)
	if *update {
		if err := os.WriteFile(path, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if why := Difference(got, string(want)); why != "" {
		t.Errorf("%s, with -update written anew:\n%s", name, why)
	}
}

// Difference says in which line two texts first differ, "" when they agree.
func Difference(got, want string) string {
	g, w := strings.Split(got, "\n"), strings.Split(want, "\n")
	for i := range min(len(g), len(w)) {
		if !same(g[i], w[i]) {
			return "line " + strconv.Itoa(i+1) + ":\n got " + g[i] + "\nwant " + w[i]
		}
	}
	if len(g) != len(w) {
		return strconv.Itoa(len(g)) + " lines, want " + strconv.Itoa(len(w))
	}
	return ""
}

// same compares two lines word by word.
func same(got, want string) bool {
	g, w := words(got), words(want)
	if len(g) != len(w) {
		return false
	}
	for i := range g {
		if g[i] != w[i] && !near(g[i], w[i]) {
			return false
		}
	}
	return true
}

// words cuts a line where a dump may join two numbers: at spaces, signs of
// punctuation and "..".
func words(line string) []string {
	return strings.FieldsFunc(strings.ReplaceAll(line, "..", " "), func(r rune) bool { return strings.ContainsRune(" ,()[]{}=:", r) })
}

// near reports whether both words are numbers and lie close together.
func near(got, want string) bool {
	x, errX := strconv.ParseFloat(got, 64)
	y, errY := strconv.ParseFloat(want, 64)
	return errX == nil && errY == nil && math.Abs(x-y) <= Near*max(1, math.Abs(y)/1e5)
}

// folder finds the golden files from the folder in which a test runs: beside
// the module's go.mod.
func folder() (string, error) {
	at, err := os.Getwd()
	for err == nil {
		if _, e := os.Stat(filepath.Join(at, "go.mod")); e == nil {
			return filepath.Join(at, "golden"), nil
		}
		if at == filepath.Dir(at) {
			err = errors.New("no go.mod above this folder")
		}
		at = filepath.Dir(at)
	}
	return "", &fs.PathError{Op: "find", Path: "golden", Err: err}
}
