//go:build renderers

package main

import (
	"os"
	"os/exec"
	"slices"
	"strings"
	"testing"
)

// completed asks bash itself what it would offer for the last of words.
func completed(t *testing.T, words ...string) []string {
	t.Helper()
	t.Chdir(t.TempDir())
	if err := os.WriteFile("my shed.yaml", nil, 0o666); err != nil {
		t.Fatal(err)
	}
	script := bashScript() + "COMP_WORDS=(" + strings.Join(words, " ") + " ''); COMP_CWORD=" + string(rune('0'+len(words))) + "\n_pegwright\nprintf '%s\\n' \"${COMPREPLY[@]}\"\n"
	if err := os.WriteFile("complete.sh", []byte(script), 0o666); err != nil {
		t.Fatal(err)
	}
	out, err := exec.Command("bash", "complete.sh").CombinedOutput()
	if err != nil {
		t.Fatalf("%v: %s", err, out)
	}
	return strings.Split(string(out), "\n")
}

func TestBashCompletes(t *testing.T) {
	for _, c := range []struct {
		words []string
		want  []string
	}{
		{[]string{"pegwright"}, []string{"draw", "schema"}},
		{[]string{"pegwright", "check", "--as"}, []string{"text", "json"}},
		{[]string{"pegwright", "start", "--from"}, []string{"rail-and-post"}},
		{[]string{"pegwright", "lists"}, []string{"bores", "--as", "complete.sh"}},
		{[]string{"pegwright", "check", "--as", "="}, []string{"text", "json"}},
		{[]string{"pegwright", "draw"}, []string{"my shed.yaml"}},
	} {
		got := completed(t, c.words...)
		for _, w := range c.want {
			if !slices.Contains(got, w) {
				t.Errorf("%v: %q lacks %s", c.words, got, w)
			}
		}
	}
}
