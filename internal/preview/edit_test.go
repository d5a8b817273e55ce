package preview

import (
	"encoding/json"
	"fmt"
	"io"
	"math/rand/v2"
	"net/http"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"sync"
	"syscall"
	"testing"
	"testing/iotest"
	"time"

	"eighthturn/internal/quilttest/judges"
	"eighthturn/layout"
)

// editing is a site whose page may write a file of a test, as a page sees it.
type editing struct {
	t    *testing.T
	site *site
	file string
}

func edit(t *testing.T, text string) *editing {
	t.Helper()
	e := &editing{t: t, file: filepath.Join(t.TempDir(), "quilt.quilt")}
	put(t, e.file, text)
	e.site = newSite(e.file, Options{Edit: true})
	e.published()
	return e
}

// published shows what the file says.
func (e *editing) published() {
	r := read(disk{}, e.file)
	e.site.state.publish(r, draw(r.text, drawing{}))
}

func (e *editing) says() string {
	e.t.Helper()
	b, err := os.ReadFile(e.file)
	must(e.t, err)
	return string(b)
}

// mark is of the text that the page saw last.
func (e *editing) mark() string { return e.site.state.current().mark }

// posted is a request as the page makes it.
func posted(s *site, content string) func(*http.Request) {
	return func(r *http.Request) {
		r.Method, r.Body, r.ContentLength = http.MethodPost, io.NopCloser(strings.NewReader(content)), int64(len(content))
		for key, value := range map[string]string{"Content-Type": "application/json", "Origin": "http://127.0.0.1:8000", "Sec-Fetch-Site": "same-origin", tokenHeader: s.editor.token} {
			r.Header.Set(key, value)
		}
	}
}

// ask does one thing and gives the status and the reply.
func (e *editing) ask(q editRequest) (int, editReply) {
	e.t.Helper()
	return e.asked(ask(e.site, "/edit", posted(e.site, string(encoded(q)))))
}

func (e *editing) asked(r *http.Response) (int, editReply) {
	e.t.Helper()
	var reply editReply
	must(e.t, json.Unmarshal([]byte(body(r)), &reply))
	return r.StatusCode, reply
}

