package plan

import (
	"sync"

	"pegwright/draw"
	"pegwright/draw/naming"
	"pegwright/draw/scene"
	"pegwright/draw/setout"
	"pegwright/draw/view"
)

// shot is what a survey shows at full size, whatever is told about it and for
// whom. It is found once, when it is first asked for.
type shot struct {
	stand, picture, section, height sync.Once
	parts                           []view.Part
	sight                           *naming.Sight
	box                             draw.Box // of what is seen
	pic                             scene.Picture
	levels, sizes                   []level       // heights, for the crew and for who asks for sizes
	sawn                            []view.Figure // what the plane before the view cuts

	mu      sync.Mutex
	inParts map[[2]int]*shot // of the parts of a long view, by how many and which
}

// shot returns what the survey shows; copies of the survey made after that show
// the same.
func (v *survey) shot() *shot {
	if v.seen == nil {
		v.seen = &shot{}
	}
	return v.seen
}

// stood returns the shot with its parts, its sight and its box.
func (v *survey) stood() *shot {
	s := v.shot()
	s.stand.Do(func() {
		s.parts = setout.Sawn(v.whole, v.cuts...)
		s.sight = naming.NewSight(v.cam, s.parts)
		s.box = draw.NoBox()
		for _, part := range s.parts {
			b := s.sight.Box(part.Owner)
			s.box = s.box.With(b.Min, b.Max)
		}
	})
	return s
}

// taken returns the shot with its picture.
func (v *survey) taken(hidden bool) *shot {
	s := v.stood()
	s.picture.Do(func() {
		s.pic = scene.TakePicture(v.cam, s.parts, hidden)
		s.pic.Items = withoutEnds(s.pic.Items, v.bays)
	})
	return s
}

// cut returns what the plane before the view cuts.
func (v *survey) cut() []view.Figure {
	s := v.shot()
	s.section.Do(func() {
		if len(v.cuts) > 0 {
			s.sawn = view.Section(setout.Sawn(v.whole, v.cuts[1:]...), v.cuts[0], v.cam, view.Options{})
		}
	})
	return s.sawn
}

// of returns the shot of a part of the view.
func (s *shot) of(x setout.Bays) *shot {
	s.mu.Lock()
	defer s.mu.Unlock()
	k := [2]int{x.Of, x.N}
	if s.inParts == nil {
		s.inParts = map[[2]int]*shot{}
	}
	if s.inParts[k] == nil {
		s.inParts[k] = &shot{}
	}
	return s.inParts[k]
}
