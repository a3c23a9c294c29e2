package spec

import (
	"strings"

	"gopkg.in/yaml.v3"
)

// jointFields are the settings of a joint, for layout, joints and adjust.
func jointFields(s *JointSettings) []field {
	return append(append(append(tenonFields(s), lapFields(s)...), pegFields(s)...),
		group("tenon", "thickness, place and length of tenons", []field{
			lengthKey("thickness", "thickness of the tenon; of a bridle, where it is not said, a third of the stick to the nearest 1/8 in or 5 mm, as chisels come", &s.Thickness, positive),
			lengthKey("from reference", "reference face to the near cheek", &s.FromReference, notNegative),
			lengthKey("length", "bearing plane to the end of the tenon", &s.TenonLength, positive),
		}, nil),
		pegsKey(s), scarfKey(&s.Scarf),
	)
}

func tenonFields(s *JointSettings) []field {
	return []field{
		lengthKey("thickness", "thickness of the tenon; of a bridle, where it is not said, a third of the stick to the nearest 1/8 in or 5 mm, as chisels come", &s.Thickness, positive),
		lengthKey("from reference", "reference face to the near cheek", &s.FromReference, notNegative),
		lengthKey("tenon length", "bearing plane to the end of the tenon", &s.TenonLength, positive),
		flagKey("through", "the tenon goes through the receiver", &s.Through),
		flagKey("stub", "a short tenon without a peg", &s.Stub),
		lengthKey("housing", "bearing plane below the ideal face", &s.Housing, notNegative),
		lengthKey("hold back start", "tenon narrower on the receiver's start side", &s.HoldBackStart, notNegative),
		lengthKey("hold back end", "tenon narrower on the receiver's end side", &s.HoldBackEnd, notNegative),
		lengthKey("clearance", "mortise wider than the tenon", &s.Clearance, notNegative),
		countKey("steps", "notches of a step-lap seat", &s.Steps, 1, 2),
		lengthKey("seat depth", "depth of a rafter seat", &s.SeatDepth, positive),
		legsKey("legs", "legs of a brace, on the first receiver and on the second", &s.Legs),
		lengthKey("haunch", "shallow tenon left where the tenon is held back", &s.Haunch, notNegative),
		lengthKey("proud", "through tenon beyond the receiver's ideal far face", &s.Proud, notNegative),
		flagKey("diminished", "the housing of an angled joint runs from its depth at the nose to nothing", &s.Diminished),
		lengthKey("drop", "flare of a wedged tenon's lower edge from shoulder to end", &s.Drop, positive),
		countKey("taper", "the wedge of a wedged tenon rises 1 in this many", &s.Taper, 6, 40),
		flagKey("square end", "the inner end of an angled mortise is square to the face", &s.SquareEnd),
	}
}

// lapFields are the settings of laps and pockets.
func lapFields(s *JointSettings) []field {
	return []field{
		lengthKey("lap depth", "how deep a lap is let into the receiver's face", &s.LapDepth, positive),
		countKey("into face", "face of the receiver that a lap or pocket is let into", &s.IntoFace, 1, 4),
		{name: "flare", kind: "a flare", doc: "how a dovetail widens, as 1 in 7", read: func(r *reader, n *yaml.Node) {
			if r.first(n, s.Flare.Set) {
				s.Flare = r.flare(n)
			}
		}},
		flagKey("wedge", "a dovetail is tightened by a wedge", &s.Wedge),
		lengthKey("bearing", "length of a pocket, into the receiver's side", &s.Bearing, positive),
		lengthKey("pocket depth", "depth of a pocket, down from the enterer's upper face", &s.PocketDepth, positive),
	}
}

func pegFields(s *JointSettings) []field {
	return []field{
		lengthKey("bore", "diameter of the holes", &s.Bore, positive),
		lengthKey("off shoulder", "bearing plane to the hole", &s.OffShoulder, positive),
		{name: "along", kind: "a length or centred", doc: "bearing edge or nose to the first hole", read: func(r *reader, n *yaml.Node) {
			if r.first(n, s.Along.Set) {
				s.Along = r.along(n)
			}
		}},
		lengthKey("head", "peg standing proud where it is driven", &s.Head, notNegative),
		lengthKey("lead", "peg beyond the far face", &s.Lead, notNegative),
		{name: "drawbore", kind: "auto, none or a length", doc: "offset between the two holes",
			read: func(r *reader, n *yaml.Node) { s.Drawbore = r.drawbore(n) }},
		wordKey("draw", "direction in which the peg draws", &s.Draw, "along the brace", "square"),
		countKey("from face", "face from which the peg is driven", &s.FromFace, 1, 4),
	}
}

// pegsKey reads either how many pegs there are, or a set of keys about them.
func pegsKey(s *JointSettings) field {
	var inner []field
	for _, f := range pegFields(s) {
		if f.name != "drawbore" && f.name != "draw" {
			inner = append(inner, f)
		}
	}
	count := countKey("count", "how many pegs", &s.Pegs, 0, 12)
	inner = append([]field{count}, inner...)
	return field{name: "pegs", kind: "a whole number or keys", doc: "how many pegs, or keys about them", inner: inner,
		read: func(r *reader, n *yaml.Node) {
			if n.Kind == yaml.ScalarNode {
				count.read(r, n)
				return
			}
			r.mapping(n, "pegs", inner, nil)
		}}
}