// TestWhoMayWrite asks every address that takes what the page posts for everything that no page of ours sends: nothing is written,
// and nothing is told.
func TestWhoMayWrite(t *testing.T) {
	e := edit(t, lanterns)
	content := map[string]string{"/edit": string(encoded(editRequest{Do: "color", Seen: e.mark(), Fabric: "rust", Color: "#010203"})), "/typed": `{"text":"a","line":0,"character":1}`}
	for _, route := range postRoutes() {
		own := posted(e.site, content[route.path])
		for name, c := range map[string]struct {
			change func(*http.Request)
			status int
		}{
			"host: foreign":             {host("evil.example:8000"), 403},
			"host: none":                {host(""), 403},
			"rebound":                   {both(host("evil.example:8000"), header("Origin", "http://evil.example:8000")), 403},
			"origin: none":              {func(r *http.Request) { r.Header.Del("Origin") }, 403},
			"origin: foreign":           {header("Origin", "http://evil.example"), 403},
			"origin: null":              {header("Origin", "null"), 403},
			"origin: another program":   {header("Origin", "http://127.0.0.1:3000"), 403},
			"origin: other name":        {header("Origin", "http://localhost:8000"), 403},
			"origin: twice":             {func(r *http.Request) { r.Header["Origin"] = []string{"http://127.0.0.1:8000", "http://127.0.0.1:8000"} }, 403},
			"site: cross":               {header("Sec-Fetch-Site", "cross-site"), 403},
			"site: same":                {header("Sec-Fetch-Site", "same-site"), 403},
			"site: typed":               {header("Sec-Fetch-Site", "none"), 403},
			"site: a form of another":   {both(header("Sec-Fetch-Site", "cross-site"), header("Sec-Fetch-Mode", "navigate"), header("Sec-Fetch-Dest", "document")), 403},
			"method: GET":               {method("GET"), 405},
			"method: HEAD":              {method("HEAD"), 405},
			"method: PUT":               {method("PUT"), 405},
			"method: OPTIONS":           {method("OPTIONS"), 405},
			"type: none":                {func(r *http.Request) { r.Header.Del("Content-Type") }, 415},
			"type: a form's":            {header("Content-Type", "application/x-www-form-urlencoded"), 415},
			"type: text":                {header("Content-Type", "text/plain"), 415},
			"type: text that says JSON": {header("Content-Type", "text/plain; application/json"), 415},
			"length: unknown":           {func(r *http.Request) { r.ContentLength = -1 }, 411},
			"length: too large":         {func(r *http.Request) { r.ContentLength = maxEditBytes + 1 }, 413},
			"length: a lie": {func(r *http.Request) {
				r.Body = io.NopCloser(io.MultiReader(strings.NewReader(`{"do":"text","text":"`), strings.NewReader(strings.Repeat("a", maxEditBytes))))
			}, 413},
			"token: none":     {func(r *http.Request) { r.Header.Del(tokenHeader) }, 403},
			"token: wrong":    {header(tokenHeader, strings.Repeat("0", 32)), 403},
			"token: part":     {header(tokenHeader, e.site.editor.token[:31]), 403},
			"token: in query": {both(func(r *http.Request) { r.Header.Del(tokenHeader) }, func(r *http.Request) { r.URL.RawQuery = tokenHeader + "=" + e.site.editor.token }), 403},
			"no JSON":         {func(r *http.Request) { r.Body = io.NopCloser(strings.NewReader("do=tidy")) }, 400},
			"unknown field":   {func(r *http.Request) { r.Body = io.NopCloser(strings.NewReader(`{"path":"/etc/passwd"}`)) }, 400},
			"two requests":    {func(r *http.Request) { r.Body = io.NopCloser(strings.NewReader(`{}{}`)) }, 400},
			"cut off":         {func(r *http.Request) { r.Body = io.NopCloser(iotest.TimeoutReader(strings.NewReader(`{"do":"ti`))) }, 400},
		} {
			r := ask(e.site, route.path, both(own, c.change))
			text := body(r)
			if r.StatusCode != c.status {
				t.Errorf("%s, %s: %d, wanted %d: %.100s", route.path, name, r.StatusCode, c.status, text)
			}
			if strings.Contains(text, "lanterns") || strings.Contains(text, e.site.editor.token) || r.Header.Get("Access-Control-Allow-Origin") != "" {
				t.Errorf("%s, %s: a refusal tells something: %.100s", route.path, name, text)
			}
			if e.says() != lanterns {
				t.Fatalf("%s, %s: the file was written", route.path, name)
			}
		}
		plainly := newSite(e.file, Options{})
		plainly.editor = e.site.editor // for the token
		if r := ask(plainly, route.path, own); r.StatusCode != http.StatusMethodNotAllowed {
			t.Errorf("%s without --edit: %d", route.path, r.StatusCode)
		}
		if r := ask(plainly, route.path, nil); r.StatusCode != http.StatusNotFound {
			t.Errorf("GET %s without --edit: %d", route.path, r.StatusCode)
		}
		if r := ask(e.site, route.path, own); r.StatusCode != http.StatusOK {
			t.Errorf("%s as the page asks: %d", route.path, r.StatusCode)
		}
		if (route.path == "/edit") != (e.says() != lanterns) {
			t.Errorf("%s as the page asks: the file says\n%s", route.path, e.says())
		}
		put(t, e.file, lanterns)
	}
	if state := body(ask(newSite(e.file, Options{}), "/state", nil)); strings.Contains(state, `"edit"`) {
		t.Errorf("without --edit the page is told a token: %s", state)
	}
}

