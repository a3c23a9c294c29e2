package sheet

import (
	"testing"

	"pegwright/samples"
)

func TestRaiseLayout(t *testing.T) {
	for _, name := range samples.Names() {
		t.Run(name, func(t *testing.T) {
			f := solved(t, name)
			sheets := Raise(f)
			write(t, "raise-"+name, sheets)
			for _, s := range sheets {
				if err := s.Valid(); err != nil {
					t.Error(err)
				}
				checkLayout(t, s)
			}
		})
	}
}
