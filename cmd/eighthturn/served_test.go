package main

import (
	"context"
	"encoding/json"
	"fmt"
	"io"
	"maps"
	"net/http"
	"regexp"
	"strings"
	"sync"
	"testing"
	"time"

	"eighthturn/internal/preview"
)

// served is what the preview's page is sent of a layout's file, by the names of the tabs, how it was judged apart from the rest
// (", why"), and what it shows of a patch that is pointed at ("hover"). Each text stands on a line of its own, cells of a row apart.
func served(t *testing.T, file string) map[string]string {
	t.Helper()
	address := previewOf(t, file)
	list := map[string]string{"hover": hoverText(t, pictureAt(t, address))}
	for tab := 0; ; tab++ {
		body, status := fetched(t, fmt.Sprint(address, "report?tab=", tab))
		if status == http.StatusNotFound {
			break
		}
		if status != http.StatusOK {
			t.Fatalf("tab %d: %d", tab, status)
		}
		maps.Copy(list, tabTexts(t, body))
	}
	if len(list) < 5 || list["hover"] == "" {
		t.Fatalf("the preview serves %d texts, of the patches %q", len(list), list["hover"])
	}
	return list
}

// hoverText is what is shown of patches and of the whole, of a picture as it is sent.
func hoverText(t *testing.T, picture []byte) string {
	t.Helper()
	return strings.Join(textsUnder(t, picture, "finished", "cut", "size", "away"), "\n")
}

// tabTexts is what a tab says, as it is sent, under its name, and how it was judged.
func tabTexts(t *testing.T, body []byte) map[string]string {
	t.Helper()
	var sent struct {
		Report struct {
			Name, Intro string
			Sections    []json.RawMessage
		}
	}
	if err := json.Unmarshal(body, &sent); err != nil {
		t.Fatal(err)
	}
	r := sent.Report
	list := map[string]string{r.Name: r.Intro + "\n"}
	for _, section := range r.Sections {
		var judged struct{ Why bool }
		if err := json.Unmarshal(section, &judged); err != nil {
			t.Fatal(err)
		}
		name := r.Name
		if judged.Why {
			name += ", why"
		}
		list[name] += strings.Join(textsUnder(t, section, "title", "head", "cells", "under", "more"), "\n") + "\n"
	}
	return list
}

// lineBuffer holds what is written to it, and tells of the first line.
type lineBuffer struct {
	mu    sync.Mutex
	text  string
	first chan string
}

func (b *lineBuffer) Write(p []byte) (int, error) {
	b.mu.Lock()
	defer b.mu.Unlock()
	had := strings.Contains(b.text, "\n")
	b.text += string(p)
	if line, _, whole := strings.Cut(b.text, "\n"); whole && !had {
		b.first <- line
	}
	return len(p), nil
}

// previewOf is the address of a preview of a file, which ends with the test.
func previewOf(t *testing.T, file string) string {
	t.Helper()
	ctx, stop := context.WithCancel(context.Background())
	ended, output := make(chan error, 1), &lineBuffer{first: make(chan string, 1)}
	go func() {
		ended <- preview.Run(ctx, file, preview.Options{NoOpen: true, NoEvents: true, Quiet: true, Output: output})
	}()
	t.Cleanup(stop)
	select {
	case line := <-output.first:
		return regexp.MustCompile(`http://\S+`).FindString(line)
	case err := <-ended:
		t.Fatalf("the preview did not begin: %v", err)
	case <-time.After(time.Minute):
		t.Fatal("the preview does not begin")
	}
	return ""
}

// pictureAt is the state of a preview as soon as there is a picture in it.
func pictureAt(t *testing.T, address string) []byte {
	t.Helper()
	for range 6000 {
		body, _ := fetched(t, address+"state")
		var state struct{ Picture int }
		if json.Unmarshal(body, &state) == nil && state.Picture > 0 {
			return body
		}
		time.Sleep(10 * time.Millisecond)
	}
	t.Fatal("the preview shows no picture")
	return nil
}

// fetched is what an address answers with.
func fetched(t *testing.T, address string) (body []byte, status int) {
	t.Helper()
	r, err := http.Get(address)
	if err != nil {
		t.Fatal(err)
	}
	defer r.Body.Close()
	body, err = io.ReadAll(r.Body)
	if err != nil {
		t.Fatal(err)
	}
	return body, r.StatusCode
}

// textsUnder are the strings of JSON that stand under one of the keys, in their order; those of one list make one text.
func textsUnder(t *testing.T, data []byte, keys ...string) (list []string) {
	t.Helper()
	var value any
	if err := json.Unmarshal(data, &value); err != nil {
		t.Fatal(err)
	}
	var gather func(v any)
	gather = func(v any) {
		switch v := v.(type) {
		case []any:
			for _, inner := range v {
				gather(inner)
			}
		case map[string]any:
			for _, key := range keys {
				switch text := v[key].(type) {
				case string:
					list = append(list, text)
				case []any:
					var cells []string
					for _, cell := range text {
						cells = append(cells, fmt.Sprint(cell))
					}
					list = append(list, strings.Join(cells, " | "))
				}
			}
			for _, inner := range v {
				gather(inner)
			}
		}
	}
	gather(value)
	return list
}
