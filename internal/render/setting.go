package render

import (
	"regexp"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"github.com/rivo/uniseg"

	"eighthturn/internal/diagram"
	"eighthturn/internal/document"
	"eighthturn/internal/render/pdf"
	"eighthturn/palettes"
)

// style is how a stretch of text is set.
type style struct {
	size float64 // in points
	bold bool
	ink  palettes.Colour
	tall tall   // a fraction, set larger than the text around
	to   string // the figure that it leads to, such as "Figure 8"; "" for none
}

func typed(size float64, bold bool, colour palettes.Colour) style {
	return style{size: size, bold: bold, ink: colour}
}

// piece is a stretch of one style on one line. Where the fonts lack a sign, shown has a mark
// in its place and meant is what it stands for.
type piece struct {
	style
	shown, meant string
	width        float64 // without the blank behind it
	more         bool    // a blank parts it from what is read next
}

// setter breaks text into lines and keeps count of the signs that the fonts lack.
type setter struct {
	letters *diagram.Lettering
	missing []rune
	figures map[string]bool // that texts may lead to, by name
	pattern *regexp.Regexp  // of their names
}

func (s *setter) width(text string, st style) float64 {
	size, right, _ := st.set()
	return right + s.letters.Width(text, size, st.bold)
}

// piece measures text, and puts marks for signs that the fonts lack.
func (s *setter) piece(text string, st style) piece {
	p := piece{style: st, shown: text}
	if strings.ContainsFunc(text, func(r rune) bool { return !pdf.Has(s.letters, r, st.bold) || pdf.Unseen(r) }) {
		p.shown, p.meant = s.substitute(text, st.bold), text
	}
	p.width = s.width(p.shown, st)
	return p
}

func (s *setter) substitute(text string, bold bool) string {
	return pdf.Shown(s.letters, text, bold, func(r rune) {
		if !slices.Contains(s.missing, r) {
			s.missing = append(s.missing, r)
		}
	})
}

// word is what no line may be broken within, with the blanks behind it.
type word struct {
	pieces []piece
	width  float64
	blank  piece // "" for none
}

// words parts a text at the places where a line may end (Unicode Standard Annex 14), and
// keeps numbers with their units.
func (s *setter) words(t document.Text, of func(document.Run) style) []word {
	var list []word
	cuts := breaks(t)
	at, start := 0, true
	for _, r := range s.linked(t) {
		st := of(r.Run)
		st.to = r.to
		for text := r.Text; text != ""; {
			n := len(text)
			if i, _ := slices.BinarySearch(cuts, at+1); i < len(cuts) && cuts[i]-at < n {
				n = cuts[i] - at
			}
			if start {
				list = append(list, word{})
			}
			s.grow(&list[len(list)-1], text[:n], st)
			at += n
			text = text[n:]
			_, start = slices.BinarySearch(cuts, at)
		}
	}
	return list
}

// grow adds a stretch of one style to a word.
func (s *setter) grow(w *word, text string, st style) {
	if w.blank.shown != "" { // a blank within, that holds its neighbours together
		w.pieces = append(w.pieces, w.blank)
		w.width += w.blank.width
		w.blank = piece{}
	}
	body := strings.TrimRight(text, " ")
	if body != "" {
		for _, p := range s.pieces(body, st) {
			w.pieces = append(w.pieces, p)
			w.width += p.width
		}
	}
	if blank := text[len(body):]; blank != "" {
		w.blank = piece{style: st, shown: blank, width: s.width(blank, st)}
	}
}

// breaks are the bytes of a text behind which a line may end.
func breaks(t document.Text) []int {
	text, state, at := t.String(), -1, 0
	var list []int
	for rest := text; rest != ""; {
		var segment string
		segment, rest, _, state = uniseg.FirstLineSegmentInString(rest, state)
		at += len(segment)
		if !holds(text[:at], rest) {
			list = append(list, at)
		}
	}
	return list
}

// holds says whether a blank between two stretches holds a number to its unit, to the number that it is multiplied by, or to the
// word that it numbers.
func holds(before, after string) bool {
	if !strings.HasSuffix(before, " ") {
		return false
	}
	last, _ := utf8.DecodeLastRuneInString(before[:len(before)-1])
	next := after
	if i := strings.IndexAny(after, " .,;:)"); i >= 0 {
		next = after[:i]
	}
	first, _ := utf8.DecodeRuneInString(next)
	switch next {
	case "in", "cm", "mm", "yd", "m", "×", "x", "by":
		return unicode.IsNumber(last)
	}
	if strings.HasSuffix(before, "Figure ") || strings.HasSuffix(before, "Step ") {
		return unicode.IsNumber(first)
	}
	return (last == '×' || strings.HasSuffix(before, " x ") || strings.HasSuffix(before, " by ")) && unicode.IsNumber(first)
}

// lines breaks a text into lines of a width. A word that is wider is broken between letters.
func (s *setter) lines(t document.Text, width float64, of func(document.Run) style) []lineOf {
	var list []lineOf
	var now lineOf
	var blank piece
	width += 1e-6 // sums of widths are not exact
	for _, w := range s.words(t, of) {
		for _, part := range s.fitting(w, width) {
			if len(now.pieces) > 0 && now.width+blank.width+part.width > width {
				now.pieces[len(now.pieces)-1].more = blank.shown != ""
				list, now, blank = append(list, now), lineOf{}, piece{}
			}
			now.add(blank)
			for _, p := range part.pieces {
				now.add(p)
			}
			blank = part.blank
		}
	}
	if len(now.pieces) > 0 {
		list = append(list, now)
	}
	return list
}

// lineOf is one line of set text.
type lineOf struct {
	pieces []piece
	width  float64
}

func (l *lineOf) add(p piece) {
	if p.shown == "" && p.meant == "" {
		return
	}
	l.width += p.width
	if n := len(l.pieces); n > 0 {
		if last := &l.pieces[n-1]; last.style == p.style && last.meant == "" && p.meant == "" {
			last.shown += p.shown
			last.width += p.width
			return
		}
	}
	l.pieces = append(l.pieces, p)
}

// fitting is a word in parts that are no wider than a line, at least a letter each.
func (s *setter) fitting(w word, width float64) []word {
	if w.width <= width {
		return []word{w}
	}
	var list []word
	var now word
	for _, p := range w.pieces {
		text := p.shown
		if p.meant != "" {
			text = p.meant
		}
		for state := -1; text != ""; {
			var cluster string
			cluster, text, _, state = uniseg.FirstGraphemeClusterInString(text, state)
			letter := s.piece(cluster, p.style)
			if len(now.pieces) > 0 && now.width+letter.width > width {
				list, now = append(list, now), word{}
			}
			now.pieces = append(now.pieces, letter)
			now.width += letter.width
		}
	}
	now.blank = w.blank
	return append(list, now)
}