// layoutKey reads the common settings and, by role, what differs from them.
func layoutKey(l *Layout) field {
	inner := jointFields(&l.All)
	return field{name: "layout", kind: "keys", doc: "how joints are laid out, for all and by role of the entering timber",
		inner: append(inner[:len(inner):len(inner)], field{name: "<role>", kind: "keys", doc: "settings for the joints of one role", inner: jointFields(&JointSettings{})}),
		read: func(r *reader, n *yaml.Node) {
			r.mapping(n, "layout", inner, func(k, v *yaml.Node) bool { return r.layoutRole(l, k, v) }, roleNames()...)
		}}
}

func (r *reader) layoutRole(l *Layout, k, v *yaml.Node) bool {
	role, ok := RoleNamed(k.Value)
	if !ok {
		return false
	}
	for _, s := range l.Roles {
		if s.Role.S == role {
			r.fault(k, k.Value, "this role was written before", "keep one of the two")
			return true
		}
	}
	s := RoleSettings{Role: Text{S: role, At: r.pos(k), Set: true}}
	r.mapping(v, k.Value, jointFields(&s.Settings), nil)
	l.Roles = append(l.Roles, s)
	return true
}

// JointKinds returns the names of the joints that a description may ask for.
func JointKinds() []string {
	return []string{"mortise and tenon", "brace mortise and tenon", "sill corner", "bridle",
		"half-lap scarf", "splayed scarf", "wedged through tenon",
		"step-lap seat", "birdsmouth seat", "plain bearing",
		"cross lap", "half lap", "corner lap", "half-dovetail lap", "drop-in pocket"}
}

const maxJoints = 20000

func jointsKey(d *Description) field {
	table := func(j *Joint) []field {
		return append([]field{
			idKey("id", "name of the joint, when it should have one", &j.ID),
			wordKey("kind", "kind of joint", &j.Kind, JointKinds()...).must(),
			idKey("of", "the entering timber", &j.Of).must(),
			wordKey("end", "which end of it; the one nearer to the receiver where none is given", &j.End, "start", "end"),
			idKey("into", "the receiving timber", &j.Into).must(),
		}, jointFields(&j.JointSettings)...)
	}
	return field{name: "joints", kind: "a list", doc: "joints described one by one", inner: table(&Joint{}), suffix: "[]",
		read: func(r *reader, n *yaml.Node) {
			r.items(n, "joints", maxJoints, false, func(_ int, v *yaml.Node) {
				j := Joint{At: r.pos(v)}
				r.mapping(v, "a joint", table(&j), nil)
				d.Joints = append(d.Joints, j)
			})
		}}
}

const maxAdjust = 2000

func adjustKey(d *Description) field {
	pick := func(a *Adjust) []field {
		return []field{selectorKey("joints", "which joints", &a.Joints), selectorKey("timbers", "which timbers", &a.Timbers)}
	}
	var none Adjust
	all := append(pick(&none), append(timberFields(&none.Timber), jointFields(&none.Joint)...)...)
	return field{name: "adjust", kind: "a list", doc: "changes to joints or timbers picked by a selector", inner: all, suffix: "[]",
		read: func(r *reader, n *yaml.Node) {
			r.items(n, "adjust", maxAdjust, false, func(_ int, v *yaml.Node) {
				a := Adjust{At: r.pos(v)}
				r.adjustment(v, &a, pick(&a))
				d.Adjust = append(d.Adjust, a)
			})
		}}
}

// adjustment reads one entry; which settings it may hold follows from what it
// picks.
func (r *reader) adjustment(v *yaml.Node, a *Adjust, pick []field) {
	joints, timbers := child(v, "joints"), child(v, "timbers")
	switch {
	case v.Kind == yaml.MappingNode && joints != nil && timbers != nil:
		r.fault(v, "", "an adjustment picks joints or timbers, not both", "divide it into two")
	case v.Kind == yaml.MappingNode && joints == nil && timbers == nil:
		r.fault(v, "", "an adjustment does not say what it changes", `write joints: or timbers: and a selector, such as "braces of bent 1"`)
	case v.Kind == yaml.MappingNode && len(v.Content) == 2:
		r.fault(v, "", "an adjustment changes nothing", "write a setting beside the selector, or take it away")
	case timbers != nil:
		r.mapping(v, "an adjustment of timbers", append(pick[1:], timberFields(&a.Timber)...), nil)
	default:
		r.mapping(v, "an adjustment of joints", append(pick[:1:1], jointFields(&a.Joint)...), nil)
	}
}

// child returns the value of a key of a mapping, nil when there is none.
func child(n *yaml.Node, key string) *yaml.Node {
	if n.Kind != yaml.MappingNode {
		return nil
	}
	for i := 0; i+1 < len(n.Content); i += 2 {
		if n.Content[i].Value == key {
			return n.Content[i+1]
		}
	}
	return nil
}

func selectorKey(name, doc string, dst *Selector) field {
	return field{name: name, kind: "a selector", doc: doc + ": " + selectorGrammar, read: func(r *reader, n *yaml.Node) {
		s, ok := r.scalar(n, "a selector such as "+strings.ToLower("braces of bent 1"))
		if ok {
			*dst = r.selector(n, s)
		}
	}}
}
