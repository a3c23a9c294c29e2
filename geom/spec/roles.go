package spec

import "strings"

// Role is a kind of timber, in its singular and plural names.
type Role struct{ Name, Plural string }

// Roles returns every role that a timber may have.
func Roles() []Role {
	return []Role{
		{"sill", "sills"}, {"cross sill", "cross sills"},
		{"post", "posts"}, {"door post", "door posts"}, {"window post", "window posts"}, {"stud", "studs"},
		{"tie", "ties"}, {"plate", "plates"}, {"girt", "girts"}, {"beam", "beams"},
		{"header", "headers"}, {"rail", "rails"}, {"joist", "joists"},
		{"brace", "braces"}, {"strut", "struts"},
		{"rafter", "rafters"}, {"principal rafter", "principal rafters"},
		{"ridge", "ridges"}, {"purlin", "purlins"}, {"collar", "collars"},
		{"king post", "king posts"}, {"queen post", "queen posts"}, {"straining beam", "straining beams"},
		{"ledger", "ledgers"},
	}
}

// RoleNamed finds a role by its singular or plural name and returns the
// singular. Capitals and runs of spaces do not matter.
func RoleNamed(word string) (string, bool) {
	w := strings.ToLower(strings.Join(strings.Fields(word), " "))
	for _, r := range Roles() {
		if w == r.Name || w == r.Plural {
			return r.Name, true
		}
	}
	return "", false
}

func roleNames() []string {
	var out []string
	for _, r := range Roles() {
		out = append(out, r.Name)
	}
	return out
}