// TestEdits: a color, a hint, tidy and typed text are written, undone and redone, if the page saw the newest text.
func TestEdits(t *testing.T) {
	e := edit(t, lanterns)
	if status, reply := e.ask(editRequest{Do: "color", Seen: e.mark(), Fabric: "rust", Color: "#010203"}); status != 200 || reply.Line != 5 || reply.Undo != 1 || reply.Mark != markOf(e.says()) {
		t.Errorf("%d %+v", status, reply)
	}
	colored := strings.Replace(lanterns, "#b5532a", "#010203", 1)
	if e.says() != colored {
		t.Fatalf("written is\n%s", e.says())
	}
	if status, reply := e.ask(editRequest{Do: "tidy", Seen: e.mark()}); status != 409 || reply.Why == "" {
		t.Errorf("a page that has not seen the newest text: %d %+v", status, reply)
	}
	if e.ask(editRequest{Do: "undo"}); e.says() != lanterns {
		t.Errorf("undone is\n%s", e.says())
	}
	if status, reply := e.ask(editRequest{Do: "redo"}); e.says() != colored || status != 200 || reply.Undo != 1 || reply.Redo != 0 {
		t.Errorf("redone is\n%s%d %+v", e.says(), status, reply)
	}
	put(t, e.file, strings.Replace(colored, "strip   4", "strip 4", 1))
	e.published()
	if e.ask(editRequest{Do: "tidy", Seen: e.mark()}); e.says() != colored {
		t.Errorf("tidied is\n%s", e.says())
	}
	e.ask(editRequest{Do: "undo"})
	e.published()
	put(t, e.file, colored+"# theirs\n")
	if e.ask(editRequest{Do: "undo"}); e.says() != lanterns+"# theirs\n" {
		t.Errorf("undone under somebody else's line is\n%s", e.says())
	}
	put(t, e.file, strings.Replace(lanterns, "#b5532a", "#777777", 1))
	if status, reply := e.ask(editRequest{Do: "redo"}); status != 409 || reply.Redo == 0 {
		t.Errorf("redone over somebody else's line: %d %+v", status, reply)
	}
	for _, q := range []editRequest{{Do: "color", Seen: markOf(e.says()), Fabric: "plum", Color: "#fff"}, {Do: "color", Seen: markOf(e.says()), Fabric: "rust", Color: "no"}, {Do: "hint", Seen: markOf(e.says())}, {Do: "rename", Seen: markOf(e.says())}, {}} {
		was := e.says()
		if status, reply := e.ask(q); status == 200 || reply.Why == "" || e.says() != was {
			t.Errorf("%+v: %d %+v", q, status, reply)
		}
	}
	put(t, e.file, strings.Replace(lanterns, "kites navy", "kites nayv", 1))
	e.published()
	if fix := e.site.state.current().faults[0].Fix; len(fix) != 1 || !strings.Contains(fix[0].Text, "kites navy") {
		t.Errorf("the fix is %+v", fix)
	}
	if status, _ := e.ask(editRequest{Do: "tidy", Seen: e.mark()}); status != 409 {
		t.Errorf("a layout with errors is tidied: %d", status)
	}
	if e.ask(editRequest{Do: "hint", Seen: e.mark(), Fault: 0}); e.says() != lanterns {
		t.Errorf("with the hint it says\n%s", e.says())
	}
}

// TestTyping: what is typed is merged with what somebody else saves meanwhile where the lines differ, and kept from the file where
// they do not; line ends and a byte-order mark stay.
func TestTyping(t *testing.T) {
	for name, c := range map[string]struct{ base, mine, there, want string }{
		"alone":         {"a\nb\nc\n", "a\nB\nc\n", "a\nb\nc\n", "a\nB\nc\n"},
		"both":          {"a\nb\nc\nd\n", "a\nB\nc\nd\n", "a\nb\nc\nD\n", "a\nB\nc\nD\n"},
		"the same":      {"a\nb\n", "a\nB\n", "a\nB\n", "a\nB\n"},
		"one line":      {"a\nb\nc\n", "a\nB\nc\n", "a\nX\nc\n", ""},
		"all gone":      {"a\nb\nc\n", "a\nB\nc\n", "", ""},
		"added":         {"a\nb\n", "a\nb\nmine\n", "theirs\na\nb\n", "theirs\na\nb\nmine\n"},
		"carriage":      {"a\nb\nc\n", "a\nB\nnew\nc\n", "a\r\nb\r\nc\r\n", "a\r\nB\r\nnew\r\nc\r\n"},
		"returns alone": {"a\nb\nc", "a\nB\nc", "a\rb\rc", "a\rB\rc"},
		"mixed ends":    {"a\nb\nc\nd\n", "a\nb\nC\nd\n", "a\r\nb\nc\r\nd\r\n", "a\r\nb\nC\r\nd\r\n"},
		"a mark":        {"a\nb\n", "a\nB\n", "\ufeffa\r\nb\r\n", "\ufeffa\r\nB\r\n"},
		"no last end":   {"a\nb", "a\nb\nc", "a\nb", "a\nb\nc"},
	} {
		e := edit(t, c.there)
		status, reply := e.ask(editRequest{Do: "text", Base: c.base, Text: c.mine})
		if c.want == "" {
			if status != 409 || reply.Why == "" || e.says() != c.there || *reply.Text != plain(c.there) {
				t.Errorf("%s: %d %+v, the file says %q", name, status, reply, e.says())
			}
			continue
		}
		if status != 200 || e.says() != c.want || *reply.Text != plain(c.want) {
			t.Errorf("%s: %d, the file says %q, wanted %q", name, status, e.says(), c.want)
		}
	}
}

