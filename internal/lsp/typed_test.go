package lsp

import (
	"encoding/json"
	"strings"
	"testing"

	"eighthturn/internal/files"
)

// TestTypedIsAnsweredAsAnEditor: what is said of a text is what an editor is told of the same one.
func TestTypedIsAnsweredAsAnEditor(t *testing.T) {
	text := "side 6\nfabric rust #a84a2a # 🧵\nfabric cream #f4ead7\nblock H halves pieces rust crem\ngrid\n H H\n"
	typed := NewTyped("/nowhere/a b.quilt", files.In("/nowhere"))
	d := newDocument("file:///nowhere/a%20b.quilt", 1, newText(text, false))
	for range 2 {
		a := typed.Ask(text, 3, 30)
		for name, pair := range map[string][2]any{
			"tokens": {a.Tokens, d.tokens(nil).(semanticTokens).Data},
			"faults": {a.Faults, d.diagnostics()},
			"items":  {a.Items, d.completion(&placed{Position: position{3, 30}})},
		} {
			got, _ := json.Marshal(pair[0])
			want, _ := json.Marshal(pair[1])
			if string(got) != string(want) || len(got) < 20 {
				t.Errorf("%s: %s, an editor is told %s", name, got, want)
			}
		}
	}
	if a := typed.Ask(text, -1, 0); a.Items != nil {
		t.Errorf("no place has %v", a.Items)
	}
	for _, odd := range []string{"", "\r\n\r", "\xff\xfe", strings.Repeat("a ", 1000)} {
		if a := typed.Ask(odd, 1<<30, 1<<30); len(a.Types) == 0 {
			t.Errorf("%q has no types", odd)
		}
	}
}
