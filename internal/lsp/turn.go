package lsp

import (
	"encoding/json"

	"github.com/creachadair/jrpc2/channel"
)

// inTurn is a channel that gives the next message when the request before it is answered: the library answers requests in
// any order, and an editor counts on the order in which it asked.
type inTurn struct {
	channel.Channel
	turn chan struct{} // holds one where no request is open
}

func newInTurn(c channel.Channel) *inTurn {
	t := &inTurn{c, make(chan struct{}, 1)}
	t.free()
	return t
}

func (t *inTurn) free() {
	select {
	case t.turn <- struct{}{}:
	default:
	}
}

// envelope is what tells requests, notifications and answers apart.
type envelope struct {
	ID     json.RawMessage `json:"id"`
	Method *string         `json:"method"`
}

func (t *inTurn) Recv() ([]byte, error) {
	<-t.turn
	message, err := t.Channel.Recv()
	var e envelope
	if err != nil || json.Unmarshal(message, &e) != nil || e.Method == nil || len(e.ID) == 0 || string(e.ID) == "null" {
		t.free()
	}
	return message, err
}

func (t *inTurn) Send(message []byte) error {
	err := t.Channel.Send(message)
	var e envelope
	if json.Unmarshal(message, &e) != nil || e.Method == nil {
		t.free()
	}
	return err
}
