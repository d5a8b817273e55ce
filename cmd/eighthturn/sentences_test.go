package main

import (
	"fmt"
	"go/ast"
	"go/token"
	"io/fs"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// A sentence about the quilt stands in internal/report and nowhere else: the packages below hold no prose. What they may say
// is why something cannot be: errors, and faults with their places in the layout.

// wordless are the packages that hold data alone. The list grows as packages are cleaned.
func wordless() []string {
	return []string{"internal/plan/cutting", "internal/plan/sewing", "internal/plan/supplies", "internal/plan/sizes", "internal/plan/summary", "internal/plan/contrast", "internal/plan/fit", "internal/plan/audition", "internal/plan/motifs", "internal/plan/orders",
		"internal/quilt", "internal/quilt/orient", "internal/quilt/scraps", "internal/report/booklet", "svgout", "internal/document", "internal/render/pixels"}
}

// outspoken are files of wordless packages that hold words, and why.
func outspoken() map[string]string {
	return map[string]string{
		"internal/plan/cutting/build.go":       "names of options in errors",
		"internal/plan/cutting/faults.go":      "parts of a hint",
		"internal/plan/cutting/largest.go":     "parts of faults: what would fit, to be typed into the layout",
		"internal/plan/cutting/sets.go":        "parts of a fault: how many strip sets are too many",
		"internal/plan/supplies/strips.go":     "names of options in errors",
		"internal/plan/sizes/options.go":       "names of options in errors",
		"internal/plan/supplies/beds_lists.go": "names of the trade",
		"internal/plan/supplies/precuts.go":    "names of the trade",
		"internal/plan/fit/fit.go":             "errors of options",
		"internal/plan/fit/search.go":          "why a size is refused",
		"internal/report/booklet/day.go":       "the class schedule",
		"internal/report/booklet/booklet.go":   "the file's own properties",
		"internal/report/booklet/handout.go":   "the file's own properties",
		"internal/quilt/beyond_photo.go":       "a fault: a motif at the edge of a photo",
		"internal/quilt/on_hand.go":            "a fault: pieces on hand that nothing takes",
		"internal/quilt/scrap_places.go":       "parts of faults: why a deal is not better",
		"svgout/beneath.go":                    "a name in the file",
		"svgout/cloth.go":                      "a name in the file",
		"svgout/draw.go":                       "the picture's own title and description",
		"svgout/legend.go":                     "the picture's own legend",
		"svgout/views.go":                      "the picture's own title",
	}
}

// prose is three words of small letters in a row.
var prose = regexp.MustCompile(`\b[a-z]+,? [a-z]+,? [a-z]+\b`)

// sentences are the literals of prose in wordless packages that no error and no fault is made of.
func sentences(t *testing.T, source fs.FS) (list []string, excused map[string]bool) {
	excused = map[string]bool{}
	for _, f := range goFiles(t, source) {
		if !slices.Contains(wordless(), f.folder) {
			continue
		}
		ast.Inspect(f.File, func(n ast.Node) bool {
			if complains(n) {
				return false
			}
			lit, ok := n.(*ast.BasicLit)
			if !ok || lit.Kind != token.STRING {
				return true
			}
			text, err := strconv.Unquote(lit.Value)
			switch {
			case err != nil || !prose.MatchString(text) || strings.HasPrefix(text, "json:"):
			case outspoken()[f.path] != "":
				excused[f.path] = true
			default:
				list = append(list, fmt.Sprintf("%s says %q", f.path, text))
			}
			return true
		})
	}
	return list, excused
}

// complains says whether a part of the program makes an error or a fault, names the bounds of an option, or stops it.
func complains(n ast.Node) bool {
	switch v := n.(type) {
	case *ast.CallExpr:
		name := ""
		switch called := v.Fun.(type) {
		case *ast.SelectorExpr:
			name = called.Sel.Name
		case *ast.Ident:
			name = called.Name
		}
		return slices.Contains([]string{"Errorf", "New", "fault", "warn", "fail", "panic"}, name)
	case *ast.CompositeLit:
		named, ok := v.Type.(*ast.Ident)
		return ok && named.Name == "bound"
	}
	return false
}

func TestSentencesStandInReports(t *testing.T) {
	list, excused := sentences(t, project())
	for _, line := range list {
		t.Error(line)
	}
	for file := range outspoken() {
		if !excused[file] {
			t.Errorf("%s holds no words any more: take the exception out", file)
		}
	}
}

func TestSentencesStandInReportsCatches(t *testing.T) {
	own := tree(map[string]string{"internal/report/booklet/a.go": "package booklet\n\nconst s = \"Baste from the center outward.\"\n"})
	if list, _ := sentences(t, own); len(list) != 1 {
		t.Errorf("a sentence of the pattern's own: %q is found", list)
	}
	for what, c := range map[string]struct {
		code  string
		found int
	}{
		"a sentence":            {`const s = "Cut them from one strip."`, 1},
		"a part of one":         {"func f(n int) string { return fmt.Sprintf(`%d strips of the cloth`, n) }", 1},
		"a hidden one":          {`func f() error { say("press all the seams"); return fmt.Errorf("it is not so") }`, 1},
		"an error":              {`var _ = fmt.Errorf("it is not so: %d", 1)`, 0},
		"a fault":               {`func (p *Plan) f() { p.fault(1, "write it in another way") }`, 0},
		"a bound":               {`var _ = bound{"the width of it", 1}`, 0},
		"a name of a shop's":    {`const s = "fat quarter"`, 0},
		"a name in a structure": {"type t struct { A int `json:\"a,omitempty\"` }", 0},
	} {
		source := tree(map[string]string{
			"internal/plan/cutting/a.go":      "package cutting\n\n" + c.code + "\n",
			"internal/plan/cutting/a_test.go": "package cutting\n\nconst s = \"words in a test\"\n",
			"internal/report/a.go":            "package report\n\nconst s = \"words in a report\"\n",
		})
		if list, _ := sentences(t, source); len(list) != c.found {
			t.Errorf("%s: %q is found", what, list)
		}
	}
}

// tabled are the files of the command that line up columns of their own, and why.
func tabled() map[string]string {
	return map[string]string{
		"cmd/eighthturn/help.go":      "the list of commands and options",
		"cmd/eighthturn/new.go":       "the list of layouts to start from",
		"cmd/eighthturn/palette.go":   "lines of a layout",
		"cmd/eighthturn/questions.go": "the lists that answers are chosen from",
	}
}

// tables are the places of the command that line up columns.
func tables(t *testing.T, source fs.FS) (list []string, excused map[string]bool) {
	excused = map[string]bool{}
	for _, f := range goFiles(t, source) {
		if f.folder != "cmd/eighthturn" {
			continue
		}
		ast.Inspect(f.File, func(n ast.Node) bool {
			called, ok := n.(*ast.SelectorExpr)
			if !ok || called.Sel.Name != "Aligned" && called.Sel.Name != "Labeled" {
				return true
			}
			if tabled()[f.path] != "" {
				excused[f.path] = true
			} else {
				list = append(list, f.path+" lines up columns")
			}
			return true
		})
	}
	return list, excused
}

// TestCommandsHoldNoTable: what a command tells of a quilt is a document of internal/report.
func TestCommandsHoldNoTable(t *testing.T) {
	list, excused := tables(t, project())
	for _, line := range list {
		t.Error(line)
	}
	for path := range tabled() {
		if !excused[path] {
			t.Errorf("%s lines up no columns any more: take it out", path)
		}
	}
	broken := tree(map[string]string{"cmd/eighthturn/a.go": "package main\n\nvar text = render.Aligned(rows, \"\")\n"})
	if list, _ := tables(t, broken); len(list) != 1 {
		t.Errorf("found %q, want one table", list)
	}
}
