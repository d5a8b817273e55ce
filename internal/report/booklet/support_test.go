package booklet

import (
	"eighthturn/internal/quilttest/lay"
	"sync"
	"testing"

	"eighthturn/internal/document"
	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/render"
)

// made holds what tests share and nobody changes: the reports of a layout, the pattern made of them, and that as a file.
var made = struct {
	sync.Mutex
	reports  map[layoutCut]Reports
	patterns map[string]document.Document
	files    map[layoutTypeset]func() (render.Printed, error)
	texts    map[string]string
}{texts: map[string]string{}, reports: map[layoutCut]Reports{}, patterns: map[string]document.Document{}, files: map[layoutTypeset]func() (render.Printed, error){}}

// layoutTypeset is a layout and how it is typeset.
type layoutTypeset struct {
	text, paper string
	large       bool
}

// layoutCut is a layout and how it is cut.
type layoutCut struct {
	text string
	cutting.Options
}

// study is the reports of a layout as it is written, made once; those of its sizes stand in sizes_law_test.go.
func study(t testing.TB, text string, o cutting.Options) Reports {
	t.Helper()
	made.Lock()
	defer made.Unlock()
	r, known := made.reports[layoutCut{text, o}]
	if !known {
		top := *lay.Top(t, text)
		top.Sizes = nil
		r = Study(&top, o)
		made.reports[layoutCut{text, o}] = r
	}
	return r
}

// typeset is the pattern of a layout as a PDF, typeset once for each paper and size of letters.
func typeset(t testing.TB, text string, o render.Options) (render.Printed, error) {
	t.Helper()
	r := study(t, text, cutting.Options{})
	key := layoutTypeset{text, o.Paper.Name, o.Large}
	made.Lock()
	once := made.files[key]
	if once == nil {
		once = sync.OnceValues(func() (render.Printed, error) {
			return render.PDF(Pattern(r, Options{Paper: o.Paper, Large: o.Large}), o)
		})
		made.files[key] = once
	}
	made.Unlock()
	return once()
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

// patternText is that pattern as text, made once.
func patternText(t *testing.T, text string) string {
	t.Helper()
	d := pattern(t, text)
	made.Lock()
	defer made.Unlock()
	said, known := made.texts[text]
	if !known {
		said = textOf(t, d)
		made.texts[text] = said
	}
	return said
}
