package engine

import (
	"bytes"
	"context"
	"fmt"
	"io"
	"net/http"
	"net/url"
	"runtime/debug"
	"time"
)

// Request is what a page asks for: an address as the page's own preview would have it, and what it posts, nil where it only looks.
type Request struct {
	Address string
	Posted  []byte
	Token   string // of a request that writes
}

// origin is the address that requests seem to come from and to go to; a preview answers to no other.
const origin = "http://localhost"

// Answer has a request answered. Begun is told the status and the kind of content before anything else, and what is written goes to w
// at once; an answer that has no end, as that of events, ends with the context.
func Answer(ctx context.Context, h http.Handler, q Request, begun func(status int, header http.Header), w io.Writer) {
	a := &answer{header: http.Header{}, begun: begun, w: w}
	defer func() {
		if broke := recover(); broke != nil {
			http.Error(a, fmt.Sprintf("Something broke inside eighthturn. Please report it: %v\n%s", broke, debug.Stack()), http.StatusInternalServerError)
		}
	}()
	at, err := url.Parse(origin + "/" + q.Address)
	if err != nil {
		http.Error(a, "There is nothing here.", http.StatusNotFound)
		return
	}
	r := (&http.Request{Method: http.MethodGet, URL: at, Host: at.Host, Header: http.Header{}, Body: http.NoBody, Proto: "HTTP/1.1", ProtoMajor: 1, ProtoMinor: 1}).WithContext(ctx)
	if q.Posted != nil {
		r.Method, r.Body, r.ContentLength = http.MethodPost, io.NopCloser(bytes.NewReader(q.Posted)), int64(len(q.Posted))
		r.Header.Set("Origin", origin)
		r.Header.Set("Content-Type", "application/json")
		r.Header.Set("X-Edit-Token", q.Token)
	}
	h.ServeHTTP(a, r)
	a.WriteHeader(http.StatusOK)
}

// answer is a response that goes to a page.
type answer struct {
	header http.Header
	begun  func(status int, header http.Header)
	w      io.Writer
}

func (a *answer) Header() http.Header { return a.header }

func (a *answer) WriteHeader(status int) {
	if a.begun != nil {
		a.begun(status, a.header)
	}
	a.begun = nil
}

func (a *answer) Write(b []byte) (int, error) {
	a.WriteHeader(http.StatusOK)
	return a.w.Write(b)
}

// Flush has nothing to do: nothing is held back.
func (a *answer) Flush() {}

// SetWriteDeadline and SetReadDeadline have nothing to do: pages of the same process are never slow.
func (a *answer) SetWriteDeadline(time.Time) error { return nil }

// SetReadDeadline is as SetWriteDeadline.
func (a *answer) SetReadDeadline(time.Time) error { return nil }
