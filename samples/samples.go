// Package samples holds the frame descriptions that come with the program. The
// first one is drawn when no description is named.
package samples

import (
	"embed"
	"io/fs"
)

//go:embed *.yaml
var files embed.FS

// Default is the name of the sample that is drawn when none is named.
func Default() string { return "apiary-store" }

// Names returns the names of all samples, the default one first.
func Names() []string {
	names := []string{Default()}
	list, err := fs.Glob(files, "*.yaml")
	if err != nil {
		return names
	}
	for _, f := range list {
		if n := f[:len(f)-len(".yaml")]; n != Default() {
			names = append(names, n)
		}
	}
	return names
}

// Source returns the text of the sample with the given name; ok is false when
// there is none.
func Source(name string) (text []byte, ok bool) {
	text, err := files.ReadFile(name + ".yaml")
	return text, err == nil
}
