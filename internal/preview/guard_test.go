package preview

import (
	"bufio"
	"context"
	"fmt"
	"io"
	"net"
	"net/http"
	"net/http/httptest"
	"slices"
	"strings"
	"testing"

	"eighthturn/internal/quilttest/judges"
)

// aSite is a preview's server with something to show, and without a network.
func aSite(t testing.TB, o Options) *site {
	t.Helper()
	s := newSite("/somewhere/secret/quilt.quilt", o)
	s.state.publish(reading{text: lanterns}, draw(lanterns, drawing{}))
	return s
}

// ask sends a request to a site; change makes it what the test wants. Streams end at once.
func ask(s *site, path string, change func(*http.Request)) *http.Response {
	ctx, cancel := context.WithCancel(context.Background())
	r := httptest.NewRequest(http.MethodGet, "/", nil).WithContext(ctx)
	r.URL.Path, r.URL.RawQuery, _ = strings.Cut(path, "?")
	r.Host = "127.0.0.1:8000"
	if change != nil {
		change(r)
	}
	if r.URL.Path == "/events" {
		cancel()
	}
	defer cancel()
	w := httptest.NewRecorder()
	s.ServeHTTP(w, r)
	return w.Result()
}

// everyRoute runs a test for each address that there is.
func everyRoute(t *testing.T, test func(t *testing.T, path string)) {
	t.Helper()
	if len(routes()) < 10 {
		t.Fatalf("there are only %d routes", len(routes()))
	}
	for _, r := range routes() {
		address := r.path
		if address == "/diagram" {
			address += "?tab=1" // of a tab that has diagrams
		}
		switch address {
		case "/color":
			address += "?try=0-1f3350"
		case "/cloth.png", "/fussy", "/centers":
			address += "?fabric=0"
		case "/motif":
			address += "?motif=bloom&of=navy&across=1&down=2&pointing=3"
		}
		t.Run(r.path, func(t *testing.T) { test(t, address) })
	}
}

func body(r *http.Response) string {
	b, _ := io.ReadAll(r.Body) // from memory
	return string(b)
}

// requests are what every route must answer alike, whatever it gives.
var requests = []struct {
	name   string
	change func(*http.Request)
	status int
}{
	{"plain", nil, 200},
	{"host: localhost", host("localhost:8000"), 200},
	{"host: six", host("[::1]:8000"), 200},
	{"host: capitals", host("LOCALHOST:8000"), 200},
	{"host: dot at its end", host("localhost.:8000"), 200},
	{"host: without port", host("127.0.0.1"), 200},
	{"host: six without port", host("[::1]"), 200},
	{"host: another port", host("localhost:54321"), 200},
	{"host: foreign", host("evil.example:8000"), 403},
	{"host: begins well", host("localhost.evil.example"), 403},
	{"host: number as a name", host("127.0.0.1.nip.example"), 403},
	{"host: fragment", host("evil.example#localhost"), 403},
	{"host: user", host("localhost:8000@evil.example"), 403},
	{"host: user before", host("evil.example@localhost"), 403},
	{"host: none", host(""), 403},
	{"host: all addresses", host("0.0.0.0:8000"), 403},
	{"host: this machine's own", host("192.0.2.7:8000"), 403},
	{"host: two colons", host("localhost:1:2"), 403},
	{"host: bracket", host("[localhost"), 403},
	{"host: zone", host("[::1%25lo]:8000"), 403},
	{"rebound: host and origin agree", both(host("evil.example:8000"), header("Origin", "http://evil.example:8000")), 403},
	{"origin: own", header("Origin", "http://127.0.0.1:8000"), 200},
	{"origin: foreign", header("Origin", "http://evil.example"), 403},
	{"origin: another program here", header("Origin", "http://localhost:3000"), 403},
	{"origin: other name of ours", header("Origin", "http://localhost:8000"), 403},
	{"origin: null", header("Origin", "null"), 403},
	{"origin: empty", header("Origin", ""), 403},
	{"origin: number", header("Origin", "http://203.0.113.7"), 403},
	{"origin: twice", func(r *http.Request) {
		r.Header["Origin"] = []string{"http://127.0.0.1:8000", "http://evil.example"}
	}, 403},
	{"site: own", header("Sec-Fetch-Site", "same-origin"), 200},
	{"site: typed", header("Sec-Fetch-Site", "none"), 200},
	{"site: script of another", both(header("Sec-Fetch-Site", "cross-site"), header("Sec-Fetch-Mode", "no-cors")), 403},
	{"site: fetch of another", both(header("Sec-Fetch-Site", "cross-site"), header("Sec-Fetch-Mode", "cors")), 403},
	{"site: another program here", both(header("Sec-Fetch-Site", "same-site"), header("Sec-Fetch-Mode", "cors")), 403},
	{"site: link followed", both(header("Sec-Fetch-Site", "cross-site"), header("Sec-Fetch-Mode", "navigate"), header("Sec-Fetch-Dest", "document")), 200},
	{"site: framed", both(header("Sec-Fetch-Site", "cross-site"), header("Sec-Fetch-Mode", "navigate"), header("Sec-Fetch-Dest", "iframe")), 403},
	{"method: POST", method("POST"), 405},
	{"method: PUT", method("PUT"), 405},
	{"method: DELETE", method("DELETE"), 405},
	{"method: OPTIONS", method("OPTIONS"), 405},
	{"method: TRACE", method("TRACE"), 405},
	{"method: HEAD", method("HEAD"), 200},
	{"body", func(r *http.Request) { r.ContentLength = 100_000 }, 413},
	{"body of unknown length", func(r *http.Request) { r.ContentLength = -1 }, 413},
}

