// Package lsp turns the requests of text editors about layouts into answers: the Language Server Protocol 3.17 on standard
// input and output. It checks what is typed as every command does, and words come from package report.
package lsp

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"slices"
	"sync"

	"github.com/creachadair/jrpc2"
	"github.com/creachadair/jrpc2/channel"
)

// Codes of errors that the protocol adds to those of JSON-RPC.
const notInitialized = jrpc2.Code(-32002)

// errNoShutdown is how a server ends that was told to exit before it was told to shut down.
var errNoShutdown = errors.New("the editor left without saying so")

// Serve answers the requests of an editor until it says that it leaves, or its stream ends.
func Serve(in io.Reader, out io.WriteCloser, version string) error {
	s := newServer(version)
	server := jrpc2.NewServer(s, &jrpc2.ServerOptions{AllowPush: true, DisableBuiltin: true, Concurrency: 1})
	s.notify = func(method string, params any) { _ = server.Notify(context.Background(), method, params) } // an editor that is gone needs no news
	input, feed := io.Pipe()                                                                               // its end can be brought about, that of standard input cannot
	go func() {
		_, err := io.Copy(feed, in)
		feed.CloseWithError(err)
	}()
	s.stop = func() { feed.Close() }
	server.Start(newInTurn(channel.LSP(input, out)))
	err := server.Wait()
	switch {
	case s.state == exited:
		return errNoShutdown
	case s.state == down:
		return nil
	}
	return err
}

// state is how far an editor and the server are with each other.
type state uint8

const (
	fresh   state = iota
	running       // initialized
	down          // was told to shut down
	exited        // was told to exit without that
)

// server is what an editor is answered from.
type server struct {
	version string
	notify  func(method string, params any)
	stop    func()

	mutex sync.Mutex // one request at a time
	state state
	bytes bool // positions count bytes
	open  map[string]*document
}

func newServer(version string) *server {
	return &server{version: version, open: map[string]*document{}, notify: func(string, any) {}, stop: func() {}}
}

// method answers one sort of request.
type method func(s *server, params json.RawMessage) (any, error)

// on is a method with its parameters read.
func on[P any](answer func(s *server, p *P) (any, error)) method {
	return func(s *server, raw json.RawMessage) (any, error) {
		var p P
		if len(raw) == 0 {
			raw = json.RawMessage("null")
		}
		if err := json.Unmarshal(raw, &p); err != nil {
			return nil, jrpc2.Errorf(jrpc2.InvalidParams, "%s", err.Error())
		}
		return answer(s, &p)
	}
}

// at is a method about an open document.
func at(answer func(d *document, p *placed) any) method {
	return on(func(s *server, p *placed) (any, error) {
		d := s.open[p.Document.URI]
		if d == nil {
			return nil, jrpc2.Errorf(jrpc2.InvalidParams, "this document is not open")
		}
		return answer(d, p), nil
	})
}

// methods is every request and notification that is answered.
func methods() map[string]method {
	return map[string]method{
		"initialize":                        on((*server).initialize),
		"initialized":                       on(func(*server, *struct{}) (any, error) { return nil, nil }),
		"shutdown":                          on((*server).shutdown),
		"exit":                              on((*server).exit),
		"textDocument/didOpen":              on((*server).didOpen),
		"textDocument/didChange":            on((*server).didChange),
		"textDocument/didClose":             on((*server).didClose),
		"textDocument/hover":                at((*document).hover),
		"textDocument/completion":           at((*document).completion),
		"textDocument/signatureHelp":        at((*document).signatureHelp),
		"textDocument/definition":           at((*document).definition),
		"textDocument/references":           at((*document).references),
		"textDocument/documentHighlight":    at((*document).highlights),
		"textDocument/prepareRename":        at((*document).prepareRename),
		"textDocument/rename":               on((*server).rename),
		"textDocument/formatting":           at((*document).formatting),
		"textDocument/codeAction":           at((*document).codeActions),
		"textDocument/documentColor":        at((*document).colors),
		"textDocument/colorPresentation":    at((*document).presentations),
		"textDocument/foldingRange":         at((*document).folds),
		"textDocument/documentSymbol":       at((*document).symbols),
		"textDocument/semanticTokens/full":  at((*document).tokens),
		"textDocument/semanticTokens/range": at((*document).tokensIn),
	}
}

// answer answers one request.
func (s *server) answer(name string, params json.RawMessage) (any, error) {
	m, known := methods()[name]
	s.mutex.Lock()
	defer s.mutex.Unlock()
	switch {
	case !known:
		return nil, jrpc2.Errorf(jrpc2.MethodNotFound, "%q", name)
	case s.state == fresh && name != "initialize" && name != "exit":
		return nil, jrpc2.Errorf(notInitialized, "initialize comes first")
	case s.state == down && name != "exit":
		return nil, jrpc2.Errorf(jrpc2.InvalidRequest, "the server was shut down")
	}
	return m(s, params)
}

