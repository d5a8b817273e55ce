package main

import (
	"go/ast"
	"go/token"
	"io/fs"
	"slices"
	"strconv"
	"strings"
	"testing"

	"eighthturn/internal/blocks"
	"eighthturn/internal/document"
	"eighthturn/internal/report"
)

// What is cut is said once: the command and the pattern have the same sections and the same sentences, each of them one time.

// unlikeCutting says which sentences of the cutting report a text does not have, or has twice.
func unlikeCutting(text string, d document.Document) []string {
	var wrong []string
	text = bare(text)
	for _, id := range []string{report.BeforeCutID, report.HowToCutID, report.ForFinishingID, report.BetweenMarksID} {
		s, _ := d.Section(id)
		for _, b := range s.Blocks {
			l, ok := b.(document.List)
			if !ok {
				continue
			}
			for _, it := range l.Items {
				if said := bare(it.Text.String()); strings.Count(text, said) != 1 {
					wrong = append(wrong, it.Text.String())
				}
			}
		}
	}
	return wrong
}

// bare is a text without what lines, fractions and Markdown do to it.
func bare(text string) string {
	return strings.NewReplacer("|", "", "*", "", " ", "").Replace(plainText(text))
}

func TestCuttingIsSaidOnce(t *testing.T) {
	said := outputs(t, smallLayout)
	d := report.Cutting(plansOf(t, smallLayout))
	for _, output := range []string{"cuts", "booklet"} {
		for _, wrong := range unlikeCutting(said[output], d) {
			t.Errorf("%s does not say once: %s", output, wrong)
		}
	}
	kites := "Align the center line of the wedge ruler"
	for what, text := range map[string]string{
		"other words for kites": strings.Replace(said["cuts"], "Draw a diagonal line", "Draw a line", 1),
		"kites told twice":      said["cuts"] + said["cuts"],
	} {
		if wrong := unlikeCutting(text, d); !slices.ContainsFunc(wrong, func(s string) bool { return strings.Contains(s, kites) }) {
			t.Errorf("%s: found %q", what, wrong)
		}
	}
	if !slices.ContainsFunc(blocks.Shapes(), func(s blocks.Shape) bool { return strings.Contains(s.Description().CutWords, kites) }) {
		t.Error("kites are cut in other words by now: choose another sentence for this test")
	}
}

// guards are the files that tell texts from formulas.
func guards(t *testing.T, source fs.FS) []string {
	var list []string
	for _, f := range goFiles(t, source) {
		ast.Inspect(f.File, func(n ast.Node) bool {
			if lit, ok := n.(*ast.BasicLit); ok && lit.Kind == token.STRING {
				if text, err := strconv.Unquote(lit.Value); err == nil && strings.Contains(text, "=+-@") {
					list = append(list, f.path)
				}
			}
			return true
		})
	}
	return list
}

// One guard keeps texts from being taken for formulas.
func TestOneGuardAgainstFormulas(t *testing.T) {
	if list := guards(t, project()); !slices.Equal(list, []string{"internal/render/csv.go"}) {
		t.Errorf("there are guards in %q", list)
	}
	another := tree(map[string]string{"internal/preview/a.go": "package preview\n\nconst signs = \"=+-@\"\n"})
	if len(guards(t, another)) != 1 {
		t.Error("another guard is not found")
	}
}

// unlikeSewing says which sentences of the chapters on layout, borders and finishing a text does not have.
func unlikeSewing(text string, d document.Document) []string {
	var wrong []string
	text = bare(text)
	var look func(blocks []document.Block)
	say := func(t document.Text) {
		if said := bare(t.String()); !strings.Contains(text, said) {
			wrong = append(wrong, t.String())
		}
	}
	look = func(blocks []document.Block) {
		for _, b := range blocks {
			switch v := b.(type) {
			case document.Section:
				look(v.Blocks)
			case document.Paragraph:
				say(v.Text)
			case document.List:
				for _, it := range v.Items {
					say(it.Text)
				}
			}
		}
	}
	for _, id := range []string{report.SewingLayout, report.SewingBorder(1), report.SewingFinishing} {
		s, _ := d.Section(id)
		look(s.Blocks)
	}
	return wrong
}

// TestFinishingIsSaidAlike: what is laid out, bordered and finished stands in the sewing report, and command and pattern say it.
func TestFinishingIsSaidAlike(t *testing.T) {
	said := outputs(t, smallLayout)
	d := report.Sewing(plansOf(t, smallLayout))
	for _, output := range []string{"sew", "booklet", "page Sewing"} {
		if said[output] == "" {
			t.Errorf("there is no %s", output)
		}
		for _, wrong := range unlikeSewing(said[output], d) {
			if output == "booklet" && strings.HasPrefix(wrong, "This border finishes") { // it has letters for fabrics
				continue
			}
			t.Errorf("%s does not say: %s", output, wrong)
		}
	}
	for what, words := range map[string]string{"quilting in other words": "Quilt as desired", "layout in other words": "Lay out all"} {
		if len(unlikeSewing(strings.ReplaceAll(said["sew"], words, "Do it"), d)) == 0 {
			t.Errorf("%s goes unseen", what)
		}
	}
}
