package lsp

import (
	"cmp"
	"net/url"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"time"

	"eighthturn/internal/files"
	"eighthturn/internal/quilt"
	"eighthturn/layout"
)

// document is a layout that an editor has open.
type document struct {
	uri     string
	version int
	text    text
	photos  *files.Album // nil where it lies in no folder
	known   *reading     // nil where the text has changed since
	outline *reading     // the first stage of it alone; nil too

	due  *time.Timer // at its end faults are published; nil where none have waited yet
	sent sentTokens
}

// reading is what is known of one version of a text.
type reading struct {
	layout.Reading
	names []layout.Mention // see mentions
}

// mentions are the places of names, in their order. Diagnostics need none.
func (r *reading) mentions() []layout.Mention {
	if r.names == nil {
		r.names = r.Tree.Mentions()
		slices.SortFunc(r.names, func(a, b layout.Mention) int { return cmp.Compare(a.Span.Start, b.Span.Start) })
		r.names = slices.CompactFunc(r.names, func(a, b layout.Mention) bool { return a.Span == b.Span }) // blocks like others share their roles
	}
	return r.names
}

func newDocument(uri string, version int, t text) *document {
	d := &document{uri: uri, version: version, text: t}
	if path := pathOf(uri); path != "" {
		d.photos = files.Beside(path)
	}
	return d
}

// pathOf is the file of an address, "" if it is none.
func pathOf(uri string) string {
	u, err := url.Parse(uri)
	if err != nil || u.Scheme != "file" || u.Path == "" {
		return ""
	}
	path := u.Path
	if runtime.GOOS == "windows" {
		path = strings.TrimPrefix(path, "/")
	}
	return filepath.FromSlash(path)
}

func (d *document) become(t text, version int) {
	d.text, d.version, d.known, d.outline = t, version, nil, nil
}

// written reads what is written where, and no more where that is not known yet: what is asked while somebody types is asked of it.
func (d *document) written() *reading {
	switch {
	case d.known != nil:
		return d.known
	case d.outline == nil:
		d.outline = &reading{Reading: layout.Outline(d.text.string)}
	}
	return d.outline
}

// read reads the text, once for each version.
func (d *document) read() *reading {
	if d.known != nil {
		return d.known
	}
	r := &reading{}
	if d.photos != nil {
		r.Reading = layout.Inspect(d.text.string, d.photos.Cloth)
	} else {
		r.Reading = layout.Inspect(d.text.string, nil)
	}
	if r.Design != nil && len(r.Design.Pools) > 0 { // only deals of scraps give warnings when laid out
		r.Faults = slices.Concat(r.Faults, quilt.Lay(r.Design).Warnings)
		slices.SortStableFunc(r.Faults, func(a, b layout.Fault) int { return cmp.Compare(a.Span.Start, b.Span.Start) })
	}
	d.known = r
	return r
}

// span is a stretch of the layout as a range.
func (d *document) span(s layout.Span) lspRange { return d.text.span(s.Start, s.End) }

// diagnostics is what is wrong with the text.
func (d *document) diagnostics() []diagnostic {
	list := []diagnostic{}
	for _, f := range d.read().Faults {
		list = append(list, d.diagnostic(f))
	}
	return list
}

func (d *document) diagnostic(f layout.Fault) diagnostic {
	severity := severityError
	if f.Severity == layout.Warning {
		severity = severityWarning
	}
	message := layout.Visible(f.Message)
	if f.Hint != "" {
		message += "\n" + layout.Visible(f.Hint)
	}
	g := diagnostic{Range: d.span(f.Span), Severity: severity, Source: "eighthturn", Message: message}
	for _, n := range f.Notes {
		g.Related = append(g.Related, relatedInformation{location{d.uri, d.span(n.Span)}, layout.Visible(n.Message)})
	}
	return g
}

// codeActions are the hints, near a range, that say what to type.
func (d *document) codeActions(p *placed) any {
	start, end := d.text.offset(p.Range.Start), d.text.offset(p.Range.End)
	list := []codeAction{}
	for _, f := range d.read().Faults {
		if len(f.Edits) == 0 || d.text.lineOf(f.Span.Start) > d.text.lineOf(end) || d.text.lineOf(max(f.Span.Start, f.Span.End)) < d.text.lineOf(start) {
			continue
		}
		var edits []textEdit
		for _, e := range f.Edits {
			edits = append(edits, textEdit{d.span(e.Span), e.Text})
		}
		list = append(list, codeAction{
			Title: layout.Visible(f.Hint), Kind: "quickfix", Diagnostics: []diagnostic{d.diagnostic(f)}, IsPreferred: true,
			Edit: workspaceEdit{map[string][]textEdit{d.uri: edits}},
		})
	}
	return list
}

// formatting writes the layout as tidy does; one with errors stays.
func (d *document) formatting(*placed) any {
	tidy, _ := layout.Tidy(d.text.string)
	if tidy == d.text.string {
		return []textEdit{}
	}
	return []textEdit{d.smallest(tidy)}
}

// smallest is the edit that makes another text of the document's, without the lines at either end that stay.
func (d *document) smallest(to string) textEdit {
	from := d.text.string
	start := 0
	for start < len(from) && start < len(to) && from[start] == to[start] {
		start++
	}
	start = strings.LastIndexByte(from[:start], '\n') + 1
	end, toEnd := len(from), len(to)
	for end > start && toEnd > start && from[end-1] == to[toEnd-1] {
		end--
		toEnd--
	}
	if i := strings.IndexByte(from[end:], '\n'); i >= 0 && end > start {
		end, toEnd = end+i+1, toEnd+i+1
	} else {
		end, toEnd = len(from), len(to)
	}
	return textEdit{d.text.span(start, end), to[start:toEnd]}
}
