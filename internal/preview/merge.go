package preview

import (
	"strings"

	"github.com/aymanbagabas/go-udiff"
)

const byteOrderMark = "\ufeff"

// plain is a text as the page types it: lines end with \n, and no byte-order mark begins it.
func plain(text string) string {
	return strings.NewReplacer("\r\n", "\n", "\r", "\n").Replace(strings.TrimPrefix(text, byteOrderMark))
}

// like is a plain text with the line ends and the mark of another, which says nearly the same: lines that stay end as they do
// there, new ones as most do.
func like(text, there string) string {
	mark := ""
	if strings.HasPrefix(there, byteOrderMark) {
		mark, there = byteOrderMark, there[len(byteOrderMark):]
	}
	if !strings.Contains(there, "\r") {
		return mark + text
	}
	end := usualEnd(there)
	lines := ended(there)
	starts := make(map[int]int, len(lines)+1) // of lines: plain, there
	from, to := 0, 0
	for _, l := range lines {
		starts[from] = to
		from += len(plain(l))
		to += len(l)
	}
	starts[from] = to
	edits := udiff.Lines(plain(there), text)
	for i := range edits {
		e := &edits[i]
		e.Start, e.End, e.New = starts[e.Start], starts[e.End], strings.ReplaceAll(e.New, "\n", end)
	}
	made, err := udiff.Apply(there, edits)
	if err != nil || plain(made) != text { // a last line without an end, mixed with others
		made = strings.ReplaceAll(text, "\n", end)
	}
	return mark + made
}

// ended are the lines of a text with their ends, which are \n, \r\n or \r.
func ended(text string) []string {
	var list []string
	for text != "" {
		i := strings.IndexAny(text, "\r\n")
		switch {
		case i < 0:
			i = len(text)
		case strings.HasPrefix(text[i:], "\r\n"):
			i += 2
		default:
			i++
		}
		list = append(list, text[:i])
		text = text[i:]
	}
	return list
}

// usualEnd is how most lines of a text end.
func usualEnd(text string) string {
	both := strings.Count(text, "\r\n")
	feeds, returns := strings.Count(text, "\n")-both, strings.Count(text, "\r")-both
	switch {
	case both >= feeds && both >= returns:
		return "\r\n"
	case returns > feeds:
		return "\r"
	}
	return "\n"
}

// merged is a plain text with what two have changed in it; ok is false where both have changed the same lines.
func merged(base, mine, theirs string) (text string, ok bool) {
	switch {
	case mine == base:
		return theirs, true
	case theirs == base || theirs == mine:
		return mine, true
	}
	edits, ok := udiff.Merge(udiff.Lines(base, theirs), udiff.Lines(base, mine))
	if !ok {
		return "", false
	}
	text, err := udiff.Apply(base, edits)
	return text, err == nil
}