func host(name string) func(*http.Request)   { return func(r *http.Request) { r.Host = name } }
func method(name string) func(*http.Request) { return func(r *http.Request) { r.Method = name } }
func header(key, value string) func(*http.Request) {
	return func(r *http.Request) { r.Header.Set(key, value) }
}
func both(list ...func(*http.Request)) func(*http.Request) {
	return func(r *http.Request) {
		for _, f := range list {
			f(r)
		}
	}
}

// TestWhoIsLetIn asks every route for everything in requests: the guard stands before the
// routes, and no answer tells another site anything. Files that take long are made for two of the requests that are let in,
// with the judges for all.
func TestWhoIsLetIn(t *testing.T) {
	s := aSite(t, Options{})
	everyRoute(t, func(t *testing.T, path string) {
		for _, q := range requests {
			if strings.HasPrefix(path, "/save/") && q.status == 200 && q.name != "plain" && q.name != "method: HEAD" && !judges.On {
				continue
			}
			r := ask(s, path, q.change)
			text := body(r)
			if r.StatusCode != q.status {
				t.Errorf("%s: %d, wanted %d: %.80s", q.name, r.StatusCode, q.status, text)
			}
			for key := range r.Header {
				if strings.HasPrefix(key, "Access-Control-") {
					t.Errorf("%s: the answer has %s", q.name, key)
				}
			}
			if q.status != 200 && (strings.Contains(text, "lanterns") || strings.Contains(text, "evil") || r.Header.Get("X-Instance") != "") {
				t.Errorf("%s: a refusal tells something: %.200s", q.name, text)
			}
		}
	})
}

// TestGuardCatches: without the guard, a foreign host is answered; the table above would see
// it.
func TestGuardCatches(t *testing.T) {
	s := aSite(t, Options{Hosts: []string{"evil.example"}})
	if r := ask(s, "/state", host("evil.example")); r.StatusCode != 200 {
		t.Errorf("with the name allowed: %d", r.StatusCode)
	}
	if r := ask(s, "/state", host("other.example")); r.StatusCode != 403 || !strings.Contains(body(r), "--allow-host") {
		t.Errorf("another name: %d, %s", r.StatusCode, body(r))
	}
}

