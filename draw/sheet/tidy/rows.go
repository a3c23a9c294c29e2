package tidy

import (
	"encoding/json"
	"testing"

	"pegwright/geom"
	"pegwright/geom/list"
)

// ListRows reads the rows of one list out of the JSON of all, each by the names
// of its columns.
func ListRows(t *testing.T, f *geom.Frame, name string) []map[string]any {
	t.Helper()
	text, err := list.JSON(list.Of(f, nil))
	if err != nil {
		t.Fatal(err)
	}
	var doc struct {
		Lists []struct {
			Name    string
			Columns []struct{ Name string }
			Rows    [][]any
		}
	}
	if err := json.Unmarshal(text, &doc); err != nil {
		t.Fatal(err)
	}
	var out []map[string]any
	for _, l := range doc.Lists {
		for _, r := range l.Rows {
			row := map[string]any{}
			for c, v := range r {
				row[l.Columns[c].Name] = v
			}
			if l.Name == name {
				out = append(out, row)
			}
		}
	}
	return out
}
