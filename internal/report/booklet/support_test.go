package booklet

import (
	"sync"
	"testing"

	"eighthturn/internal/document"
	"eighthturn/internal/plan/cutting"
)

// made holds what tests share and nobody changes: the reports of a layout, and the pattern made of them.
var made = struct {
	sync.Mutex
	reports  map[layoutCut]Reports
	patterns map[string]document.Document
}{reports: map[layoutCut]Reports{}, patterns: map[string]document.Document{}}

// layoutCut is a layout and how it is cut.
type layoutCut struct {
	text string
	cutting.Options
}

// study is the reports of a layout, made once.
func study(t testing.TB, text string, o cutting.Options) Reports {
	t.Helper()
	made.Lock()
	defer made.Unlock()
	r, known := made.reports[layoutCut{text, o}]
	if !known {
		r = Study(topOf(t, text), o)
		made.reports[layoutCut{text, o}] = r
	}
	return r
}

// pattern is the pattern of a layout without options, made once.
func pattern(t testing.TB, text string) document.Document {
	t.Helper()
	r := study(t, text, cutting.Options{})
	made.Lock()
	defer made.Unlock()
	d, known := made.patterns[text]
	if !known {
		d = Pattern(r, Options{})
		made.patterns[text] = d
	}
	return d
}