// TestHeaders: every answer of every route says what it is and what may be done with it.
func TestHeaders(t *testing.T) {
	s := aSite(t, Options{})
	want := map[string]string{
		"X-Content-Type-Options": "nosniff", "Cache-Control": "no-store, no-transform", "Referrer-Policy": "no-referrer",
		"Cross-Origin-Resource-Policy": "same-origin", "X-Frame-Options": "DENY",
	}
	everyRoute(t, func(t *testing.T, path string) {
		own := ask(s, path, nil)
		for _, r := range []*http.Response{own, ask(s, path, host("evil.example")), ask(s, path, method("POST"))} {
			for key, value := range want {
				if path == patternPage && key == "X-Frame-Options" && r.StatusCode == 200 {
					value = "SAMEORIGIN" // the one thing that the preview's own page frames
				}
				if got := r.Header.Get(key); got != value {
					t.Errorf("%s is %q", key, got)
				}
			}
			policy := r.Header.Get("Content-Security-Policy")
			if !strings.HasPrefix(policy, "default-src 'none'") || strings.Contains(policy, "unsafe-eval") || strings.Contains(policy, "*") {
				t.Errorf("the policy is %q", policy)
			}
			binary := []string{"image/png", "image/jpeg", "application/pdf", "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet"}
			if kind := r.Header.Get("Content-Type"); !strings.Contains(kind, "charset=utf-8") && !slices.Contains(binary, kind) {
				t.Errorf("the content type is %q", kind)
			}
		}
		if kind := own.Header.Get("Content-Type"); strings.Contains(kind, "javascript") != strings.HasSuffix(path, ".js") {
			t.Errorf("what is given as %q could be run as a script", kind) // no data travels as a script
		}
	})
	if p := ask(s, "/picture.svg", nil).Header.Get("Content-Security-Policy"); !strings.Contains(p, "sandbox") {
		t.Errorf("the picture's policy is %q", p)
	}
}

// TestNothingElseIsServed: there is a table of addresses and no way past it. No file can be
// reached, since none is ever opened: the answers come from memory.
func TestNothingElseIsServed(t *testing.T) {
	s := aSite(t, Options{})
	for _, path := range []string{
		"/../../etc/passwd", "//../..\\x\x00", "/..\\..\\x", "/\x00", "/x", "/@fs/etc/passwd", "/C:/Windows/win.ini", "/x::$DATA", "/NUL",
		"/Picture.SVG", "/STATE", "/state/", "//state", "/./state", "/page/main.js", "/index.html", "/.env", "", "*", "/quilt.quilt",
	} {
		r := ask(s, path, nil)
		if text := body(r); r.StatusCode != 404 || text != "There is nothing here.\n" {
			t.Errorf("%q: %d %q", path, r.StatusCode, text)
		}
	}
	if r := ask(s, "/state", func(r *http.Request) { r.URL.RawPath = "/%73tate" }); r.StatusCode != 404 {
		t.Errorf("an encoded address: %d", r.StatusCode)
	}
}

// TestOddRequests sends what no browser sends, over the network.
func TestOddRequests(t *testing.T) {
	t.Parallel()
	r := start(t, lanterns, Options{})
	r.next()
	at := strings.TrimSuffix(strings.TrimPrefix(r.address, "http://"), "/")
	for request, want := range map[string]string{
		"GET http://evil.example/state HTTP/1.1\r\nHost: localhost\r\n\r\n":           "403",
		"GET /state HTTP/1.0\r\n\r\n":                                                 "403",
		"GET /state HTTP/1.1\r\nHost: a\r\nHost: localhost\r\n\r\n":                   "400",
		"GET /state HTTP/1.1\r\n\r\n":                                                 "400",
		"GET /%2e%2e/%2e%2e/etc/passwd HTTP/1.1\r\nHost: localhost\r\n\r\n":           "404",
		"GET /..%2f..%5cx HTTP/1.1\r\nHost: localhost\r\n\r\n":                        "404",
		"GET //..%2f.. HTTP/1.1\r\nHost: localhost\r\n\r\n":                           "404",
		"GET /state?x=%0d%0aSet-Cookie:a HTTP/1.1\r\nHost: localhost\r\n\r\n":         "200",
		"POST /state HTTP/1.1\r\nHost: localhost\r\nContent-Length: 9999999\r\n\r\nx": "405",
		"GET /state HTTP/1.1\r\nHost: localhost\r\nContent-Length: 9\r\n\r\nx":        "413",
		"OPTIONS * HTTP/1.1\r\nHost: localhost\r\n\r\n":                               "405",
		"GET /state HTTP/1.1\r\nHost: localhost\r\nX: " + strings.Repeat("x", 1<<16):  "431",
	} {
		if got := raw(t, at, request); !strings.Contains(got, want) {
			t.Errorf("%.60q: %s, wanted %s", request, got, want)
		}
	}
}

// raw sends text to an address and gives the first line of the answer.
func raw(t *testing.T, address, request string) string {
	t.Helper()
	c, err := net.Dial("tcp", address)
	must(t, err)
	defer c.Close()
	_, _ = fmt.Fprint(c, request) // it may be cut short, which is fine
	line, _ := bufio.NewReader(c).ReadString('\n')
	return strings.TrimSpace(line)
}

