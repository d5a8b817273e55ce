package preview

import (
	"net/url"
	"slices"
	"strings"
	"testing"

	"eighthturn/layout"
)

// TestEditorAddress: only an editor's own scheme is followed, and a file's name stays one part of the address whatever it holds.
func TestEditorAddress(t *testing.T) {
	for address, want := range map[string]string{
		"vscode://file/{file}:{line}":                 "vscode://file/quilts/two%20words%3F.quilt:{line}",
		"vscode://file{file}:{line}":                  "vscode://file/quilts/two%20words%3F.quilt:{line}",
		"my-editor://open?url=file://{file}&l={line}": "my-editor://open?url=file:///quilts/two%20words%3F.quilt&l={line}",
		"x+y.z-1://{file}":                            "x+y.z-1:///quilts/two%20words%3F.quilt",
	} {
		if err := CheckEditor(address); err != nil {
			t.Errorf("%s: %v", address, err)
		}
		if got := editorAddress(address, "/quilts/two words?.quilt"); got != want {
			t.Errorf("%s opens %s, wanted %s", address, got, want)
		}
	}
	for _, address := range []string{"", "{file}", "javascript:alert(1)//{file}", "javascript://x%0aalert(1)//{file}", "JavaScript://{file}", "data:text/html,{file}", "data://{file}",
		"http://elsewhere.example/{file}", "https://elsewhere.example/{file}", "file://{file}", "blob://{file}", "vbscript://{file}", "view-source://{file}", "1x://{file}", " x://{file}",
		"x y://{file}", "x://no-file:{line}", "x://{file}\n", "x://{file}\"onclick=", "x://{file}<b>", "java\tscript://{file}"} {
		if CheckEditor(address) == nil || editorAddress(address, "/a.quilt") != "" {
			t.Errorf("%q is taken for an editor's address", address)
		}
	}
	for _, path := range []string{"/a/{line}.quilt", "/a/#1.quilt", "/a/100%.quilt", "/a/ü \"quoted\" <b>.quilt", "/a/new\nline.quilt", "/a/x&y=z.quilt"} {
		made := editorAddress("x-edit://open/{file}", path)
		u, err := url.Parse(made)
		if err != nil || u.Path != path || u.Host != "open" || u.RawQuery != "" || u.Fragment != "" || strings.ContainsAny(made, "{}\"<> ") {
			t.Errorf("%q is opened as %s: %v", path, made, err)
		}
	}
}

// TestEditorIsToldOnDemand: the page is told where the file lies only if an editor is to open it.
func TestEditorIsToldOnDemand(t *testing.T) {
	if text := body(ask(aSite(t, Options{}), "/state", nil)); strings.Contains(text, "secret") || strings.Contains(text, `"editor"`) {
		t.Error("without an editor, the page is told where the file lies")
	}
	if text := body(ask(aSite(t, Options{Editor: "x-edit://{file}:{line}"}), "/state", nil)); !strings.Contains(text, `"editor":"x-edit:///somewhere/secret/quilt.quilt:{line}"`) {
		t.Errorf("with an editor: %.300s", text)
	}
}

// TestLineOfTheLayout: a line is the layout's own, of the picture that is asked for.
func TestLineOfTheLayout(t *testing.T) {
	s := aSite(t, Options{})
	lines := strings.Split(lanterns, "\n")
	for query, want := range map[string]string{"": lines[0], "?line=3": lines[2], "?line=3&picture=1": lines[2]} {
		if r := ask(s, "/line"+query, nil); r.StatusCode != 200 || body(r) != want {
			t.Errorf("/line%s: %d", query, r.StatusCode)
		}
	}
	for query, want := range map[string]int{"?line=0": 404, "?line=9999": 404, "?line=x": 404, "?line=-3": 404, "?line=3&picture=7": 409, "?line=3&instance=other": 409} {
		if r := ask(s, "/line"+query, nil); r.StatusCode != want {
			t.Errorf("/line%s: %d, wanted %d", query, r.StatusCode, want)
		}
	}
}

// TestLinesOfEverySort: whatever ends the lines of a layout, its third line is the same, and so is what a hint or a color leaves of some.
func TestLinesOfEverySort(t *testing.T) {
	for _, end := range []string{"\n", "\r\n", "\r", "\u2028", "\u0085"} {
		text := strings.ReplaceAll(lanterns, "\n", end)
		source := layout.NewSource(text)
		at := func(line int) int { return source.LineSpan(line).Start }
		edits := []layout.Edit{{Span: layout.Span{Start: at(2), End: at(2)}, Text: "# one" + end}, {Span: layout.Span{Start: at(3), End: at(3)}, Text: "# "}}
		lines := strings.Split(lanterns, "\n")
		want := []editedLine{{2, "# one"}, {3, lines[1]}, {4, "# " + lines[2]}}
		if got := editedLines(source, edits); !slices.Equal(got, want) {
			t.Errorf("lines that end with %q: %v", end, got)
		}
	}
}
