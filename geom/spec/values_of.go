package spec

// LengthOf is a length in millimetres that no description wrote: it has no
// place in the file.
func LengthOf(mm float64) Length { return Length{MM: mm, Set: true} }

// NumberOf is a number that no description wrote.
func NumberOf(n float64) Number { return Number{V: n, Set: true} }

// FlagOf is a yes or a no that no description wrote.
func FlagOf(on bool) Flag { return Flag{On: on, Set: true} }

// Centred is the middle of the tenon, where no description says it.
func Centred() Along { return Along{Centred: true, Set: true} }

// Undrawn is a joint whose holes are in line, where no description says it.
func Undrawn() Drawbore { return Drawbore{Mode: DrawNone, Set: true} }
