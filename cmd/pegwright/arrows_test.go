package main

import (
	"bytes"
	"encoding/json"
	"go/ast"
	"go/importer"
	"go/parser"
	"go/token"
	"go/types"
	"io"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// downward is the order of the packages: one may import those in later rows,
// and none in its own row. The first row holds what nothing imports: the
// command, and what tests alone use: the reader of packets, the measuring reader,
// the checker of layout, the frames to try and the golden files.
func downward() [][]string {
	return [][]string{
		{"cmd/pegwright", "cmd/pegwright/disk/disktest", "draw/measured", "draw/sheet/tidy", "samples/trial", "golden"},
		{"draw/legible"},
		{"cmd/pegwright/live", "cmd/pegwright/disk"},
		{"cmd/pegwright/plain"},
		{"draw/packet"},
		{"templates"},
		{"draw/sheet"},
		{"draw/sheet/permit"},
		{"draw/sheet/drawbore", "draw/sheet/joint", "draw/sheet/plan", "draw/sheet/raise", "draw/sheet/timber"},
		{"draw/naming", "draw/setout"},
		{"draw/scene"},
		{"draw/page"},
		{"draw/block"},
		{"draw/dim"},
		{"draw/view"},
		{"draw/hide"},
		{"draw/svg", "draw/pdf"},
		{"draw/font"},
		{"draw/crew"},
		{"draw"},
		{"geom/check"},
		{"geom/solve"},
		{"geom/building", "geom/named"},
		{"geom/scheme"},
		{"geom/assembly"},
		{"geom/joint"},
		{"geom/list"},
		{"geom/strength"},
		{"geom/model"},
		{"geom"},
		{"geom/peg"},
		{"geom/wood"},
		{"geom/solid"},
		{"geom/spec"},
		{"geom/measure"},
		{"geom/finding"},
		{"geom/vec"},
		{"samples", "samples/row"},
	}
}

// narrow lists packages that may import less than what lies below them: the
// drawing model and its renderers know nothing of timber.
func narrow() map[string][]string {
	return map[string][]string{
		"draw":      {"geom/vec"},
		"draw/font": {"draw", "geom/vec"},
		"draw/svg":  {"draw", "draw/font", "geom/vec"},
		"draw/pdf":  {"draw", "draw/font", "geom/vec"},
	}
}

const root = "../.."

// imports maps every package of the module to the packages of the module that
// its files, tests apart, import.
func imports(t *testing.T) map[string][]string {
	t.Helper()
	found := map[string][]string{}
	err := filepath.WalkDir(root, func(path string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if d.IsDir() && strings.HasPrefix(d.Name(), ".") && path != root {
			return fs.SkipDir
		}
		if d.IsDir() || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") {
			return nil
		}
		file, err := parser.ParseFile(token.NewFileSet(), path, nil, parser.ImportsOnly)
		if err != nil {
			return err
		}
		pkg, err := filepath.Rel(root, filepath.Dir(path))
		pkg = filepath.ToSlash(pkg)
		found[pkg] = append(found[pkg], ofModule(file)...)
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return found
}

// ofModule returns the imports of a file that lie in this module.
func ofModule(file *ast.File) []string {
	var r []string
	for _, spec := range file.Imports {
		path, err := strconv.Unquote(spec.Path.Value)
		if rest, ok := strings.CutPrefix(path, "pegwright/"); ok && err == nil {
			r = append(r, rest)
		}
	}
	return r
}

func TestArrows(t *testing.T) {
	rank := map[string]int{}
	for i, row := range downward() {
		for _, p := range row {
			rank[p] = i
		}
	}
	found := imports(t)
	if len(found) < 15 {
		t.Fatalf("only %d packages found", len(found))
	}
	for pkg, list := range found {
		if _, ok := rank[pkg]; !ok {
			t.Errorf("%s has no place in the order of packages", pkg)
			continue
		}
		allowed, isNarrow := narrow()[pkg]
		for _, to := range list {
			switch r, ok := rank[to]; {
			case !ok:
				t.Errorf("%s imports %s, which has no place in the order", pkg, to)
			case r <= rank[pkg]:
				t.Errorf("%s imports %s: upward", pkg, to)
			case isNarrow && !slices.Contains(allowed, to):
				t.Errorf("%s imports %s: it must know nothing of it", pkg, to)
			case to == "geom/joint" && drawing(pkg):
				t.Errorf("%s imports %s: sheets ask for roles, not for kinds", pkg, to)
			}
		}
	}
}

// drawing reports whether a package draws.
func drawing(pkg string) bool {
	if pkg == "draw/measured" || pkg == "draw/legible" || pkg == "draw/sheet/tidy" {
		return false
	}
	return pkg == "templates" || pkg == "draw" || strings.HasPrefix(pkg, "draw/")
}

// Nothing that draws decides by the kind of a joint: it may print it.
func TestDrawingDoesNotLookAtKinds(t *testing.T) {
	fset := token.NewFileSet()
	imp := exported(t, fset)
	for _, pkg := range slices.Sorted(keys(imports(t))) {
		if !drawing(pkg) {
			continue
		}
		files := parsed(t, fset, pkg)
		info := &types.Info{Selections: map[*ast.SelectorExpr]*types.Selection{}, Types: map[ast.Expr]types.TypeAndValue{}}
		conf := types.Config{Importer: imp, Error: func(error) {}}
		if _, err := conf.Check("pegwright/"+pkg, fset, files, info); err != nil {
			t.Errorf("%s: %v", pkg, err)
		}
		for _, f := range files {
			for _, at := range decisions(f, info) {
				t.Errorf("%s decides by the kind of a joint", fset.Position(at))
			}
		}
	}
}

func keys[V any](m map[string]V) func(yield func(string) bool) {
	return func(yield func(string) bool) {
		for k := range m {
			if !yield(k) {
				return
			}
		}
	}
}

// decisions returns the places where the Kind of a geom.Joint is compared,
// switched on, looked up, or given to a function of package strings.
func decisions(file *ast.File, info *types.Info) []token.Pos {
	var at []token.Pos
	kind := func(exprs ...ast.Expr) {
		for _, e := range exprs {
			if isKind(e, info) {
				at = append(at, e.Pos())
			}
		}
	}
	ast.Inspect(file, func(n ast.Node) bool {
		switch x := n.(type) {
		case *ast.BinaryExpr:
			if x.Op != token.ADD {
				kind(x.X, x.Y)
			}
		case *ast.SwitchStmt:
			kind(x.Tag)
		case *ast.CaseClause:
			kind(x.List...)
		case *ast.IndexExpr:
			kind(x.Index)
		case *ast.CallExpr:
			if s, ok := x.Fun.(*ast.SelectorExpr); ok {
				if p, ok := s.X.(*ast.Ident); ok && p.Name == "strings" && decides(s.Sel.Name) {
					kind(x.Args...)
				}
			}
		}
		return true
	})
	return at
}

// decides reports whether a function of package strings answers a question.
func decides(name string) bool {
	return strings.HasPrefix(name, "Has") || strings.HasPrefix(name, "Contains") || strings.HasPrefix(name, "Index") ||
		name == "EqualFold" || name == "Compare" || name == "Count"
}

// isKind reports whether an expression is the field Kind of a geom.Joint.
func isKind(e ast.Expr, info *types.Info) bool {
	if e == nil {
		return false
	}
	s, ok := ast.Unparen(e).(*ast.SelectorExpr)
	if !ok || s.Sel.Name != "Kind" {
		return false
	}
	sel := info.Selections[s]
	if sel == nil {
		return false
	}
	recv := sel.Recv()
	if p, ok := recv.(*types.Pointer); ok {
		recv = p.Elem()
	}
	named, ok := recv.(*types.Named)
	return ok && named.Obj().Name() == "Joint" && named.Obj().Pkg().Path() == "pegwright/geom"
}

// The check above finds what it is looking for.
func TestDecisionsAreFound(t *testing.T) {
	const src = `package x
import ("strings"; "pegwright/geom")
func f(j *geom.Joint, m map[string]int) string {
	if j.Kind == "a" { return "" }
	switch j.Kind { case "b": }
	switch { case strings.HasPrefix((j.Kind), "c"): }
	_ = m[j.Kind]
	return "the kind is " + j.Kind + strings.ToLower(j.Kind)
}`
	fset := token.NewFileSet()
	file, err := parser.ParseFile(fset, "x.go", src, 0)
	if err != nil {
		t.Fatal(err)
	}
	info := &types.Info{Selections: map[*ast.SelectorExpr]*types.Selection{}}
	conf := types.Config{Importer: exported(t, fset)}
	if _, err := conf.Check("x", fset, []*ast.File{file}, info); err != nil {
		t.Fatal(err)
	}
	if got := len(decisions(file, info)); got != 4 {
		t.Errorf("%d decisions found, want 4", got)
	}
}

// parsed returns the files of a package, tests apart.
func parsed(t *testing.T, fset *token.FileSet, pkg string) []*ast.File {
	t.Helper()
	names, err := filepath.Glob(filepath.Join(root, pkg, "*.go"))
	if err != nil {
		t.Fatal(err)
	}
	var files []*ast.File
	for _, n := range names {
		if strings.HasSuffix(n, "_test.go") {
			continue
		}
		f, err := parser.ParseFile(fset, n, nil, 0)
		if err != nil {
			t.Fatal(err)
		}
		files = append(files, f)
	}
	return files
}

// exported returns an importer that reads what the compiler wrote about the
// packages that this module uses.
func exported(t *testing.T, fset *token.FileSet) types.Importer {
	t.Helper()
	goTool, err := exec.LookPath("go")
	if err != nil {
		t.Fatalf("the go command tells what the packages export: %v", err)
	}
	cmd := exec.Command(goTool, "list", "-export", "-deps", "-json=ImportPath,Export", "./cmd/pegwright")
	cmd.Dir, cmd.Stderr = root, os.Stderr
	out, err := cmd.Output()
	if err != nil {
		t.Fatal(err)
	}
	where := map[string]string{}
	d := json.NewDecoder(bytes.NewReader(out))
	for {
		var p struct{ ImportPath, Export string }
		if err := d.Decode(&p); err == io.EOF {
			break
		} else if err != nil {
			t.Fatal(err)
		}
		where[p.ImportPath] = p.Export
	}
	return importer.ForCompiler(fset, "gc", func(path string) (io.ReadCloser, error) { return os.Open(where[path]) })
}