// TestWhatCannotBeWritten: of a link, a file that may only be read, one that is gone, one that is no text, and a full disk the page is
// told why, and the file is as it was.
func TestWhatCannotBeWritten(t *testing.T) {
	for name, c := range map[string]struct {
		prepare func(e *editing)
		why     string
		status  int
	}{
		"a link": {func(e *editing) {
			must(t, os.Rename(e.file, e.file+".real"))
			must(t, os.Symlink(e.file+".real", e.file))
		}, "link", 409},
		"read only": {func(e *editing) { must(t, os.Chmod(e.file, 0o444)) }, "only be read", 409},
		"gone":      {func(e *editing) { must(t, os.Remove(e.file)) }, "does not exist", 409},
		"a folder":  {func(e *editing) { must(t, os.Remove(e.file)); must(t, os.Mkdir(e.file, 0o755)) }, "folder", 409},
		"UTF-16":    {func(e *editing) { put(t, e.file, "\xff\xfeq\x00") }, "UTF-8", 409},
		"no text":   {func(e *editing) { put(t, e.file, "a\x00b") }, "UTF-8", 409},
		"a full disk": {func(e *editing) {
			e.site.editor.write = func(string, string, string) error { return &os.PathError{Op: "write", Path: "x", Err: syscall.ENOSPC} }
		}, "disk is full", 507},
		"a closed one": {func(e *editing) {
			e.site.editor.write = func(string, string, string) error {
				return &os.PathError{Op: "open", Path: "/secret/x", Err: syscall.EACCES}
			}
		}, "permission denied", 409},
		"too much": {func(*editing) {}, "more than a layout", 413},
	} {
		if runtime.GOOS == "windows" && (name == "a link" || name == "a closed one") {
			continue
		}
		e := edit(t, lanterns)
		c.prepare(e)
		before := read(disk{}, e.file)
		text := lanterns + "# mine\n"
		if name == "too much" {
			text += strings.Repeat("#", layout.MaxBytes)
		}
		status, reply := e.ask(editRequest{Do: "text", Base: lanterns, Text: text})
		if status != c.status || !strings.Contains(reply.Why, c.why) || strings.Contains(reply.Why, "secret") || reply.Undo != 0 {
			t.Errorf("%s: %d %+v", name, status, reply)
		}
		if after := read(disk{}, e.file); !after.same(&before) {
			t.Errorf("%s: the file changed from %+v to %+v", name, before, after)
		}
	}
}

// TestWritesAmongSaves: in hundreds of interleavings of saves by an editor and writes by a page nothing is lost. Each adds a line of its own
// to the text that it saw last: the page through the preview, the editor by reading and saving, in place or by a new file. Of every
// line the page was told is written, the editor either saw it, or saved over it without looking; of the editor's lines none is lost.
func TestWritesAmongSaves(t *testing.T) {
	t.Parallel()
	e := edit(t, "# begun\n")
	e.site.editor.calm = 25 * time.Millisecond
	for round := range judges.Of(100, 500) {
		mine, theirs := fmt.Sprintf("# mine %d\n", round), fmt.Sprintf("# theirs %d\n", round)
		base := fmt.Sprintf("# begun %d\n", round)
		put(t, e.file, base)
		e.site.state.publish(reading{text: base}, drawing{source: layout.NewSource(base)})
		var both sync.WaitGroup
		both.Add(2)
		saw := ""
		go func() {
			defer both.Done()
			for range rand.IntN(40) {
				runtime.Gosched()
			}
			b, _ := os.ReadFile(e.file)
			saw = string(b)
			if round%2 == 0 {
				_ = os.WriteFile(e.file, []byte(theirs+saw), 0o644)
				return
			}
			_ = os.WriteFile(e.file+".new", []byte(theirs+saw), 0o644)
			_ = os.Rename(e.file+".new", e.file)
		}()
		var status int
		var reply editReply
		go func() {
			defer both.Done()
			status, reply = e.ask(editRequest{Do: "text", Base: base, Text: base + mine})
		}()
		both.Wait()
		now := e.says()
		if !strings.Contains(now, theirs) || !strings.Contains(now, base) {
			t.Fatalf("round %d: what was saved is lost: %q", round, now)
		}
		if has := strings.Contains(now, mine); !has && status == 200 && strings.Contains(saw, mine) {
			t.Fatalf("round %d: what was written and seen is lost: %q", round, now)
		}
		if status != 200 && reply.Why == "" {
			t.Fatalf("round %d: not written and not told why: %d", round, status)
		}
	}
}
