package lsp

import (
	"bufio"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"net/textproto"
	"strconv"
	"strings"
	"testing"
	"time"
)

// FuzzMessages says anything to a server over its stream, a message a line, or bytes as they are: it ends when the stream does, whatever
// it answers is framed and JSON-RPC, and each request has one answer.
func FuzzMessages(f *testing.F) {
	const begin = `{"jsonrpc":"2.0","id":0,"method":"initialize","params":{"capabilities":{}}}` + "\n"
	opens, _ := json.Marshal(object{"jsonrpc": "2.0", "method": "textDocument/didOpen", "params": object{"textDocument": object{"uri": uri, "version": 1, "text": small}}})
	for name := range methods() {
		f.Add(begin+string(opens)+"\n"+fmt.Sprintf(`{"jsonrpc":"2.0","id":1,"method":%q,"params":{"textDocument":{"uri":%q,"version":2},"position":{"line":1,"character":2},"contentChanges":[{"text":"strip"}],"newName":"x"}}`, name, uri), true)
	}
	f.Add(begin+`{"jsonrpc":"2.0","method":"textDocument/didChange","params":{"contentChanges":[{"range":{"start":{"line":-1}},"text":null}]}}`, true)
	f.Add(begin+`{"id":null,"method":7}`+"\n[]\n"+`{"jsonrpc":"2.0","id":"a","method":"shutdown"}`+"\n"+`{"jsonrpc":"2.0","method":"exit"}`, true)
	f.Add("Content-Length: 2\r\n\r\n{}Content-Length: 9999999999999999999\r\n\r\n", false)
	f.Fuzz(func(t *testing.T, said string, framed bool) {
		if len(said) > 4000 {
			return
		}
		in := said
		if framed {
			in = ""
			for _, m := range strings.Split(said, "\n") {
				in += fmt.Sprintf("Content-Length: %d\r\n\r\n%s", len(m), m)
			}
		}
		var out syncBuffer
		ended := make(chan error, 1)
		go func() { ended <- Serve(strings.NewReader(in), &out, "test") }()
		select {
		case <-ended:
		case <-time.After(20 * time.Second):
			t.Fatalf("it does not end: %q", in)
		}
		out.mutex.Lock()
		defer out.mutex.Unlock()
		if err := wrongAnswers(out.String(), strings.Count(said, `"id"`)); err != nil {
			t.Errorf("%v\n%q", err, in)
		}
	})
}

// wrongAnswers says what is not framed or no message of the protocol, and that there are more answers than requests may have been.
func wrongAnswers(said string, most int) error {
	r := bufio.NewReader(strings.NewReader(said))
	answers := 0
	for {
		head, err := textproto.NewReader(r).ReadMIMEHeader()
		if errors.Is(err, io.EOF) && len(head) == 0 {
			break
		}
		if err != nil {
			return fmt.Errorf("a head that is none: %w", err)
		}
		size, err := strconv.Atoi(head.Get("Content-Length"))
		if err != nil {
			return err
		}
		body := make([]byte, size)
		if _, err := io.ReadFull(r, body); err != nil {
			return fmt.Errorf("a message that is cut off: %w", err)
		}
		var m struct {
			Version string          `json:"jsonrpc"`
			ID      json.RawMessage `json:"id"`
			Method  string          `json:"method"`
			Result  json.RawMessage `json:"result"`
			Error   json.RawMessage `json:"error"`
		}
		if err := json.Unmarshal(body, &m); err != nil || m.Version != "2.0" {
			return fmt.Errorf("%s is no message: %w", body, err)
		}
		if m.Method != "" {
			continue
		}
		if (m.Result == nil) == (m.Error == nil) {
			return fmt.Errorf("%s is no answer", body)
		}
		if string(m.ID) != "null" {
			answers++
		}
	}
	if answers > most {
		return fmt.Errorf("%d answers to %d requests", answers, most)
	}
	return nil
}

// TestWrongAnswersCatch: answers that are cut off, of another protocol or too many are noticed.
func TestWrongAnswersCatch(t *testing.T) {
	const good = `{"jsonrpc":"2.0","id":1,"result":null}`
	framed := func(m string) string { return fmt.Sprintf("Content-Length: %d\r\n\r\n%s", len(m), m) }
	if err := wrongAnswers(framed(good), 1); err != nil {
		t.Error(err)
	}
	for _, bad := range []string{framed(good) + framed(good), framed(good)[:40], framed(`{"jsonrpc":"1.0","id":1,"result":1}`), framed(`{"jsonrpc":"2.0","id":1}`), good} {
		if wrongAnswers(bad, 1) == nil {
			t.Errorf("%q goes through", bad)
		}
	}
}
