package measured

import (
	"fmt"
	"math"
	"os"
	"path/filepath"
	"sync"
	"time"

	"github.com/klippa-app/go-pdfium"
	"github.com/klippa-app/go-pdfium/enums"
	"github.com/klippa-app/go-pdfium/references"
	"github.com/klippa-app/go-pdfium/requests"
	"github.com/klippa-app/go-pdfium/structs"
	"github.com/klippa-app/go-pdfium/webassembly"
	"github.com/tetratelabs/wazero"
	"github.com/tetratelabs/wazero/api"
	"github.com/tetratelabs/wazero/experimental"

	"pegwright/geom/vec"
)

const mmPerPt = 25.4 / 72

// pool starts PDFium once for all tests of a process. Its compiled form is kept
// in the user's cache folder, which turns two seconds into a tenth of one.
var pool = sync.OnceValues(func() (pdfium.Pool, error) {
	base, err := os.UserCacheDir()
	if err != nil {
		base = os.TempDir()
	}
	cache, err := wazero.NewCompilationCacheWithDir(filepath.Join(base, "pegwright-test-pdfium"))
	if err != nil {
		cache = wazero.NewCompilationCache()
	}
	features := api.CoreFeaturesV2 | experimental.CoreFeaturesExceptionHandling
	return webassembly.Init(webassembly.Config{MinIdle: 1, MaxIdle: 1, MaxTotal: 2,
		RuntimeConfig: wazero.NewRuntimeConfig().WithCoreFeatures(features).WithCompilationCache(cache)})
})

// Open opens a PDF in PDFium and calls fn with it; for tests that need more
// than PDF returns.
func Open(data []byte, fn func(in pdfium.Pdfium, doc references.FPDF_DOCUMENT) error) error {
	p, err := pool()
	if err != nil {
		return err
	}
	in, err := p.GetInstance(30 * time.Second)
	if err != nil {
		return err
	}
	defer in.Close()
	doc, err := in.OpenDocument(&requests.OpenDocument{File: &data})
	if err != nil {
		return err
	}
	defer in.FPDF_CloseDocument(&requests.FPDF_CloseDocument{Document: doc.Document})
	return fn(in, doc.Document)
}

// PDF returns what is on every page of a PDF. It fails if PDFium cannot read
// the file or any object of it.
func PDF(data []byte) ([]Page, error) {
	var out []Page
	err := Open(data, func(in pdfium.Pdfium, doc references.FPDF_DOCUMENT) error {
		n, err := in.FPDF_GetPageCount(&requests.FPDF_GetPageCount{Document: doc})
		if err != nil {
			return err
		}
		for i := range n.PageCount {
			p, err := readPage(in, requests.Page{ByIndex: &requests.PageByIndex{Document: doc, Index: i}})
			if err != nil {
				return fmt.Errorf("page %d: %w", i+1, err)
			}
			out = append(out, p)
		}
		return nil
	})
	return out, err
}

// reader reads the objects of one page.
type reader struct {
	in   pdfium.Pdfium
	text references.FPDF_TEXTPAGE
	page Page
}

func readPage(in pdfium.Pdfium, pg requests.Page) (Page, error) {
	size, err := in.GetPageSize(&requests.GetPageSize{Page: pg})
	if err != nil {
		return Page{}, err
	}
	tp, err := in.FPDFText_LoadPage(&requests.FPDFText_LoadPage{Page: pg})
	if err != nil {
		return Page{}, err
	}
	defer in.FPDFText_ClosePage(&requests.FPDFText_ClosePage{TextPage: tp.TextPage})
	n, err := in.FPDFPage_CountObjects(&requests.FPDFPage_CountObjects{Page: pg})
	if err != nil {
		return Page{}, err
	}
	r := &reader{in: in, text: tp.TextPage, page: Page{W: size.Width * mmPerPt, H: size.Height * mmPerPt}}
	for i := range n.Count {
		o, err := in.FPDFPage_GetObject(&requests.FPDFPage_GetObject{Page: pg, Index: i})
		if err != nil {
			return Page{}, err
		}
		if err := r.object(o.PageObject); err != nil {
			return Page{}, fmt.Errorf("object %d: %w", i, err)
		}
	}
	return r.page, nil
}

func (r *reader) object(o references.FPDF_PAGEOBJECT) error {
	kind, err := r.in.FPDFPageObj_GetType(&requests.FPDFPageObj_GetType{PageObject: o})
	if err != nil {
		return err
	}
	m, err := r.in.FPDFPageObj_GetMatrix(&requests.FPDFPageObj_GetMatrix{PageObject: o})
	if err != nil {
		return err
	}
	switch kind.Type {
	case enums.FPDF_PAGEOBJ_PATH:
		return r.path(o, m.Matrix)
	case enums.FPDF_PAGEOBJ_TEXT:
		return r.run(o, m.Matrix)
	}
	return nil
}

// through carries a point of an object onto the paper.
func through(m structs.FPDF_FS_MATRIX, x, y float32) vec.P {
	fx, fy := float64(x), float64(y)
	return vec.P{X: float64(m.A)*fx + float64(m.C)*fy + float64(m.E), Y: float64(m.B)*fx + float64(m.D)*fy + float64(m.F)}.Mul(mmPerPt)
}

func (r *reader) run(o references.FPDF_PAGEOBJECT, m structs.FPDF_FS_MATRIX) error {
	s, err := r.in.FPDFTextObj_GetText(&requests.FPDFTextObj_GetText{PageObject: o, TextPage: r.text})
	if err != nil {
		return err
	}
	size, err := r.in.FPDFTextObj_GetFontSize(&requests.FPDFTextObj_GetFontSize{PageObject: o})
	if err != nil {
		return err
	}
	b, err := r.in.FPDFPageObj_GetBounds(&requests.FPDFPageObj_GetBounds{PageObject: o})
	if err != nil {
		return err
	}
	at := through(m, 0, 0)
	r.page.Texts = append(r.page.Texts, Text{S: s.Text, X: at.X, Y: at.Y,
		Size: float64(size.FontSize) * math.Hypot(float64(m.A), float64(m.B)) * mmPerPt,
		Turn: math.Atan2(float64(m.B), float64(m.A)),
		W:    float64(b.Right-b.Left) * mmPerPt, H: float64(b.Top-b.Bottom) * mmPerPt})
	return nil
}
