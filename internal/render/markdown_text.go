package render

import (
	"eighthturn/internal/document"
	"strings"
)

// spelled is text of the document with the signs of Markdown escaped.
func spelled(text string) string {
	text = line(text)
	if !strings.ContainsAny(text, "\\`*_{}[]<>#|~&") {
		return text
	}
	var b strings.Builder
	for _, r := range text {
		if strings.ContainsRune("\\`*_{}[]<>#|~&", r) {
			b.WriteByte('\\')
		}
		b.WriteRune(r)
	}
	return b.String()
}

// started is a line that does not begin like a list, a rule or a heading by accident.
func started(text string) string {
	number := digits(text)
	if rest := text[len(number):]; number != "" && rest != "" && (rest[0] == '.' || rest[0] == ')') {
		return number + "\\" + rest
	}
	if text != "" && strings.ContainsRune("-+=:", rune(text[0])) {
		return "\\" + text
	}
	return text
}

// celled is text in a table, whose bars are escaped already; a cell has no empty lines.
func celled(text string) string { return strings.ReplaceAll(text, "\n", " ") }

// styled is a text with its bold runs marked, the blanks outside of the marks.
func styled(t document.Text) string {
	var b strings.Builder
	for _, r := range merged(runs(t)) {
		body := strings.Trim(r.Text, " ")
		if !r.Bold || body == "" {
			b.WriteString(unspaced(r.Text))
			continue
		}
		at := strings.Index(r.Text, body)
		b.WriteString(r.Text[:at] + "**" + spelled(body) + "**" + r.Text[at+len(body):])
	}
	return strings.TrimSpace(b.String())
}

// unspaced escapes a run without losing the blanks at its ends.
func unspaced(text string) string {
	body := strings.Trim(text, " ")
	if body == "" {
		return text
	}
	at := strings.Index(text, body)
	return text[:at] + spelled(body) + text[at+len(body):]
}

// merged is a text whose neighbours that are alike in weight are one run.
func merged(t document.Text) document.Text {
	var list document.Text
	for _, r := range t {
		if n := len(list); n > 0 && list[n-1].Bold == r.Bold {
			list[n-1].Text += r.Text
			continue
		}
		list = append(list, r)
	}
	return list
}

// bold is a text all in bold type.
func bold(t document.Text) document.Text {
	var list document.Text
	for _, r := range t {
		r.Bold = true
		list = append(list, r)
	}
	return list
}
