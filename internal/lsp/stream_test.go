package lsp

import (
	"context"
	"encoding/json"
	"fmt"
	"io"
	"log"
	"regexp"
	"strings"
	"sync"
	"testing"

	"github.com/sourcegraph/jsonrpc2"
)

// TestStream talks to a server over its stream, with the framing of the protocol.
func TestStream(t *testing.T) {
	inR, inW := io.Pipe()
	outR, outW := io.Pipe()
	ended := make(chan error, 1)
	go func() { ended <- Serve(inR, outW, "test") }()
	news := make(chan published, 100)
	heard := func(_ context.Context, _ *jsonrpc2.Conn, r *jsonrpc2.Request) (any, error) {
		var p published
		if r.Params != nil && json.Unmarshal(*r.Params, &p) == nil {
			news <- p
		}
		return nil, nil
	}
	c := jsonrpc2.NewConn(t.Context(), newStream(outR, inW), jsonrpc2.HandlerWithError(heard))
	ctx := context.Background()
	var init struct {
		Capabilities struct{ PositionEncoding string }
	}
	if err := c.Call(ctx, "initialize", object{"capabilities": object{"general": object{"positionEncodings": []string{"utf-16", "utf-8"}}}}, &init); err != nil || init.Capabilities.PositionEncoding != "utf-8" {
		t.Fatal(init, err)
	}
	if err := c.Notify(ctx, "textDocument/didOpen", object{"textDocument": object{"uri": uri, "version": 7, "text": with(small, "strip 4", "stripp 4")}}); err != nil {
		t.Fatal(err)
	}
	if p := <-news; p.Version != 7 || len(p.Diagnostics) == 0 {
		t.Errorf("%+v", p)
	}
	if err := c.Call(ctx, "textDocument/fly", object{}, nil); codeOf(err) != jsonrpc2.CodeMethodNotFound {
		t.Errorf("an unknown method: %v", err)
	}
	if err := c.Notify(ctx, "$/fly", object{}); err != nil {
		t.Error(err)
	}
	if err := c.Call(ctx, "shutdown", nil, nil); err != nil {
		t.Error(err)
	}
	if err := c.Notify(ctx, "exit", nil); err != nil {
		t.Error(err)
	}
	if err := <-ended; err != nil {
		t.Errorf("the server ends with %v", err)
	}
	_ = c.Close()
}

// TestInTurn sends everything at once, and wants the answers in the order of the requests and the server's end in good order; and
// without shutdown, or cut off, an end all the same.
func TestInTurn(t *testing.T) {
	framed := func(messages ...string) string {
		var b strings.Builder
		for _, m := range messages {
			fmt.Fprintf(&b, "Content-Length: %d\r\n\r\n%s", len(m), m)
		}
		return b.String()
	}
	open, _ := json.Marshal(object{"jsonrpc": "2.0", "method": "textDocument/didOpen", "params": object{"textDocument": object{"uri": uri, "version": 1, "text": small}}})
	messages := []string{`{"jsonrpc":"2.0","id":0,"method":"initialize","params":{}}`, string(open)}
	for i := range 40 {
		messages = append(messages, fmt.Sprintf(`{"jsonrpc":"2.0","id":%d,"method":"textDocument/%s","params":{"textDocument":{"uri":%q}}}`, i+1, []string{"foldingRange", "fly", "documentColor"}[i%3], uri))
	}
	shutdown, exit := `{"jsonrpc":"2.0","id":41,"method":"shutdown"}`, `{"jsonrpc":"2.0","method":"exit"}`
	for name, c := range map[string]struct {
		input string
		want  error
		ids   int
	}{
		"in good order":     {framed(append(messages, shutdown, exit)...), nil, 42},
		"without shutdown":  {framed(append(messages, exit)...), errNoShutdown, 41},
		"cut off":           {framed(messages...) + "Content-Length: 400\r\n\r\n{", nil, 41},
		"no text of JSON":   {framed(messages[0], "{]"), nil, 1},
		"requests at once":  {framed(messages[0], `[{"jsonrpc":"2.0","id":7,"method":"shutdown"}]`, exit), nil, 1},
		"no length":         {"Content-Length: x\r\n\r\n{}", nil, 0},
		"nothing but noise": {"\x00\xff\r\n\r\n", nil, 0},
	} {
		var out syncBuffer
		err := Serve(strings.NewReader(c.input), &out, "test")
		if c.want != nil && err != c.want || c.ids >= 42 && err != nil {
			t.Errorf("%s: ends with %v", name, err)
		}
		next := 0
		for _, m := range regexp.MustCompile(`"id":([0-9]+),"(result|error)"`).FindAllStringSubmatch(out.String(), -1) {
			if m[1] == fmt.Sprint(next) {
				next++
			} else if m[1] != "7" {
				t.Errorf("%s: %s is answered, and not %d", name, m[1], next)
			}
		}
		if next != c.ids {
			t.Errorf("%s: %d answers, want %d", name, next, c.ids)
		}
	}
}

// syncBuffer is where a server writes to.
type syncBuffer struct {
	mutex sync.Mutex
	strings.Builder
}

func (b *syncBuffer) Write(p []byte) (int, error) {
	b.mutex.Lock()
	defer b.mutex.Unlock()
	return b.Builder.Write(p)
}

func (b *syncBuffer) Close() error { return nil }

// TestNewsWaitForAPause types quickly over the stream: what is wrong is told of the newest text, and not of every text.
func TestNewsWaitForAPause(t *testing.T) {
	const keys = 200
	var in strings.Builder
	say := func(method string, params any) {
		raw, _ := json.Marshal(object{"jsonrpc": "2.0", "method": method, "params": params})
		fmt.Fprintf(&in, "Content-Length: %d\r\n\r\n%s", len(raw), raw)
	}
	in.WriteString("Content-Length: 58\r\n\r\n" + `{"jsonrpc":"2.0","id":1,"method":"initialize","params":{}}`)
	say("textDocument/didOpen", object{"textDocument": object{"uri": uri, "version": 1, "text": small}})
	for i := range keys {
		say("textDocument/didChange", object{"textDocument": object{"uri": uri, "version": 2 + i}, "contentChanges": []object{{"range": lspRange{position{0, 0}, position{0, 0}}, "text": "x"}}})
	}
	ends, inW := io.Pipe()
	outR, outW := io.Pipe()
	go func() { _ = Serve(io.MultiReader(strings.NewReader(in.String()), ends), outW, "test") }()
	defer inW.Close()
	news := make(chan published, keys+10)
	heard := func(_ context.Context, _ *jsonrpc2.Conn, r *jsonrpc2.Request) (any, error) {
		var p published
		if r.Params != nil && json.Unmarshal(*r.Params, &p) == nil {
			news <- p
		}
		return nil, nil
	}
	jsonrpc2.NewConn(t.Context(), newStream(outR, nopCloser{io.Discard}), jsonrpc2.HandlerWithError(heard), jsonrpc2.SetLogger(log.New(io.Discard, "", 0)))
	told := 0
	for p := range news {
		told++
		if p.Version == keys+1 {
			break
		}
	}
	if told > keys/4 {
		t.Errorf("told %d times of %d texts", told, keys)
	}
}

type nopCloser struct{ io.Writer }

func (nopCloser) Close() error { return nil }
