package lsp

import (
	"encoding/json"
	"errors"
	"io"

	"github.com/sourcegraph/jsonrpc2"
)

// stdio is an editor's stream: what it says and what it hears.
type stdio struct {
	io.Reader
	io.WriteCloser
}

// stream reads messages, and remembers what ended them. A message that is neither a request nor an answer is answered with an
// error, and the next one is read.
type stream struct {
	jsonrpc2.ObjectStream
	ended error // set before the connection says that it is closed
}

func newStream(in io.Reader, out io.WriteCloser) *stream {
	return &stream{ObjectStream: jsonrpc2.NewBufferedStream(stdio{in, out}, jsonrpc2.VSCodeObjectCodec{})}
}

// unreadable is the answer to a message that is none.
type unreadable struct {
	Version string          `json:"jsonrpc"`
	ID      *int            `json:"id"` // null, since nobody knows it
	Error   *jsonrpc2.Error `json:"error"`
}

// ReadObject reads the next message into what the library holds it in.
func (s *stream) ReadObject(into any) error {
	for {
		var raw json.RawMessage
		if err := s.ObjectStream.ReadObject(&raw); err != nil {
			if !errors.Is(err, io.EOF) {
				s.ended = err
			}
			return err
		}
		err := json.Unmarshal(raw, into)
		if err == nil {
			return nil
		}
		if err := s.WriteObject(unreadable{"2.0", nil, failed(jsonrpc2.CodeInvalidRequest, "%s", err.Error())}); err != nil {
			s.ended = err
			return err
		}
	}
}
