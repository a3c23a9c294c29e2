package solve

import (
	"fmt"
	"slices"
	"strings"

	"pegwright/geom/finding"
	"pegwright/geom/spec"
)

// heed is a setting that not every joint heeds.
type heed struct {
	name  string
	kinds []string // that heed it
	at    func(s spec.JointSettings) (finding.Pos, bool)
	// lacks tells what a joint of these kinds, as it was made, lacks to heed the
	// setting: nothing if it is heeded. It is nil where the kind alone decides.
	lacks func(p *settled, s spec.JointSettings) string
}

// written is an entry of the description with settings, and the joints that it
// is about.
type written struct {
	set    spec.JointSettings
	joints []*settled
}

// heeds are the settings that shape one kind of joint and not another, and
// after them those of pegs, which a joint heeds if it has such a peg.
func heeds() []heed {
	square := []string{"mortise and tenon", "sill corner"}
	tenoned := append(square[:2:2], "brace mortise and tenon")
	wedged := append(square[:2:2], "wedged through tenon")
	all := append(tenoned[:3:3], "wedged through tenon")
	braces, wedge, dovetail, pocket := tenoned[2:], wedged[2:], []string{"half-dovetail lap"}, []string{"drop-in pocket"}
	laps := []string{"cross lap", "half lap", "corner lap", "half-dovetail lap"}
	seats, scarfs := []string{"step-lap seat", "birdsmouth seat"}, []string{"half-lap scarf", "splayed scarf"}
	return append([]heed{
		length("thickness", append(all[:4:4], "bridle"), func(s spec.JointSettings) spec.Length { return s.Thickness }),
		length("from reference", append(all[:4:4], "bridle"), func(s spec.JointSettings) spec.Length { return s.FromReference }),
		length("tenon length", tenoned, func(s spec.JointSettings) spec.Length { return s.TenonLength }),
		flag("through", tenoned, func(s spec.JointSettings) spec.Flag { return s.Through }),
		flag("stub", all, func(s spec.JointSettings) spec.Flag { return s.Stub }),
		length("housing", all, func(s spec.JointSettings) spec.Length { return s.Housing }),
		length("hold back start", wedged, func(s spec.JointSettings) spec.Length { return s.HoldBackStart }),
		length("hold back end", wedged, func(s spec.JointSettings) spec.Length { return s.HoldBackEnd }),
		length("clearance", append(all[:4:4], "bridle"), func(s spec.JointSettings) spec.Length { return s.Clearance }),
		number("steps", seats[:1], func(s spec.JointSettings) spec.Number { return s.Steps }),
		length("seat depth", seats, func(s spec.JointSettings) spec.Length { return s.SeatDepth }),
		length("haunch", square, func(s spec.JointSettings) spec.Length { return s.Haunch }).unless(broad),
		length("proud", wedged, func(s spec.JointSettings) spec.Length { return s.Proud }).unless(stopped),
		flag("diminished", braces, func(s spec.JointSettings) spec.Flag { return s.Diminished }).unless(unhoused),
		flag("square end", braces, func(s spec.JointSettings) spec.Flag { return s.SquareEnd }),
		length("drop", wedge, func(s spec.JointSettings) spec.Length { return s.Drop }),
		number("taper", wedge, func(s spec.JointSettings) spec.Number { return s.Taper }),
		length("lap depth", laps, func(s spec.JointSettings) spec.Length { return s.LapDepth }),
		number("into face", append(laps[:4:4], pocket...), func(s spec.JointSettings) spec.Number { return s.IntoFace }).unless(otherFace),
		{"flare", dovetail, func(s spec.JointSettings) (finding.Pos, bool) { return s.Flare.At, s.Flare.Set }, nil},
		flag("wedge", dovetail, func(s spec.JointSettings) spec.Flag { return s.Wedge }),
		length("bearing", pocket, func(s spec.JointSettings) spec.Length { return s.Bearing }),
		length("pocket depth", pocket, func(s spec.JointSettings) spec.Length { return s.PocketDepth }),
		length("off shoulder", all, func(s spec.JointSettings) spec.Length { return s.OffShoulder }).unless(unpegged),
		{"along", all, func(s spec.JointSettings) (finding.Pos, bool) { return s.Along.At, s.Along.Set }, unpegged},
		{"draw", braces, func(s spec.JointSettings) (finding.Pos, bool) { return s.Draw.At, s.Draw.Set }, unpegged},
		{"scarf", scarfs, func(s spec.JointSettings) (finding.Pos, bool) { return s.Scarf.Length.At, s.Scarf.Length.Set }, nil},
		{"legs", nil, func(s spec.JointSettings) (finding.Pos, bool) { return s.Legs.At, s.Legs.Set }, nil},
	}, pegHeeds()...)
}