// TestLoopbackOnly: the socket is bound to this machine alone.
func TestLoopbackOnly(t *testing.T) {
	t.Parallel()
	r := start(t, lanterns, Options{})
	if !strings.HasPrefix(r.address, "http://127.0.0.1:") {
		t.Fatalf("the address is %s", r.address)
	}
	port := strings.TrimSuffix(r.address[strings.LastIndexByte(r.address, ':')+1:], "/")
	addresses, err := net.InterfaceAddrs()
	must(t, err)
	for _, a := range addresses {
		ip, _, err := net.ParseCIDR(a.String())
		if err != nil || ip.IsLoopback() {
			continue
		}
		if c, err := net.Dial("tcp", net.JoinHostPort(ip.String(), port)); err == nil {
			c.Close()
			t.Errorf("it answers at %s", ip)
		}
	}
}

// TestKey: with a key, nothing is answered without it; the opened address swaps it for a
// cookie and is not kept.
func TestKey(t *testing.T) {
	s := aSite(t, Options{Secret: true})
	everyRoute(t, func(t *testing.T, path string) {
		for name, change := range map[string]func(*http.Request){
			"none":        nil,
			"wrong":       func(r *http.Request) { r.URL.RawQuery = "key=" + strings.Repeat("0", 32) },
			"wrong again": func(r *http.Request) { r.AddCookie(&http.Cookie{Name: s.cookie(), Value: "x"}) },
		} {
			if r := ask(s, path, change); r.StatusCode != 401 || strings.Contains(body(r), s.key) {
				t.Errorf("%s: %d", name, r.StatusCode)
			}
		}
		with := func(r *http.Request) { r.AddCookie(&http.Cookie{Name: s.cookie(), Value: s.key}) }
		if r := ask(s, path, with); r.StatusCode != 200 {
			t.Errorf("with the cookie: %d", r.StatusCode)
		}
	})
	r := ask(s, "/", func(r *http.Request) { r.URL.RawQuery = "key=" + s.key })
	if r.StatusCode != 303 || r.Header.Get("Location") != "/" || len(r.Cookies()) != 1 || !r.Cookies()[0].HttpOnly || r.Cookies()[0].SameSite != http.SameSiteStrictMode {
		t.Errorf("the opened address: %d to %q, %v", r.StatusCode, r.Header.Get("Location"), r.Cookies())
	}
}

// TestTextFromTheLayoutIsText: names from the file and its name reach the page as text, with
// and without scripts.
func TestTextFromTheLayoutIsText(t *testing.T) {
	bad := `</title></script><script>alert(1)</script>`
	s := newSite("/x/a"+bad+"\x1b[2J\u202e.quilt", Options{})
	text := titled(bad) + "nonsense " + bad + "\x1b[2J\u2028\n"
	s.state.publish(reading{text: titled(bad)}, draw(titled(bad), drawing{}))
	s.state.publish(reading{text: text}, draw(text, drawing{}))
	page, state := body(ask(s, "/", nil)), body(ask(s, "/state", nil))
	for name, got := range map[string]string{"page": page, "state": state} {
		if strings.Contains(got, "<script>alert") || strings.Contains(got, "\x1b") || strings.Contains(got, "\u202e") || strings.Contains(got, "\u2028") {
			t.Errorf("the %s holds what could run or steer: %s", name, got)
		}
		if !strings.Contains(got, "error: ") {
			t.Errorf("the %s does not show the fault", name)
		}
	}
	if strings.Contains(state, "/x/") {
		t.Error("the page is told the folder")
	}
	if strings.Contains(body(ask(s, "/picture.svg", nil)), "<script") {
		t.Error("the picture holds a script")
	}
}

// TestOpenedAddress: only an address that we made ourselves is handed to another program.
func TestOpenedAddress(t *testing.T) {
	for address, want := range map[string]bool{
		"http://127.0.0.1:8000/": true, "http://127.0.0.1:8000/?key=" + strings.Repeat("ab", 16): true,
		"http://127.0.0.1:8000/;calc": false, "http://localhost:8000/": false, "http://127.0.0.1:8000/\n": false, "file:///etc/passwd": false,
		"-flag": false, "http://127.0.0.1:8000/ -x": false, "http://127.0.0.1:8000/?key=$(x)": false,
	} {
		if plainAddress(address) != want {
			t.Errorf("%q: %v", address, !want)
		}
	}
}
