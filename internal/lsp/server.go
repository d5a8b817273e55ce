// Package lsp turns the requests of text editors about layouts into answers: the Language Server Protocol 3.17 on standard
// input and output. It checks what is typed as every command does, and words come from package report.
package lsp

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"log"
	"slices"
	"sync"
	"time"

	"github.com/sourcegraph/jsonrpc2"
)

// Codes of errors that the protocol adds to those of JSON-RPC.
const notInitialized = -32002

// failed is an error of the protocol.
func failed(code int64, format string, values ...any) *jsonrpc2.Error {
	return &jsonrpc2.Error{Code: code, Message: fmt.Sprintf(format, values...)}
}

// errNoShutdown is how a server ends that was told to exit before it was told to shut down.
var errNoShutdown = errors.New("the editor left without saying so")

// pause is how long nobody types before what is wrong is told: shorter than one looks up, longer than from one key to the next.
const pause = 120 * time.Millisecond

// Serve answers the requests of an editor until it says that it leaves, or its stream ends.
func Serve(in io.Reader, out io.WriteCloser, version string) error {
	s := newServer(version)
	s.pause = pause
	messages := newStream(in, out)
	quiet := jsonrpc2.SetLogger(log.New(io.Discard, "", 0))                                           // what an editor is not answered concerns nobody
	c := jsonrpc2.NewConn(context.Background(), messages, jsonrpc2.HandlerWithError(s.handle), quiet) // reads on when a request is answered: in their order
	<-c.DisconnectNotify()
	s.mutex.Lock()
	defer s.mutex.Unlock()
	switch s.state {
	case exited:
		return errNoShutdown
	case down:
		return nil
	}
	return messages.ended
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
	pause   time.Duration // between the last keystroke and news of what is wrong

	mutex sync.Mutex // one request at a time
	state state
	bytes bool // positions count bytes
	open  map[string]*document
}

func newServer(version string) *server {
	return &server{version: version, open: map[string]*document{}, notify: func(string, any) {}}
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
			return nil, failed(jsonrpc2.CodeInvalidParams, "%s", err.Error())
		}
		return answer(s, &p)
	}
}

// at is a method about an open document.
func at(answer func(d *document, p *placed) any) method {
	return on(func(s *server, p *placed) (any, error) {
		d := s.open[p.Document.URI]
		if d == nil {
			return nil, failed(jsonrpc2.CodeInvalidParams, "this document is not open")
		}
		return answer(d, p), nil
	})
}

// methods is every request and notification that is answered.
func methods() map[string]method {
	return map[string]method{
		"initialize":                             on((*server).initialize),
		"initialized":                            on(func(*server, *struct{}) (any, error) { return nil, nil }),
		"shutdown":                               on((*server).shutdown),
		"exit":                                   on((*server).exit),
		"textDocument/didOpen":                   on((*server).didOpen),
		"textDocument/didChange":                 on((*server).didChange),
		"textDocument/didClose":                  on((*server).didClose),
		"textDocument/hover":                     at((*document).hover),
		"textDocument/completion":                at((*document).completion),
		"textDocument/signatureHelp":             at((*document).signatureHelp),
		"textDocument/definition":                at((*document).definition),
		"textDocument/references":                at((*document).references),
		"textDocument/documentHighlight":         at((*document).highlights),
		"textDocument/prepareRename":             at((*document).prepareRename),
		"textDocument/rename":                    on((*server).rename),
		"textDocument/formatting":                at((*document).formatting),
		"textDocument/codeAction":                at((*document).codeActions),
		"textDocument/documentColor":             at((*document).colors),
		"textDocument/colorPresentation":         at((*document).presentations),
		"textDocument/foldingRange":              at((*document).folds),
		"textDocument/documentSymbol":            at((*document).symbols),
		"textDocument/semanticTokens/full":       at((*document).tokens),
		"textDocument/semanticTokens/full/delta": at((*document).tokensSince),
		"textDocument/semanticTokens/range":      at((*document).tokensIn),
	}
}

// answer answers one request.
func (s *server) answer(name string, params json.RawMessage) (any, error) {
	m, known := methods()[name]
	s.mutex.Lock()
	defer s.mutex.Unlock()
	switch {
	case !known:
		return nil, failed(jsonrpc2.CodeMethodNotFound, "%q", name)
	case s.state == fresh && name != "initialize" && name != "exit":
		return nil, failed(notInitialized, "initialize comes first")
	case s.state == down && name != "exit":
		return nil, failed(jsonrpc2.CodeInvalidRequest, "the server was shut down")
	}
	return m(s, params)
}

// handle answers a request that comes by the stream.
func (s *server) handle(ctx context.Context, c *jsonrpc2.Conn, r *jsonrpc2.Request) (result any, err error) {
	defer func() {
		if broken := recover(); broken != nil {
			result, err = nil, failed(jsonrpc2.CodeInternalError, "%s: %v", r.Method, broken)
		}
	}()
	s.mutex.Lock()                                                                   // news may be on their way
	s.notify = func(method string, params any) { _ = c.Notify(ctx, method, params) } // an editor that is gone needs no news
	s.mutex.Unlock()
	var raw json.RawMessage
	if r.Params != nil {
		raw = *r.Params
	}
	result, err = s.answer(r.Method, raw)
	if r.Method == "exit" {
		_ = c.Close()
	}
	return result, err
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
		return nil, failed(jsonrpc2.CodeInvalidRequest, "the server is initialized already")
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
				"legend": object{"tokenTypes": tokenTypes(), "tokenModifiers": []string{}}, "full": object{"delta": true}, "range": true,
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
		return nil, failed(jsonrpc2.CodeInvalidParams, "this document is not open")
	}
	for i, c := range p.Changes {
		next, ok := d.text.changed(c)
		if !ok {
			return nil, failed(jsonrpc2.CodeInvalidParams, "change %d ends before it begins", i)
		}
		d.become(next, p.Document.Version)
	}
	s.publishLater(d)
	return nil, nil
}

func (s *server) didClose(p *placed) (any, error) {
	if _, open := s.open[p.Document.URI]; open {
		delete(s.open, p.Document.URI)
		s.notify("textDocument/publishDiagnostics", published{URI: p.Document.URI, Diagnostics: []diagnostic{}})
	}
	return nil, nil
}

// publishLater publishes what is wrong with a document once nothing has been typed for a while.
func (s *server) publishLater(d *document) {
	if s.pause == 0 {
		s.publish(d)
		return
	}
	if d.due != nil {
		d.due.Reset(s.pause)
		return
	}
	d.due = time.AfterFunc(s.pause, func() {
		defer func() { _ = recover() }() // what cannot be read says nothing, and is asked again
		s.mutex.Lock()
		defer s.mutex.Unlock()
		if s.open[d.uri] == d && s.state == running {
			s.publish(d)
		}
	})
}

// publish sends what is wrong with a document.
func (s *server) publish(d *document) {
	s.notify("textDocument/publishDiagnostics", published{d.uri, d.version, d.diagnostics()})
}

func (s *server) rename(p *placed) (any, error) {
	d := s.open[p.Document.URI]
	if d == nil {
		return nil, failed(jsonrpc2.CodeInvalidParams, "this document is not open")
	}
	edit, err := d.rename(p)
	if err != nil {
		return nil, failed(jsonrpc2.CodeInvalidParams, "%s", fmt.Sprint(err))
	}
	return edit, nil
}
