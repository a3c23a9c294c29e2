package disk_test

import (
	"context"
	"fmt"
	"os"
	"path/filepath"

	"pegwright/cmd/pegwright/disk"
	"pegwright/draw/packet"
)

// A packet takes the place of the one before it, and a note that somebody put
// into its folder stays.
func Example() {
	base, err := os.MkdirTemp("", "")
	if err != nil {
		fmt.Println(err)
		return
	}
	defer os.RemoveAll(base)
	out := filepath.Join(base, "store-packet")
	for _, name := range []string{"old.svg", "new.svg"} {
		files := []packet.File{{Path: name, Data: []byte("<svg/>")}}
		if err := disk.Write(context.Background(), out, files); err != nil {
			fmt.Println(err)
			return
		}
		if name == "old.svg" {
			os.WriteFile(filepath.Join(out, "note.txt"), []byte("mine"), 0o666)
		}
	}
	list, _ := os.ReadDir(out)
	for _, e := range list {
		fmt.Println(e.Name())
	}
	// Output:
	// new.svg
	// note.txt
	// packet-manifest.json
}
