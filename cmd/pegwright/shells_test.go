//go:build renderers

package main

import (
	"os"
	"os/exec"
	"strings"
	"testing"
)

// completed asks bash itself what it would offer for the last of words.
func completed(t *testing.T, words ...string) string {
	t.Helper()
	t.Chdir(t.TempDir())
	script := bashScript() + "COMP_WORDS=(" + strings.Join(words, " ") + " ''); COMP_CWORD=" + string(rune('0'+len(words))) + "\n_pegwright\nprintf '%s\\n' \"${COMPREPLY[@]}\"\n"
	if err := os.WriteFile("complete.sh", []byte(script), 0o666); err != nil {
		t.Fatal(err)
	}
	out, err := exec.Command("bash", "complete.sh").CombinedOutput()
	if err != nil {
		t.Fatalf("%v: %s", err, out)
	}
	return " " + strings.Join(strings.Fields(string(out)), " ") + " "
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
	} {
		got := completed(t, c.words...)
		for _, w := range c.want {
			if !strings.Contains(got, " "+w+" ") {
				t.Errorf("%v: %s lacks %s", c.words, got, w)
			}
		}
	}
}
