package main

import (
	"encoding/json"
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

// TestListingJSON: what a listing says to buy is what the plan of each size says, in its own units.
func TestListingJSON(t *testing.T) {
	_, file := harborIn(t, sampleCalled("beacon")+"size metric strip 11.5 units cm border 2.5 10\n")
	read := func(to any, arguments ...string) {
		t.Helper()
		code, out, complaints := askedFor(t, arguments...)
		if code != done {
			t.Fatal(complaints)
		}
		if err := json.Unmarshal([]byte(out), to); err != nil {
			t.Fatal(err)
		}
	}
	type length struct {
		NM   int64
		Text string
	}
	var listing struct {
		Pages int
		Sizes []struct {
			Name, Units string
			Buy         []struct {
				Fabric string
				Length length
			}
		}
	}
	read(&listing, "listing", file, "--json")
	if listing.Pages == 0 || len(listing.Sizes) != 4 || listing.Sizes[3].Units != "cm" {
		t.Fatalf("%+v", listing)
	}
	for _, s := range listing.Sizes {
		var plan struct {
			Units   string
			Fabrics []struct {
				Name     string
				Purchase struct{ Buy length }
			}
		}
		read(&plan, "cuts", file, "--json", "--size", s.Name)
		for i, f := range plan.Fabrics {
			if plan.Units != s.Units || s.Buy[i].Fabric != f.Name || s.Buy[i].Length != f.Purchase.Buy || f.Purchase.Buy.NM == 0 {
				t.Errorf("%s: %+v is listed, the plan has %+v", s.Name, s.Buy[i], f)
			}
		}
	}
}
