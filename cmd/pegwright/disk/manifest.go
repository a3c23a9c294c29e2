package disk

import (
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"sort"

	"pegwright/draw/packet"
)

// manifestFile names the files of a packet; it is written last.
const manifestFile = "packet-manifest.json"

const manifestFormat = "pegwright-packet/1"

// manifest lists every file of a packet but itself, sorted by path.
type manifest struct {
	Format string  `json:"format"`
	Files  []entry `json:"files"`
}

// entry is one file: a relative path with forward slashes, its size in bytes
// and its SHA-256 in hexadecimal figures.
type entry struct {
	Path   string `json:"path"`
	Size   int64  `json:"size"`
	SHA256 string `json:"sha256"`
}

// manifestOf returns the manifest of the files as bytes.
func manifestOf(files []packet.File) ([]byte, error) {
	m := manifest{Format: manifestFormat, Files: []entry{}}
	for _, f := range files {
		sum := sha256.Sum256(f.Data)
		m.Files = append(m.Files, entry{f.Path, int64(len(f.Data)), hex.EncodeToString(sum[:])})
	}
	sort.Slice(m.Files, func(i, j int) bool { return m.Files[i].Path < m.Files[j].Path })
	out, err := json.MarshalIndent(m, "", " ")
	return append(out, '\n'), err
}

// mostManifest is more than any manifest needs.
const mostManifest = 64 << 20

// readManifest returns the manifest of a packet, or why the folder is not one.
func readManifest(dir string) (*manifest, error) {
	name := filepath.Join(dir, manifestFile)
	st, err := os.Lstat(name)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return nil, errors.New("it has no " + manifestFile)
	case err != nil:
		return nil, err
	case !st.Mode().IsRegular() || st.Size() > mostManifest:
		return nil, errors.New("its " + manifestFile + " is not one of ours")
	}
	file, err := os.Open(name)
	if err != nil {
		return nil, err
	}
	defer file.Close()
	text, err := io.ReadAll(io.LimitReader(file, mostManifest))
	if err != nil {
		return nil, err
	}
	var m manifest
	if err := json.Unmarshal(text, &m); err != nil || m.Format != manifestFormat {
		return nil, errors.New("its " + manifestFile + " is not one of ours")
	}
	for _, e := range m.Files {
		if !fs.ValidPath(e.Path) || e.Path == "." {
			return nil, fmt.Errorf("its %s names a path outside it", manifestFile)
		}
	}
	return &m, nil
}

// own returns the paths that belong to the packet: its files and the manifest,
// and separately the folders that hold them.
func (m *manifest) own() (files, dirs map[string]bool) {
	files, dirs = map[string]bool{manifestFile: true}, map[string]bool{}
	for _, e := range m.Files {
		p := filepath.FromSlash(e.Path)
		files[p] = true
		for d := filepath.Dir(p); d != "."; d = filepath.Dir(d) {
			dirs[d] = true
		}
	}
	return files, dirs
}
