//go:build js

// Command engine is the program as a browser runs it, in a worker: pages ask it what they would ask a preview, by messages, and the
// worker's script keeps the files (internal/preview/browser/worker.js).
package main

import (
	"bytes"
	"context"
	"errors"
	"io"
	"net/http"
	"runtime/debug"
	"syscall/js"

	"eighthturn/internal/engine"
	"eighthturn/internal/preview"
	"eighthturn/samples"
	"eighthturn/samples/starters"
)

// memory is how many bytes the program takes before it looks harder for what it no longer needs.
const memory = 1 << 30

func main() {
	debug.SetMemoryLimit(memory)
	host := js.Global().Get("host")
	held := engine.NewHeld(keeper{host}, func(name string, content []byte, why error) {
		said := ""
		if err := why; err != nil {
			said = err.Error()
		}
		host.Call("unkept", name, array(content), said)
	})
	s := &server{host: host, handler: held.Handler(preview.Within(context.Background(), held, beginnings())), running: map[int]context.CancelFunc{}}
	host.Set("ask", js.FuncOf(s.ask))
	host.Set("end", js.FuncOf(s.end))
	host.Set("hold", js.FuncOf(func(_ js.Value, v []js.Value) any {
		held.Hold(v[0].String(), bytesOf(v[1]), v[2].String())
		return nil
	}))
	host.Set("rescue", js.FuncOf(func(_ js.Value, v []js.Value) any {
		held.Rescue(v[0].String(), bytesOf(v[1]))
		return nil
	}))
	host.Call("ready", preview.AssetsKey())
	select {}
}

// beginnings are the layouts that the gallery offers a copy of.
func beginnings() []preview.Beginning {
	var list []preview.Beginning
	for _, s := range starters.All() {
		list = append(list, preview.Beginning{Name: s.Name, About: s.About, Text: s.Text})
	}
	for _, s := range samples.All() {
		list = append(list, preview.Beginning{Name: s.Name, Text: s.Text})
	}
	return list
}

// server answers what pages ask, each request by a goroutine of its own; they take turns.
type server struct {
	host    js.Value
	handler http.Handler
	running map[int]context.CancelFunc
}

// ask is called with the number of a request, its address, what it posts, null for nothing, its token, and whether its answer has no end.
func (s *server) ask(_ js.Value, v []js.Value) any {
	id := v[0].Int()
	q := engine.Request{Address: v[1].String(), Posted: bytesOf(v[2]), Token: v[3].String()}
	ctx, end := context.WithCancel(context.Background())
	s.running[id] = end
	go func() {
		a := &answer{host: s.host, id: id, flows: v[4].Bool()}
		engine.Answer(ctx, s.handler, q, a.begin, a.to())
		a.finish()
		end()
		delete(s.running, id)
	}()
	return nil
}

// end is called with the number of a request whose answer nobody waits for any more.
func (s *server) end(_ js.Value, v []js.Value) any {
	if end := s.running[v[0].Int()]; end != nil {
		end()
	}
	return nil
}

// answer is on its way to a page: in one piece, or as it flows.
type answer struct {
	host   js.Value
	id     int
	flows  bool
	status int
	kind   string
	body   bytes.Buffer
}

func (a *answer) begin(status int, header http.Header) {
	a.status, a.kind = status, header.Get("Content-Type")
}

func (a *answer) to() io.Writer {
	if a.flows {
		return a
	}
	return &a.body
}

// Write hands on a piece of an answer that flows.
func (a *answer) Write(b []byte) (int, error) {
	a.host.Call("piece", a.id, string(b))
	return len(b), nil
}

func (a *answer) finish() { a.host.Call("answer", a.id, a.status, a.kind, array(a.body.Bytes())) }

// keeper is the browser's storage, by way of the worker's script.
type keeper struct{ host js.Value }

func (k keeper) Keep(name string, content []byte, over string) (string, error) {
	v := await(k.host.Call("keep", name, array(content), over))
	if why := v.Get("why"); why.Type() == js.TypeString {
		return "", errors.New(why.String())
	}
	version := v.Get("version").String()
	if there := v.Get("changed"); !there.IsUndefined() {
		return "", &engine.Changed{Content: bytesOf(there), Version: version}
	}
	return version, nil
}

// await waits for a promise that is always kept.
func await(promise js.Value) js.Value {
	kept := make(chan js.Value, 1)
	f := js.FuncOf(func(_ js.Value, v []js.Value) any {
		kept <- v[0]
		return nil
	})
	defer f.Release()
	promise.Call("then", f)
	return <-kept
}

// bytesOf is what a script's array holds, nil for null.
func bytesOf(v js.Value) []byte {
	if v.IsNull() {
		return nil
	}
	b := make([]byte, v.Length())
	js.CopyBytesToGo(b, v)
	return b
}

// array is bytes for a script, null for nil.
func array(b []byte) js.Value {
	if b == nil {
		return js.Null()
	}
	v := js.Global().Get("Uint8Array").New(len(b))
	js.CopyBytesToJS(v, b)
	return v
}