// Assign gives the library a handler for a method, nil for one that there is not.
func (s *server) Assign(_ context.Context, name string) jrpc2.Handler {
	if methods()[name] == nil {
		return nil
	}
	return func(_ context.Context, r *jrpc2.Request) (result any, err error) {
		defer func() {
			if broken := recover(); broken != nil {
				result, err = nil, jrpc2.Errorf(jrpc2.InternalError, "%s: %v", name, broken)
			}
		}()
		var raw json.RawMessage
		if r.HasParams() {
			if err := r.UnmarshalParams(&raw); err != nil {
				return nil, jrpc2.Errorf(jrpc2.InvalidParams, "%s", err.Error())
			}
		}
		return s.answer(name, bytes.TrimSpace(raw))
	}
}

// Kinds of semantic tokens, by their numbers.
const (
	tokenKeyword = iota
	tokenVariable
	tokenClass
	tokenProperty
	tokenNumber
	tokenString
	tokenComment
	tokenType
)

func tokenTypes() []string {
	return []string{"keyword", "variable", "class", "property", "number", "string", "comment", "type"}
}

type object = map[string]any

func (s *server) initialize(p *initialize) (any, error) {
	if s.state != fresh {
		return nil, jrpc2.Errorf(jrpc2.InvalidRequest, "the server is initialized already")
	}
	s.state = running
	encoding := "utf-16"
	if s.bytes = slices.Contains(p.Capabilities.General.Encodings, "utf-8"); s.bytes {
		encoding = "utf-8"
	}
	return object{
		"capabilities": object{
			"positionEncoding":           encoding,
			"textDocumentSync":           object{"openClose": true, "change": 2},
			"hoverProvider":              true,
			"completionProvider":         object{"triggerCharacters": []string{" ", ":"}},
			"signatureHelpProvider":      object{"triggerCharacters": []string{" "}},
			"definitionProvider":         true,
			"referencesProvider":         true,
			"documentHighlightProvider":  true,
			"renameProvider":             object{"prepareProvider": true},
			"documentFormattingProvider": true,
			"codeActionProvider":         object{"codeActionKinds": []string{"quickfix"}},
			"colorProvider":              true,
			"foldingRangeProvider":       true,
			"documentSymbolProvider":     true,
			"semanticTokensProvider": object{
				"legend": object{"tokenTypes": tokenTypes(), "tokenModifiers": []string{}}, "full": true, "range": true,
			},
		},
		"serverInfo": object{"name": "eighthturn", "version": s.version},
	}, nil
}

func (s *server) shutdown(*struct{}) (any, error) {
	s.state = down
	return nil, nil
}

func (s *server) exit(*struct{}) (any, error) {
	if s.state != down {
		s.state = exited
	}
	s.stop()
	return nil, nil
}

func (s *server) didOpen(p *opened) (any, error) {
	d := newDocument(p.Document.URI, p.Document.Version, newText(p.Document.Text, s.bytes))
	s.open[d.uri] = d
	s.publish(d)
	return nil, nil
}

func (s *server) didChange(p *edited) (any, error) {
	d := s.open[p.Document.URI]
	if d == nil {
		return nil, jrpc2.Errorf(jrpc2.InvalidParams, "this document is not open")
	}
	for i, c := range p.Changes {
		next, ok := d.text.changed(c)
		if !ok {
			return nil, jrpc2.Errorf(jrpc2.InvalidParams, "change %d ends before it begins", i)
		}
		d.become(next, p.Document.Version)
	}
	s.publish(d)
	return nil, nil
}

func (s *server) didClose(p *placed) (any, error) {
	if _, open := s.open[p.Document.URI]; open {
		delete(s.open, p.Document.URI)
		s.notify("textDocument/publishDiagnostics", published{URI: p.Document.URI, Diagnostics: []diagnostic{}})
	}
	return nil, nil
}

// publish sends what is wrong with a document.
func (s *server) publish(d *document) {
	s.notify("textDocument/publishDiagnostics", published{d.uri, d.version, d.diagnostics()})
}

func (s *server) rename(p *placed) (any, error) {
	d := s.open[p.Document.URI]
	if d == nil {
		return nil, jrpc2.Errorf(jrpc2.InvalidParams, "this document is not open")
	}
	edit, err := d.rename(p)
	if err != nil {
		return nil, jrpc2.Errorf(jrpc2.InvalidParams, "%s", fmt.Sprint(err))
	}
	return edit, nil
}
