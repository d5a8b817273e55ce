//go:build judges

package booklet

import (
	"bufio"
	"bytes"
	"encoding/base64"
	"encoding/json"
	"fmt"
	"io"
	"net"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/quilttest/judges"
	"eighthturn/internal/render"
)

// firefox is a Firefox that is driven by its own remote protocol, Marionette: messages are arrays of JSON behind their length and a colon.
type firefox struct {
	t    *testing.T
	conn net.Conn
	in   *bufio.Reader
	sent int
}

// startFirefox starts one; a test is skipped where there is none.
func startFirefox(t *testing.T) *firefox {
	t.Helper()
	path, err := exec.LookPath("firefox-esr")
	if err != nil {
		if path, err = exec.LookPath("firefox"); err != nil {
			t.Skip("Firefox is not installed: it does not judge")
		}
	}
	profile := t.TempDir()
	if err := os.WriteFile(filepath.Join(profile, "user.js"), []byte("user_pref(\"marionette.port\", 0);\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	c := exec.Command(path, "--headless", "--no-remote", "--marionette", "--profile", profile)
	c.Env = append(os.Environ(), "HOME="+t.TempDir())
	if err := c.Start(); err != nil {
		t.Fatal(err)
	}
	ended := make(chan struct{})
	go func() { _ = c.Wait(); close(ended) }()
	t.Cleanup(func() {
		_ = c.Process.Kill()
		<-ended
	})
	for range 600 { // it says its port once it listens
		if port, err := os.ReadFile(filepath.Join(profile, "MarionetteActivePort")); err == nil && len(port) > 0 {
			conn, err := net.Dial("tcp", "127.0.0.1:"+strings.TrimSpace(string(port)))
			if err != nil {
				t.Fatal(err)
			}
			t.Cleanup(func() { _ = conn.Close() })
			f := &firefox{t: t, conn: conn, in: bufio.NewReader(conn)}
			f.message() // it greets
			f.ask("WebDriver:NewSession", map[string]any{})
			return f
		}
		select {
		case <-ended:
			t.Fatal("Firefox ended before it listened")
		case <-time.After(100 * time.Millisecond):
		}
	}
	t.Fatal("Firefox does not listen")
	return nil
}

// message is the next message.
func (f *firefox) message() []byte {
	f.t.Helper()
	length, n := 0, byte(0)
	var err error
	for n, err = f.in.ReadByte(); err == nil && n != ':'; n, err = f.in.ReadByte() {
		length = 10*length + int(n-'0')
	}
	if err != nil {
		f.t.Fatal(err)
	}
	text := make([]byte, length)
	if _, err := io.ReadFull(f.in, text); err != nil {
		f.t.Fatal(err)
	}
	return text
}

// ask sends a command and is its answer's value.
func (f *firefox) ask(command string, parameters map[string]any) string {
	f.t.Helper()
	f.sent++
	text, err := json.Marshal([]any{0, f.sent, command, parameters})
	if err != nil {
		f.t.Fatal(err)
	}
	if _, err := fmt.Fprintf(f.conn, "%d:%s", len(text), text); err != nil {
		f.t.Fatal(err)
	}
	var answer [4]json.RawMessage
	if err := json.Unmarshal(f.message(), &answer); err != nil || string(answer[2]) != "null" {
		f.t.Fatalf("%s: %v, %s", command, err, answer[2])
	}
	var of struct{ Value any }
	_ = json.Unmarshal(answer[3], &of) // an answer without a value has none
	value, _ := of.Value.(string)
	return value
}

// printed is a page as Firefox prints it on a paper as its dialog does at first: fitted to the width of the page where it is wider.
func (f *firefox) printed(page []byte, wide, high float64) string {
	f.t.Helper()
	dir := f.t.TempDir()
	in, out := filepath.Join(dir, "page.html"), filepath.Join(dir, "page.pdf")
	if err := os.WriteFile(in, page, 0o600); err != nil {
		f.t.Fatal(err)
	}
	f.ask("WebDriver:Navigate", map[string]any{"url": "file://" + in})
	const margin = 1.27 // centimeters, half an inch
	file, err := base64.StdEncoding.DecodeString(f.ask("WebDriver:Print", map[string]any{"shrinkToFit": true, "background": true,
		"page": map[string]any{"width": wide, "height": high}, "margin": map[string]any{"top": margin, "bottom": margin, "left": margin, "right": margin}}))
	if err != nil {
		f.t.Fatal(err)
	}
	if err := os.WriteFile(out, file, 0o600); err != nil {
		f.t.Fatal(err)
	}
	return out
}

// allPages is more than a pattern has.
const allPages = 1000

// Templates of the page for a browser are true as Firefox prints them, on Letter and on A4, where it is installed.
func TestFirefoxPrintsThePageTrue(t *testing.T) {
	f := startFirefox(t)
	papers := map[string][2]float64{"Letter": {21.59, 27.94}, "A4": {21, 29.7}} // centimeters
	for _, c := range []struct {
		text    string
		laidFor render.Paper
	}{{sampleText(t, "lanterns"), render.Letter()}, {metricPattern, render.A4()}} {
		page, err := render.HTML(Pattern(study(t, c.text, cutting.Options{}), Options{Paper: c.laidFor}))
		if err != nil {
			t.Fatal(err)
		}
		for name, size := range papers {
			if pages, wrong := squaresOf(t, f.printed(page, size[0], size[1]), allPages); pages == 0 || len(wrong) > 0 {
				t.Errorf("laid for %s, on %s: %d pages have squares; %v", c.laidFor.Name, name, pages, wrong)
			}
		}
		if size := papers["A4"]; c.laidFor.Name == "A4" {
			shrunk := bytes.ReplaceAll(page, []byte(`class="plate true"`), []byte(`class="plate"`))
			if _, wrong := squaresOf(t, f.printed(shrunk, size[0], size[1]), allPages); len(wrong) == 0 {
				t.Error("templates that are made smaller are not noticed")
			} else {
				t.Logf("caught: %v", wrong)
			}
		}
	}
}

// Firefox, where it is installed, prints the page without a page that is empty, all that is said of the quilt on the first, on Letter and on A4.
func TestFirefoxLeavesNoPageEmpty(t *testing.T) {
	f, toText := startFirefox(t), judges.Program(t, "Debian's poppler-utils", "pdftotext")
	wordless := func(page []byte, wide, high float64) (empty []int, first string) {
		words, err := exec.Command(toText, f.printed(page, wide, high), "-").Output()
		if err != nil {
			t.Fatal(err)
		}
		list := strings.Split(strings.TrimSuffix(string(words), "\f"), "\f")
		for n, text := range list {
			if strings.TrimSpace(text) == "" {
				empty = append(empty, n+1)
			}
		}
		return empty, list[0]
	}
	for _, name := range []string{"flotsam", "shutters"} {
		page, err := render.HTML(Pattern(study(t, sampleText(t, name), cutting.Options{}), Options{Paper: render.Letter()}))
		if err != nil {
			t.Fatal(err)
		}
		for _, size := range [][2]float64{{21.59, 27.94}, {21, 29.7}} {
			if empty, first := wordless(page, size[0], size[1]); len(empty) > 0 || !strings.Contains(first, "Skill level") {
				t.Errorf("%s, %g cm wide: pages %d are empty; the first says %q", name, size[0], empty, first)
			}
		}
		if name != "flotsam" {
			continue
		}
		twice := bytes.Replace(page, []byte(`class="new">`), []byte(`class="new"><div class="break"></div><div class="break"></div>`), 1)
		if empty, _ := wordless(twice, 21, 29.7); len(empty) == 0 || bytes.Equal(twice, page) {
			t.Errorf("%s: an empty page is not noticed", name)
		}
	}
}
