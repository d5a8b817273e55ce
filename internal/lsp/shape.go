package lsp

import (
	"strconv"
	"strings"

	"eighthturn/layout"
)

// folds are the grid, the table of webs, and comments of several lines.
func (d *document) folds(*placed) any {
	list := []foldingRange{}
	lines := d.written().Tree.Lines
	head, comment, last := -1, -1, -1 // a statement that rows may follow, the first line of a comment, the last row
	endComment := func(i int) {
		if comment >= 0 && i-1 > comment {
			list = append(list, foldingRange{d.number(comment), d.number(i - 1), "comment"})
		}
		comment = -1
	}
	endRows := func() {
		if head >= 0 && last > head {
			list = append(list, foldingRange{StartLine: d.number(head), EndLine: d.number(last)})
		}
		head, last = -1, -1
	}
	for i := range lines {
		l := &lines[i]
		only := len(l.Tokens) == 0 && !l.Comment.Empty()
		if !only {
			endComment(i)
		} else if comment < 0 {
			comment = i
		}
		switch {
		case l.Row:
			last = i
		case len(l.Tokens) > 0:
			endRows()
			head = i
		}
	}
	endComment(len(lines))
	endRows()
	return list
}

// number is the line of the editor that a line of the layout begins on.
func (d *document) number(line int) int {
	return d.text.lineOf(d.written().Source.LineSpan(line + 1).Start)
}

// symbols is what the layout defines, in the order of its lines.
func (d *document) symbols(*placed) any {
	list := []documentSymbol{}
	r := d.written()
	add := func(name, detail string, kind int, all, at layout.Span) {
		if name = strings.TrimSpace(layout.Visible(name)); name != "" && at.Start >= all.Start && at.End <= all.End {
			list = append(list, documentSymbol{name, detail, kind, d.span(all), d.span(at)})
		}
	}
	if t := r.Tree.Title; t != nil {
		add(t.Text, "title", symbolString, t.Span, t.Span)
	}
	kinds := map[string]int{"fabric": symbolVariable, "strip-set": symbolArray, "scraps": symbolArray, "motif": symbolVariable, "block": symbolClass}
	for _, m := range r.mentions() {
		if m.Defines != "" {
			line := r.Source.LineSpan(r.Source.Line(m.Span.Start))
			add(m.Name(), m.Defines, kinds[m.Defines], line, m.Span)
		}
	}
	if g := r.Tree.Grid; g != nil {
		add("grid", "", symbolObject, g.Span, layout.Span{Start: g.Span.Start, End: min(g.Span.End, g.Span.Start+len("grid"))})
	}
	return list
}

// sentTokens is what an editor knows of a document's tokens.
type sentTokens struct {
	number int // of times that it got them
	data   []int
}

func (s *sentTokens) id() string { return strconv.Itoa(s.number) }

func (d *document) tokens(*placed) any {
	t := d.tokensOf(0, len(d.text.string))
	d.sent = sentTokens{d.sent.number + 1, t.Data}
	t.ID = d.sent.id()
	return t
}

// tokensSince is what has changed since the tokens that the editor has; all of them where it has others.
func (d *document) tokensSince(p *placed) any {
	was := d.sent
	if was.number == 0 || p.Previous != was.id() {
		return d.tokens(p)
	}
	now := d.tokens(p).(semanticTokens)
	start := 0
	for start < min(len(was.data), len(now.Data)) && was.data[start] == now.Data[start] {
		start++
	}
	end := 0 // counted from the back
	for end < min(len(was.data), len(now.Data))-start && was.data[len(was.data)-1-end] == now.Data[len(now.Data)-1-end] {
		end++
	}
	changed := changedTokens{now.ID, []tokensEdit{}}
	if start+end < max(len(was.data), len(now.Data)) {
		changed.Edits = append(changed.Edits, tokensEdit{start, len(was.data) - end - start, now.Data[start : len(now.Data)-end]})
	}
	return changed
}

func (d *document) tokensIn(p *placed) any {
	return d.tokensOf(d.text.offset(p.Range.Start), d.text.offset(p.Range.End))
}

// tokensOf is what sort of word stands where, in numbers as the protocol has them: each by how far it is from the one before.
func (d *document) tokensOf(from, to int) semanticTokens {
	r := d.written()
	mentions := r.mentions()
	data := make([]int, 0, 5*len(mentions)+200)
	last, before, next := position{}, 0, 0 // the word put last and where it begins
	put := func(s layout.Span, sort int) {
		if s.End <= from || s.Start >= to || s.Empty() {
			return
		}
		p := d.text.after(last, before, s.Start)
		character := p.Character
		if p.Line == last.Line {
			character -= last.Character
		}
		data = append(data, p.Line-last.Line, character, d.text.length(d.text.string[s.Start:s.End]), sort, 0)
		last, before = p, s.Start
	}
	for i := range r.Tree.Lines {
		l := &r.Tree.Lines[i]
		for n, token := range l.Tokens {
			for next < len(mentions) && mentions[next].Span.Start < token.Start {
				next++
			}
			if next < len(mentions) && mentions[next].Span.Start == token.Start && mentions[next].Span.End <= token.End {
				put(mentions[next].Span, map[layout.Scope]int{layout.Cloths: tokenVariable, layout.Labels: tokenClass}[mentions[next].Scope])
				if rest := (layout.Span{Start: mentions[next].Span.End, End: token.End}); !rest.Empty() {
					put(rest, tokenProperty) // a turn
				}
				continue
			}
			if sort, ok := sortOf(d.text.string[token.Start:token.End], n == 0 && !l.Row); ok {
				put(token.Span, sort)
			}
		}
		put(l.Comment, tokenComment)
	}
	return semanticTokens{Data: data}
}

// sortOf is the sort of a word that is no name.
func sortOf(word string, first bool) (int, bool) {
	switch {
	case first:
		return tokenKeyword, true
	case strings.ContainsAny(word[:1], "\"0123456789#") && word[0] != '"', word[0] == '.' && len(word) > 1:
		return tokenNumber, true
	case word[0] == '"' || strings.HasPrefix(word, "“") || strings.HasPrefix(word, "„") || strings.HasPrefix(word, "«"):
		return tokenString, true
	case isKind(word):
		return tokenType, true
	case layout.IsOwn(word):
		return tokenProperty, true
	}
	return 0, false
}
