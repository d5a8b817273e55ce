package main

import (
	"os"
	"path/filepath"
	"regexp"
	"testing"
)

// TestListingCountsThePattern: a listing says as many pages as the printed pattern has.
func TestListingCountsThePattern(t *testing.T) {
	folder := t.TempDir()
	layout := filepath.Join(folder, "small.quilt")
	if err := os.WriteFile(layout, []byte(printedLayout), 0o600); err != nil {
		t.Fatal(err)
	}
	pages := regexp.MustCompile(`\d+ pages`)
	made, listed := runIn(t, "booklet", layout, "-o", filepath.Join(folder, "pattern.pdf")), runIn(t, "listing", layout)
	if want, got := pages.FindString(made.out), pages.FindString(listed.out); want == "" || got != want {
		t.Errorf("the listing says %q, the pattern %q: %s%s", got, want, made.err, listed.err)
	}
}
