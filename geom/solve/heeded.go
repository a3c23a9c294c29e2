package solve

import (
	"fmt"
	"slices"
	"strings"

	"pegwright/geom/finding"
	"pegwright/geom/spec"
)

// heed is a setting that only some kinds of joint heed.
type heed struct {
	name  string
	kinds []string // that heed it
	at    func(s spec.JointSettings) (finding.Pos, bool)
}

// heeds are the settings that shape one kind of joint and not another. What
// nearly every joint has, such as a bore, is not among them.
func heeds() []heed {
	square := []string{"mortise and tenon", "sill corner"}
	tenoned := append(square[:2:2], "brace mortise and tenon")
	wedged := append(square[:2:2], "wedged through tenon")
	all := append(tenoned[:3:3], "wedged through tenon")
	braces, wedge, dovetail, pocket := tenoned[2:], wedged[2:], []string{"half-dovetail lap"}, []string{"drop-in pocket"}
	laps := []string{"cross lap", "half lap", "corner lap", "half-dovetail lap"}
	seats, scarfs := []string{"step-lap seat", "birdsmouth seat"}, []string{"half-lap scarf", "splayed scarf"}
	return []heed{
		length("thickness", append(all[:4:4], "bridle"), func(s spec.JointSettings) spec.Length { return s.Thickness }),
		length("from reference", append(all[:4:4], "bridle"), func(s spec.JointSettings) spec.Length { return s.FromReference }),
		length("tenon length", tenoned, func(s spec.JointSettings) spec.Length { return s.TenonLength }),
		flag("through", tenoned, func(s spec.JointSettings) spec.Flag { return s.Through }),
		length("housing", all, func(s spec.JointSettings) spec.Length { return s.Housing }),
		length("hold back start", wedged, func(s spec.JointSettings) spec.Length { return s.HoldBackStart }),
		length("hold back end", wedged, func(s spec.JointSettings) spec.Length { return s.HoldBackEnd }),
		length("clearance", append(all[:4:4], "bridle"), func(s spec.JointSettings) spec.Length { return s.Clearance }),
		number("steps", seats[:1], func(s spec.JointSettings) spec.Number { return s.Steps }),
		length("seat depth", seats, func(s spec.JointSettings) spec.Length { return s.SeatDepth }),
		length("haunch", square, func(s spec.JointSettings) spec.Length { return s.Haunch }),
		length("proud", wedged, func(s spec.JointSettings) spec.Length { return s.Proud }),
		flag("diminished", braces, func(s spec.JointSettings) spec.Flag { return s.Diminished }),
		flag("square end", braces, func(s spec.JointSettings) spec.Flag { return s.SquareEnd }),
		length("drop", wedge, func(s spec.JointSettings) spec.Length { return s.Drop }),
		number("taper", wedge, func(s spec.JointSettings) spec.Number { return s.Taper }),
		length("lap depth", laps, func(s spec.JointSettings) spec.Length { return s.LapDepth }),
		number("into face", append(laps[:4:4], pocket...), func(s spec.JointSettings) spec.Number { return s.IntoFace }),
		{"flare", dovetail, func(s spec.JointSettings) (finding.Pos, bool) { return s.Flare.At, s.Flare.Set }},
		flag("wedge", dovetail, func(s spec.JointSettings) spec.Flag { return s.Wedge }),
		length("bearing", pocket, func(s spec.JointSettings) spec.Length { return s.Bearing }),
		length("pocket depth", pocket, func(s spec.JointSettings) spec.Length { return s.PocketDepth }),
		length("off shoulder", all, func(s spec.JointSettings) spec.Length { return s.OffShoulder }),
		{"along", all, func(s spec.JointSettings) (finding.Pos, bool) { return s.Along.At, s.Along.Set }},
		{"draw", braces, func(s spec.JointSettings) (finding.Pos, bool) { return s.Draw.At, s.Draw.Set }},
		{"scarf", scarfs, func(s spec.JointSettings) (finding.Pos, bool) { return s.Scarf.Length.At, s.Scarf.Length.Set }},
		{"legs", nil, func(s spec.JointSettings) (finding.Pos, bool) { return s.Legs.At, s.Legs.Set }},
	}
}

// length is a setting that is a length.
func length(name string, kinds []string, of func(spec.JointSettings) spec.Length) heed {
	return heed{name, kinds, func(s spec.JointSettings) (finding.Pos, bool) { l := of(s); return l.At, l.Set }}
}

// flag is one that is a yes or a no.
func flag(name string, kinds []string, of func(spec.JointSettings) spec.Flag) heed {
	return heed{name, kinds, func(s spec.JointSettings) (finding.Pos, bool) { f := of(s); return f.At, f.Set }}
}

// number is one that is a number.
func number(name string, kinds []string, of func(spec.JointSettings) spec.Number) heed {
	return heed{name, kinds, func(s spec.JointSettings) (finding.Pos, bool) { n := of(s); return n.At, n.Set }}
}

// unheeded notes the settings of one entry of the description that none of the
// joints it is about heeds.
func (s *solver) unheeded(set spec.JointSettings, joints []*settled) {
	var kinds, ids []string
	for _, p := range joints {
		if !slices.Contains(kinds, p.Kind) {
			kinds = append(kinds, p.Kind)
		}
		ids = append(ids, p.ID)
	}
	for _, h := range heeds() {
		at, written := h.at(set)
		if !written || slices.ContainsFunc(kinds, func(k string) bool { return slices.Contains(h.kinds, k) }) {
			continue
		}
		mend := "take it away"
		if len(h.kinds) > 0 {
			mend += "; it is for: " + strings.Join(h.kinds, ", ")
		}
		s.Frame.Notes = append(s.Frame.Notes, finding.Finding{Severity: finding.Note, Rule: "setting", At: at, Joints: ids,
			Text: fmt.Sprintf("%s has no effect on this kind of joint: %s", h.name, strings.Join(kinds, ", ")), Mend: mend})
	}
}
