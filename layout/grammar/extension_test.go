package grammar_test

import (
	"encoding/json"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// manifest is what an editor reads of the extension.
type manifest struct {
	Name, Version, Main string
	Contributes         struct {
		Languages []struct {
			ID, Configuration string
			Extensions        []string
		}
		Grammars []struct{ Language, ScopeName, Path string }
	}
}

// broken says what is wrong with the extension's manifest; there are the files that are packed.
func broken(m manifest, scope string, there func(name string) bool) []string {
	var wrong []string
	law := func(ok bool, what string) {
		if !ok {
			wrong = append(wrong, what)
		}
	}
	law(m.Name != "" && strings.Count(m.Version, ".") == 2, "its name and version")
	law(there(m.Main), "its program is not packed")
	law(len(m.Contributes.Languages) == 1 && len(m.Contributes.Grammars) == 1, "one language, one grammar")
	for _, l := range m.Contributes.Languages {
		law(slices.Contains(l.Extensions, ".quilt"), "the ending of layouts")
		law(there(l.Configuration), "the language's configuration is not packed")
		for _, g := range m.Contributes.Grammars {
			law(g.Language == l.ID && g.ScopeName == scope, "the grammar's language and scope")
			law(there(g.Path), "the grammar is not packed")
		}
	}
	return wrong
}

// TestExtension: the manifest names files that are packed, the grammar that stands beside it, and the ending of layouts.
func TestExtension(t *testing.T) {
	read := func(name string, to any) {
		t.Helper()
		text, err := os.ReadFile(name)
		if err == nil {
			err = json.Unmarshal(text, to)
		}
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
	}
	var m manifest
	var g Grammar
	read("../editor/package.json", &m)
	read("quilt.tmLanguage.json", &g)
	read("../editor/language-configuration.json", &map[string]any{})
	there := func(name string) bool { // what .ci/extension copies
		name = strings.TrimPrefix(name, "./")
		_, beside := os.Stat(filepath.Join("../editor", name))
		return name != "" && (beside == nil && strings.Contains(name, ".js") || name == "quilt.tmLanguage.json")
	}
	for _, wrong := range broken(m, g.ScopeName, there) {
		t.Error(wrong)
	}
	for name, spoil := range map[string]func(m *manifest){
		"another program": func(m *manifest) { m.Main = "./main.js" },
		"another scope":   func(m *manifest) { m.Contributes.Grammars[0].ScopeName = "source.other" },
		"another ending":  func(m *manifest) { m.Contributes.Languages[0].Extensions = []string{".txt"} },
		"no version":      func(m *manifest) { m.Version = "" },
	} {
		var spoiled manifest
		read("../editor/package.json", &spoiled)
		spoil(&spoiled)
		if len(broken(spoiled, g.ScopeName, there)) == 0 {
			t.Errorf("%s passes", name)
		}
	}
}
