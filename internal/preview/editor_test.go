package preview

import (
	"net/url"
	"strings"
	"testing"
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
