package measured

import (
	"math"

	"github.com/klippa-app/go-pdfium/enums"
	"github.com/klippa-app/go-pdfium/references"
	"github.com/klippa-app/go-pdfium/requests"
	"github.com/klippa-app/go-pdfium/structs"

	"pegwright/geom/vec"
)

// path reads one path object. A curve comes as three points, each marked as
// one of a curve: two control points and the end.
func (r *reader) path(o references.FPDF_PAGEOBJECT, m structs.FPDF_FS_MATRIX) error {
	n, err := r.in.FPDFPath_CountSegments(&requests.FPDFPath_CountSegments{PageObject: o})
	if err != nil {
		return err
	}
	var p Path
	if p.Stroke, err = r.stroke(o, m); err != nil {
		return err
	}
	var curve []vec.P
	for i := range n.Count {
		op, at, closed, err := r.segment(o, m, i)
		if err != nil {
			return err
		}
		p.Closed = p.Closed || closed
		if op != 'C' {
			p.Segs = append(p.Segs, Seg{Op: op, P: at})
			continue
		}
		if curve = append(curve, at); len(curve) == 3 {
			p.Segs = append(p.Segs, Seg{Op: 'C', C1: curve[0], C2: curve[1], P: curve[2]})
			curve = nil
		}
	}
	r.page.sort(p)
	return nil
}

func (r *reader) segment(o references.FPDF_PAGEOBJECT, m structs.FPDF_FS_MATRIX, i int) (op byte, at vec.P, closed bool, err error) {
	s, err := r.in.FPDFPath_GetPathSegment(&requests.FPDFPath_GetPathSegment{PageObject: o, Index: i})
	if err != nil {
		return 0, at, false, err
	}
	t, err := r.in.FPDFPathSegment_GetType(&requests.FPDFPathSegment_GetType{PathSegment: s.PathSegment})
	if err != nil {
		return 0, at, false, err
	}
	xy, err := r.in.FPDFPathSegment_GetPoint(&requests.FPDFPathSegment_GetPoint{PathSegment: s.PathSegment})
	if err != nil {
		return 0, at, false, err
	}
	c, err := r.in.FPDFPathSegment_GetClose(&requests.FPDFPathSegment_GetClose{PathSegment: s.PathSegment})
	if err != nil {
		return 0, at, false, err
	}
	op = map[enums.FPDF_SEGMENT]byte{enums.FPDF_SEGMENT_MOVETO: 'M', enums.FPDF_SEGMENT_LINETO: 'L', enums.FPDF_SEGMENT_BEZIERTO: 'C'}[t.Type]
	return op, through(m, xy.X, xy.Y), c.IsClose, nil
}

// stroke reads how a path is painted. Widths and dashes are in the object's own
// units, so the scale of its matrix is put on.
func (r *reader) stroke(o references.FPDF_PAGEOBJECT, m structs.FPDF_FS_MATRIX) (Stroke, error) {
	var out Stroke
	mode, err := r.in.FPDFPath_GetDrawMode(&requests.FPDFPath_GetDrawMode{PageObject: o})
	if err != nil {
		return out, err
	}
	out.Filled = mode.FillMode != enums.FPDF_FILLMODE_NONE
	if !mode.Stroke {
		return out, nil
	}
	scale := math.Hypot(float64(m.A), float64(m.B)) * mmPerPt
	w, err := r.in.FPDFPageObj_GetStrokeWidth(&requests.FPDFPageObj_GetStrokeWidth{PageObject: o})
	if err != nil {
		return out, err
	}
	out.StrokeWidth = float64(w.StrokeWidth) * scale
	n, err := r.in.FPDFPageObj_GetDashCount(&requests.FPDFPageObj_GetDashCount{PageObject: o})
	if err != nil || n.DashCount == 0 {
		return out, err
	}
	d, err := r.in.FPDFPageObj_GetDashArray(&requests.FPDFPageObj_GetDashArray{PageObject: o})
	if err != nil {
		return out, err
	}
	for _, x := range d.DashArray {
		out.Dash = append(out.Dash, float64(x)*scale)
	}
	return out, nil
}
