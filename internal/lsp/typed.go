package lsp

import (
	"net/url"
	"path/filepath"
	"strings"
	"sync"

	"eighthturn/internal/files"
)

// Typed is a text that is typed elsewhere than in an editor that speaks the protocol, answered as one that does: positions are
// lines and UTF-16 code units from 0. The last text is kept, so that what is asked of it again is not read again.
type Typed struct {
	uri    string
	photos *files.Album // that the text may name
	lock   sync.Mutex   // one question at a time
	last   *document
}

// Answer is what is known of a text.
type Answer struct {
	Types  []string         `json:"types"`  // of words, by the numbers of Tokens
	Tokens []int            `json:"tokens"` // as the protocol's semantic tokens
	Faults []diagnostic     `json:"faults"`
	Items  []completionItem `json:"items,omitempty"` // what may stand at the place that was asked for
}

// NewTyped is a text of the file at a path, and the photos that it may name.
func NewTyped(path string, photos *files.Album) *Typed {
	slashed := filepath.ToSlash(path)
	if !strings.HasPrefix(slashed, "/") {
		slashed = "/" + slashed
	}
	return &Typed{uri: (&url.URL{Scheme: "file", Path: slashed}).String(), photos: photos}
}

// Ask gives what is known of a text, and what may stand at a place of it; no place is a line below 0. Places past the end are at it.
func (t *Typed) Ask(text string, line, character int) Answer {
	t.lock.Lock()
	defer t.lock.Unlock()
	if t.last == nil || t.last.text.string != text {
		t.last = &document{uri: t.uri, photos: t.photos, text: newText(text, false)}
	}
	a := Answer{Types: tokenTypes(), Tokens: t.last.tokensOf(0, len(text)).Data, Faults: t.last.diagnostics()}
	if line >= 0 {
		a.Items, _ = t.last.completion(&placed{Position: position{line, character}}).([]completionItem)
	}
	return a
}