// pegHeeds are the settings of pegs.
func pegHeeds() []heed {
	pegged := slices.DeleteFunc(spec.JointKinds(), func(k string) bool { return k == "plain bearing" })
	return []heed{
		number("pegs", pegged, func(s spec.JointSettings) spec.Number { return s.Pegs }).unless(fewerPegs),
		length("bore", pegged, func(s spec.JointSettings) spec.Length { return s.Bore }).unless(unpegged),
		length("head", pegged, func(s spec.JointSettings) spec.Length { return s.Head }).unless(unpegged),
		length("lead", pegged, func(s spec.JointSettings) spec.Length { return s.Lead }).unless(blind),
		number("from face", pegged, func(s spec.JointSettings) spec.Number { return s.FromFace }).unless(otherEntry),
		{"drawbore", pegged, func(s spec.JointSettings) (finding.Pos, bool) {
			d := s.Drawbore
			return d.At, d.Set && d.Mode == spec.DrawLength && d.MM > 0
		}, inLine},
	}
}

// length is a setting that is a length.
func length(name string, kinds []string, of func(spec.JointSettings) spec.Length) heed {
	return heed{name, kinds, func(s spec.JointSettings) (finding.Pos, bool) { l := of(s); return l.At, l.Set }, nil}
}

// flag is one that is a yes or a no.
func flag(name string, kinds []string, of func(spec.JointSettings) spec.Flag) heed {
	return heed{name, kinds, func(s spec.JointSettings) (finding.Pos, bool) { f := of(s); return f.At, f.Set }, nil}
}

// number is one that is a number.
func number(name string, kinds []string, of func(spec.JointSettings) spec.Number) heed {
	return heed{name, kinds, func(s spec.JointSettings) (finding.Pos, bool) { n := of(s); return n.At, n.Set }, nil}
}

// unless is the same setting where joints of its kinds may lack something.
func (h heed) unless(lacks func(*settled, spec.JointSettings) string) heed {
	h.lacks = lacks
	return h
}

// unheeded notes the settings of each entry of the description that none of
// the joints it is about heeds.
func (s *solver) unheeded() {
	hs := heeds()
	for _, w := range s.written {
		for _, h := range hs {
			if at, ok := h.at(w.set); ok {
				s.idle(w, h, at)
			}
		}
	}
}

// idle notes a setting of an entry, written at a place, if none of its joints
// heeds it.
func (s *solver) idle(w written, h heed, at finding.Pos) {
	var ids, kinds, lacking []string
	for _, p := range w.joints {
		ids = append(ids, p.ID)
		why := ""
		switch {
		case !slices.Contains(h.kinds, p.Kind):
			kinds = added(kinds, p.Kind)
			continue
		case h.lacks != nil:
			why = h.lacks(p, w.set)
		}
		if why == "" {
			return
		}
		lacking = added(lacking, why)
	}
	n := finding.Finding{Severity: finding.Note, Rule: "setting", At: at, Joints: ids, Mend: "take it away",
		Text: fmt.Sprintf("%s has no effect here: %s", h.name, strings.Join(lacking, "; "))}
	if len(lacking) == 0 {
		n.Text = fmt.Sprintf("%s has no effect on this kind of joint: %s", h.name, strings.Join(kinds, ", "))
		if len(h.kinds) > 0 && len(h.kinds) < mostNamed {
			n.Mend += "; it is for: " + strings.Join(h.kinds, ", ")
		}
	}
	s.Frame.Notes = append(s.Frame.Notes, n)
}

// mostNamed is how many kinds of joint a mend may name.
const mostNamed = 8

// added adds a word to a list that does not have it yet.
func added(list []string, word string) []string {
	if slices.Contains(list, word) {
		return list
	}
	return append(list, word)
}
