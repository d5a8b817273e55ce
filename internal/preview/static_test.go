package preview

import (
	"bytes"
	"compress/gzip"
	"encoding/json"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// anEngine is a file that passes for an engine of the page that is here, with one of its files spoilt, "" for none.
func anEngine(t *testing.T, spoilt string) Engine {
	t.Helper()
	var b bytes.Buffer
	w := gzip.NewWriter(&b)
	put := func(content []byte) {
		_, err := w.Write(content)
		must(t, err)
	}
	put([]byte("\x00asm"))
	for _, name := range assets() {
		content := asset(name)
		if name == spoilt {
			content = content[1:]
		}
		put(content)
	}
	must(t, w.Close())
	return Engine{Packed: b.Bytes(), Start: []byte("// start\n")}
}

func made(t *testing.T, e Engine, downloads string) map[string]string {
	t.Helper()
	files := map[string]string{}
	for _, f := range Static(e, downloads) {
		var b bytes.Buffer
		must(t, f.Write(&b))
		files[f.Name] = b.String()
	}
	return files
}

// TestStatic: the folder holds whatever its pages name, and names nothing else; all pages say what they may load; the service worker knows every
// file but itself, under a version that changes with any of them; no script says what only a module may say.
func TestStatic(t *testing.T) {
	files := made(t, anEngine(t, ""), "https://example.com/a?b=1&c=2")
	named := regexp.MustCompile(`(?:href|src)="([^"#?:]+)[^":]*"`)
	for name, content := range files {
		if name == EngineName || !slices.Contains(StaticNames(), name) {
			continue
		}
		if strings.Contains(content, "{{") {
			t.Errorf("%s has a place that is not filled in", name)
		}
		if strings.HasSuffix(name, ".js") && regexp.MustCompile(`(?m)^(import|export)\b`).MatchString(content) {
			t.Errorf("%s is a module", name)
		}
		if !strings.HasSuffix(name, ".html") {
			continue
		}
		if !strings.Contains(content, `content="`+sitePolicy+`"`) {
			t.Errorf("%s does not say what it may load", name)
		}
		for _, m := range named.FindAllStringSubmatch(content, -1) {
			if files[m[1]] == "" && m[1] != "picture.svg" { // which the program makes
				t.Errorf("%s names %s, which is not there", name, m[1])
			}
		}
		if strings.Contains(content, "http:") || strings.Count(content, "https:") != strings.Count(content, `<a href="https://example.com/a?b=1&amp;c=2">`) {
			t.Errorf("%s leads elsewhere", name)
		}
	}
	var names []string
	list := regexp.MustCompile(`const names = (\[.*\]);`).FindStringSubmatch(files[ServiceName])
	must(t, json.Unmarshal([]byte(list[1]), &names))
	if len(names) != len(files)-1 || slices.Contains(names, ServiceName) || !IsService([]byte(files[ServiceName])) {
		t.Errorf("of %d files the service worker keeps %q", len(files), names)
	}
	other := anEngine(t, "")
	other.Start = []byte("// Start\n")
	if made(t, other, "")[ServiceName] == files[ServiceName] || made(t, anEngine(t, ""), "https://example.com/a?b=1&c=2")[ServiceName] != files[ServiceName] {
		t.Error("the version does not follow the files")
	}
	withLicenses := anEngine(t, "")
	withLicenses.Licenses = []byte("texts")
	if made(t, withLicenses, "")[LicensesName] != "texts" || files[LicensesName] != "" {
		t.Error("the licenses are not handed on")
	}
}

// TestEngineFits: an engine that holds other page files than the program is refused, and so is what is none.
func TestEngineFits(t *testing.T) {
	must(t, anEngine(t, "").Check())
	for _, name := range assets() {
		if err := anEngine(t, name).Check(); err == nil || !strings.Contains(err.Error(), "another version") {
			t.Errorf("with another %s: %v", name, err)
		}
	}
	whole := anEngine(t, "").Packed
	for _, packed := range [][]byte{nil, []byte("\x00asm"), whole[:len(whole)/2]} {
		if err := (Engine{Packed: packed}).Check(); err == nil || !strings.Contains(err.Error(), "no engine") {
			t.Errorf("%.10q: %v", packed, err)
		}
	}
}

// TestOneTransport: pages ask by one module alone, and that of the browser gives whatever they import.
func TestOneTransport(t *testing.T) {
	direct := regexp.MustCompile(`(?:^|[^.\w])(?:fetch\(|new (?:EventSource|WebSocket|XMLHttpRequest)\b)`)
	gives := func(file []byte) (list []string) {
		for _, m := range exportWord.FindAllSubmatch(file, -1) {
			list = append(list, string(m[2]))
		}
		return list
	}
	inBrowser, onServer := gives(browserFile("transport.js")), gives(asset("transport.js"))
	for _, name := range assets() {
		text := string(asset(name))
		if name == "transport.js" || !strings.HasSuffix(name, ".js") {
			continue
		}
		for line := range strings.Lines(text) {
			if direct.MatchString(strings.Replace(line, "async fetch(", "", 1)) {
				t.Errorf("%s asks by itself: %s", name, line)
			}
			if names, ok := strings.CutSuffix(strings.TrimSpace(line), " } from './transport.js';"); ok {
				for _, imported := range strings.Split(strings.TrimPrefix(names, "import { "), ", ") {
					if !slices.Contains(inBrowser, imported) || !slices.Contains(onServer, imported) {
						t.Errorf("%s imports %s, which a transport does not give", name, imported)
					}
				}
			}
		}
	}
	if !direct.MatchString("const r = await fetch('state');") || direct.MatchString("await this.fetch();") || len(onServer) < 5 {
		t.Error("nothing would be noticed")
	}
}
