package main

import (
	"bytes"
	"compress/gzip"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// engineFolder makes a folder with what passes for the engine of this program's pages.
func engineFolder(t *testing.T) string {
	t.Helper()
	var b bytes.Buffer
	w := gzip.NewWriter(&b)
	parts, err := filepath.Glob("../../internal/preview/page/*")
	if err != nil || len(parts) < 10 {
		t.Fatalf("%d files: %v", len(parts), err)
	}
	_, _ = w.Write([]byte("\x00asm"))
	for _, part := range parts {
		content, err := os.ReadFile(part)
		if err != nil {
			t.Fatal(err)
		}
		_, _ = w.Write(content)
	}
	if err := w.Close(); err != nil {
		t.Fatal(err)
	}
	folder := t.TempDir()
	for name, content := range map[string][]byte{"engine.wasm.gz": b.Bytes(), "wasm_exec.js": []byte("// start\n"), "licenses.txt": []byte("texts\n")} {
		if err := os.WriteFile(filepath.Join(folder, name), content, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	return folder
}

// TestSiteFolder: a folder of pages is made, made again in place of the older one, and left as it is where it holds anything else.
func TestSiteFolder(t *testing.T) {
	engine, pages := engineFolder(t), filepath.Join(t.TempDir(), "pages")
	for range 2 {
		r := runIn(t, "site", pages, "--engine", engine)
		if r.code != 0 || !strings.HasPrefix(r.out, "written: "+pages+", 15 files") {
			t.Fatalf("code %d, %s%s", r.code, r.out, r.err)
		}
	}
	entries, err := os.ReadDir(pages)
	if err != nil || len(entries) != 15 {
		t.Errorf("%d files: %v", len(entries), err)
	}
	licenses, err := os.ReadFile(filepath.Join(pages, "licenses.txt"))
	if err != nil || string(licenses) != "texts\n" {
		t.Errorf("the licenses say %q: %v", licenses, err)
	}
	if err := os.WriteFile(filepath.Join(pages, "mine.txt"), []byte("mine"), 0o644); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(pages, "about.html"), []byte("changed"), 0o644); err != nil {
		t.Fatal(err)
	}
	r := runIn(t, "site", pages, "--engine", engine)
	if changed, _ := os.ReadFile(filepath.Join(pages, "about.html")); r.code != 1 || !strings.Contains(r.err, "holds something else already: mine.txt") || string(changed) != "changed" {
		t.Errorf("code %d, %s; a page says %.40q", r.code, r.err, changed)
	}
	if err := os.WriteFile(filepath.Join(engine, "engine.wasm.gz"), []byte("none"), 0o644); err != nil {
		t.Fatal(err)
	}
	if r := runIn(t, "site", filepath.Join(t.TempDir(), "none"), "--engine", engine); r.code != 1 || !strings.Contains(r.err, "this is no engine") {
		t.Errorf("code %d, %s", r.code, r.err)
	}
}
