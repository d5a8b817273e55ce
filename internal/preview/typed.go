package preview

import (
	"net/http"

	"eighthturn/layout"
)

// typedRequest is a text as it is typed on the page, and a place in it for which words are wanted, as lsp.Typed has it.
type typedRequest struct {
	Text      string `json:"text"`
	Line      int    `json:"line"`
	Character int    `json:"character"`
}

// serveTyped answers with what a language server would say of a text that is typed on the page. Nothing is written.
func (s *site) serveTyped(w http.ResponseWriter, r *http.Request) {
	q := typedRequest{Line: -1}
	if !readRequest(w, r, &q) {
		return
	}
	if len(q.Text) > layout.MaxBytes {
		http.Error(w, "This is more than a layout may have.", http.StatusRequestEntityTooLarge)
		return
	}
	send(w, encoded(s.editor.typed.Ask(q.Text, q.Line, q.Character)))
}
