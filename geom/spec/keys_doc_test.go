package spec_test

import (
	"bytes"
	"flag"
	"fmt"
	"os"
	"strings"
	"testing"

	"pegwright/geom/spec"
)

var update = flag.Bool("update", false, "write samples/KEYS.md anew")

const keysFile = "../../samples/KEYS.md"

const keysHead = `# All keys of a frame description

Made from the tables that the program reads by, with ` + "`go test ./geom/spec -run KeysDocument -update`" + `. For your editor there is ` + "`pegwright schema`" + `.

In a path, ` + "`[]`" + ` is an item of a list and ` + "`<…>`" + ` a name of your own. Keys in bold must be there wherever what they belong to is. A length is written ` + "`7' 6 1/2\"`, `90 1/2\"`, `2299 mm`, `2.3 m`" + ` or as arithmetic on these and on parameters; a bare number takes the file's unit. A section or two lengths: ` + "`6 x 8`" + `. A pitch: ` + "`9 in 12`, `37 deg`" + `. A seasoning: ` + "`green`, `part seasoned`, `dry`" + ` or a moisture content in percent. The datum is the tops of the sills, or the feet of the posts where there are none.
`

// The list of keys that comes with the program is the list that the reader goes
// by, key for key: no key is described that is not there, and none is left out.
func TestKeysDocument(t *testing.T) {
	want := keysDocument()
	if *update {
		if err := os.WriteFile(keysFile, want, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	got, err := os.ReadFile(keysFile)
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(got, want) {
		t.Error("samples/KEYS.md is not what the tables say; write it with -update")
	}
}

func keysDocument() []byte {
	var b bytes.Buffer
	b.WriteString(keysHead)
	settings := map[string]bool{}
	section := ""
	for _, k := range spec.Keys() {
		top, inner, below := strings.Cut(k.Path, ".")
		top = strings.TrimSuffix(top, "[]")
		if top == "layout" && below {
			settings[inner] = true
		}
		switch {
		case strings.HasPrefix(inner, "<role>."), top != "layout" && strings.HasSuffix(k.Path, "[]."+inner) && settings[inner]:
			continue // said once, under layout
		case top != section:
			heading(&b, top, k)
			section = top
		}
		row(&b, k)
	}
	return b.Bytes()
}

func heading(b *bytes.Buffer, top string, k spec.Key) {
	plain := map[bool]string{true: top, false: "Title and units"}
	single := k.Type != "keys" && !strings.HasPrefix(k.Type, "a list") && !strings.Contains(k.Type, " by ") && !strings.HasPrefix(k.Type, "names")
	if single && top != "frame" {
		return // a further line of the first table
	}
	fmt.Fprintf(b, "\n## %s\n\n", plain[!single])
	if top == "joints" || top == "adjust" {
		b.WriteString("Besides these, every key that stands under `layout`.\n\n")
	}
	b.WriteString("| key | value | what it says |\n|---|---|---|\n")
}

func row(b *bytes.Buffer, k spec.Key) {
	name := "`" + k.Path + "`"
	if k.Required {
		name = "**" + name + "**"
	}
	value := k.Type
	if len(k.Words) > 0 && k.Type != "yes or no" {
		value += ": " + strings.Join(k.Words, ", ")
	}
	bars := strings.NewReplacer("|", `\|`) // a bar would end the cell
	fmt.Fprintf(b, "| %s | %s | %s |\n", name, value, bars.Replace(k.Doc))
}
