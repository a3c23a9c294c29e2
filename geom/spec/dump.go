package spec

import (
	"fmt"
	"reflect"
	"strings"

	"pegwright/geom/finding"
)

// Dump writes everything that was read, one value a line with its place, for
// people who look for the stage where something went wrong.
func (d *Description) Dump() string {
	var b strings.Builder
	fmt.Fprintf(&b, "Unit = %s, shown %s\n", d.Unit, d.Units)
	dump(&b, "", reflect.ValueOf(*d))
	return b.String()
}

// dump walks the structs of the description in their order.
func dump(b *strings.Builder, path string, v reflect.Value) {
	if text, at, ok := leaf(v.Interface()); ok {
		if text != "" {
			fmt.Fprintf(b, "%s = %s @%d:%d\n", path, text, at.Line, at.Col)
		}
		return
	}
	switch v.Kind() {
	case reflect.Slice:
		for i := range v.Len() {
			dump(b, fmt.Sprintf("%s[%d]", path, i), v.Index(i))
		}
	case reflect.Struct:
		for i := range v.NumField() {
			f := v.Type().Field(i)
			if f.Type != reflect.TypeFor[finding.Pos]() {
				dump(b, strings.TrimPrefix(path+"."+f.Name, "."), v.Field(i))
			}
		}
	}
}

// leaf writes one value; the text is empty when it was not set.
func leaf(x any) (text string, at finding.Pos, ok bool) {
	set := false
	switch v := x.(type) {
	case Length:
		text, at, set = fmt.Sprintf("%.4f mm", v.MM), v.At, v.Set
	case Number:
		text, at, set = plain(v.V), v.At, v.Set
	case Text:
		text, at, set = fmt.Sprintf("%q", v.S), v.At, v.Set
	case Flag:
		text, at, set = fmt.Sprint(v.On), v.At, v.Set
	case Section:
		text, at, set = fmt.Sprintf("%.4f x %.4f mm", v.A, v.B), v.At, v.Set
	case Pitch:
		text, at, set = fmt.Sprintf("%.6f deg", v.Degrees), v.At, v.Set
	case Flare:
		text, at, set = "1 in "+plain(v.Run), v.At, v.Set
	case Seasoning:
		text, at, set = strings.TrimSpace(v.Word+" "+plain(v.Percent)), v.At, v.Set
	case Drawbore:
		text, at, set = fmt.Sprintf("mode %d %.4f mm", v.Mode, v.MM), v.At, v.Set
	case Along:
		text, at, set = fmt.Sprintf("centred %v %.4f mm", v.Centred, v.MM), v.At, v.Set
	case Param:
		text, at, set = fmt.Sprintf("%s: %s = %.4f (dimension %d)", v.Name, v.Src, v.Value.V, v.Value.Dim), v.At, true
	case Selector:
		text, at, set = fmt.Sprintf("%q all %v roles %q ids %q into %q %q bent %d bay %d wall %q",
			v.Src, v.All, v.Roles, v.IDs, v.IntoRoles, v.IntoIDs, v.Bent, v.Bay, v.Wall), v.At, v.Set
	default:
		return "", at, false
	}
	if !set {
		text = ""
	}
	return text, at, true
}
