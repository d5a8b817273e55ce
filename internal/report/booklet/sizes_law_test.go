package booklet

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
	"sync"
	"testing"

	"eighthturn/internal/document"
	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/plan/fit"
	"eighthturn/internal/quilttest/invent"
	"eighthturn/internal/quilttest/judges"
	"eighthturn/internal/quilttest/lay"
	"eighthturn/internal/render"
	"eighthturn/internal/report"
	"eighthturn/internal/templates"
)

// Numbers in a place are those of the pattern of that size alone: the pattern of all sizes is read as somebody reads it who makes one
// of them, and what it then says is what that size's own pattern says, line by line.

const (
	oneNumber  = `(?:[0-9]+(?:,[0-9]{3})*(?: [0-9]+/[0-9]+|\.[0-9]+|/[0-9]+)?)`
	numberList = oneNumber + `(?:(?:, ` + oneNumber + `)*,? and ` + oneNumber + `|(?:, ` + oneNumber + `)+)?`
	anyNumber  = `(Figure [0-9]+|` + numberList + `|–)`
	// beforeNumber is the sign before a number that does not end a name, as that of W3.
	beforeNumber = `(^|[^\pL\pN_.,/#-])`
)

// alternatives are numbers of so many sizes behind one another.
func alternatives(sizes int) []*regexp.Regexp {
	knownAlternatives.Lock()
	defer knownAlternatives.Unlock()
	if found := knownAlternatives.of[sizes]; found != nil {
		return found
	}
	one, list := `(Figure [0-9]+|`+oneNumber+`|–)`, anyNumber
	var found []*regexp.Regexp
	for _, c := range []struct{ number, between string }{{list, `; `}, {one, `, `}} {
		rest := c.number + strings.Repeat(c.between+c.number, sizes-2)
		if sizes == 2 {
			rest = list
		}
		found = append(found, regexp.MustCompile(beforeNumber+map[bool]string{true: list, false: c.number}[sizes == 2 || c.between == "; "]+` (?:\(`+rest+`\)|\[`+rest+`\])`))
	}
	knownAlternatives.of[sizes] = found
	return found
}

// knownAlternatives are expressions by the number of sizes.
var knownAlternatives = struct {
	sync.Mutex
	of map[int][]*regexp.Regexp
}{of: map[int][]*regexp.Regexp{}}

// inPlace is a text as it is read for the size at a place of so many.
func inPlace(text string, place, sizes int) string {
	if sizes < 2 {
		return text
	}
	for _, re := range alternatives(sizes) {
		text = re.ReplaceAllStringFunc(text, func(found string) string {
			var parts []string
			matched := re.FindStringSubmatch(found)
			for _, part := range matched[2:] {
				if part != "" {
					parts = append(parts, part)
				}
			}
			if strings.HasPrefix(parts[0], "Figure") {
				return matched[1] + "Figure 1"
			}
			return matched[1] + parts[place]
		})
	}
	return text
}

// forSizes takes the names of sizes off a text: their number, and the place of one of them, -1 for not among them.
func forSizes(text, name string, names []string) (rest string, place, sizes int) {
	head, rest, ok := strings.Cut(text, ": ")
	if !ok {
		head, rest, ok = strings.Cut(text, ".")
	}
	list := strings.Split(strings.NewReplacer(" (", "|", ", ", "|", ")", "").Replace(head), "|")
	for _, n := range list {
		if !slices.ContainsFunc(names, func(known string) bool { return strings.EqualFold(known, n) }) {
			ok = false
		}
	}
	if !ok {
		return text, slices.Index(names, name), len(names)
	}
	return rest, slices.IndexFunc(list, func(n string) bool { return strings.EqualFold(n, name) }), len(list)
}

var (
	figureNumbers = regexp.MustCompile(`Figures? [0-9]+`)
	onlyIn        = regexp.MustCompile(` \(([^()]*) only\)$`)
	plurals       = regexp.MustCompile(`([a-z]{3})s\b`)
)

// plainWords is a text without what a size does not settle: numbers of figures, the end of a plural, "about".
func plainWords(text string) string {
	text = figureNumbers.ReplaceAllString(text, "Figure")
	return strings.TrimSpace(strings.ReplaceAll(plurals.ReplaceAllString(text, "$1"), "about ", ""))
}

// sizeReader reads a pattern of sizes for one of them.
type sizeReader struct {
	names []string
	name  string
	lines []string
}

// say adds the sentences of a text.
func (s *sizeReader) say(text string) {
	rest, place, sizes := text, 0, 1
	if s.names != nil {
		if rest, place, sizes = forSizes(text, s.name, s.names); place < 0 {
			return
		}
	}
	for _, sentence := range sentenceSplit(inPlace(rest, place, sizes)) {
		s.lines = append(s.lines, plainWords(sentence))
	}
}

// sentenceEnds is where sentences end.
var sentenceEnds = regexp.MustCompile(`\. [A-Z]`)

func sentenceSplit(text string) (list []string) {
	ends := sentenceEnds.FindAllStringIndex(text, -1)
	from := 0
	for _, e := range ends {
		list = append(list, text[from:e[0]+1])
		from = e[0] + 2
	}
	return append(list, text[from:])
}

// blocks adds what blocks say. A heading that names sizes is for what stands in its frame.
func (s *sizeReader) blocks(list []document.Block, framed bool) {
	inner := *s
	r := &inner
	for i, b := range list {
		switch v := b.(type) {
		case document.Heading:
			text := v.Text
			if m := onlyIn.FindStringSubmatch(text); m != nil && s.names != nil {
				of := strings.Split(strings.ReplaceAll(m[1], " and ", ", "), ", ")
				switch {
				case !slices.Contains(of, s.name) && i > 0: // a frame begins with its heading
					continue
				case !slices.Contains(of, s.name):
					return
				}
				text = inPlace(strings.TrimSuffix(text, m[0]), slices.Index(of, s.name), len(of))
				if i == 0 && framed {
					r.names = of
				}
			}
			r.say(text)
		case document.Paragraph:
			if strings.HasPrefix(v.Text.String(), "Sizes: ") && s.names != nil {
				continue // how they are read
			}
			if text := v.Text.String(); !strings.HasSuffix(text, ":") || len(v.Text) != 1 || !v.Text[0].Bold {
				r.say(text)
			} else if rest, place, _ := forSizes(text+" ", s.name, s.names); rest != "" || s.names == nil {
				r.say(text)
			} else { // the name of a size above its list
				for _, it := range list[i+1].(document.List).Items {
					own := &sizeReader{names: namesOf(text), name: s.name}
					if place >= 0 {
						own.say(it.Text.String())
						own.blocks(it.Blocks, false)
						r.lines = append(r.lines, own.lines...)
					}
				}
			}
		case document.List:
			if i > 0 && s.names != nil {
				if p, ok := list[i-1].(document.Paragraph); ok && len(p.Text) == 1 && p.Text[0].Bold {
					if rest, _, _ := forSizes(p.Text.String()+" ", s.name, s.names); rest == "" {
						continue
					}
				} else if ok && p.Text[0].Bold && strings.HasSuffix(p.Text.String(), ":") {
					if rest, place, _ := forSizes(p.Text.String(), s.name, s.names); rest != p.Text.String() {
						own := &sizeReader{names: namesOf(p.Text[0].Text), name: s.name}
						for _, it := range v.Items {
							if place >= 0 {
								own.say(it.Text.String())
								own.blocks(it.Blocks, false)
							}
						}
						r.lines = append(r.lines, own.lines...)
						continue
					}
				}
			}
			for _, it := range v.Items {
				text := it.Text.String()
				r.say(text)
				names := r.names
				if rest, place, _ := forSizes(text, s.name, s.names); s.names != nil && rest != text { // what belongs to it is for its sizes
					if place < 0 {
						continue
					}
					r.names = namesOf(it.Text[0].Text)
				}
				r.blocks(it.Blocks, false)
				r.names = names
			}
		case document.Table:
			r.table(v)
		case document.Box:
			r.blocks(v.Blocks, true)
		case document.Together:
			r.blocks(v.Blocks, true)
		}
	}
	s.lines = r.lines
}

func namesOf(text string) []string {
	var list []string
	for _, n := range strings.Split(strings.NewReplacer(" (", "|", ", ", "|", ")", "", ":", "").Replace(text), "|") {
		list = append(list, strings.ToLower(n[:1])+n[1:])
	}
	return list
}

// table adds the rows of a table, of each column that is for the size or for all. Rows whose first cell is empty go on with the one
// above.
func (s *sizeReader) table(t document.Table) {
	own := *s
	columns := make([]string, len(t.Columns)) // the sizes that they are for
	var sizes []string
	for i, c := range t.Columns {
		if _, name, ok := cutLast(c.Title, ", "); ok && slices.Contains(s.names, name) {
			columns[i] = name
			sizes = append(sizes, name)
		}
	}
	if sizes != nil {
		own.names = sizes
	}
	if rest, place, _ := forSizes(t.Caption.String()+" ", s.name, s.names); s.names != nil && rest != t.Caption.String()+" " {
		if place < 0 {
			return
		}
		own.names = namesOf(t.Caption[0].Text)
	}
	ours := true
	for n, r := range t.Rows {
		var cells []string
		if first := r.Cells[0]; n == 0 || len(r.Cells) == 1 || first.Text.String() != "" || len(first.Swatches) > 0 {
			ours = sizes == nil || slices.Contains(sizes, s.name)
		}
		for i, c := range r.Cells {
			text := c.Text.String()
			if len(r.Cells) == len(t.Columns) && (columns[i] != "" || t.Columns[i].BySize) {
				if columns[i] != "" && columns[i] != s.name {
					continue
				}
				ours = ours && text != "none" // of a fabric that nothing is bought of, and of one that the size does not have
			}
			cells = append(cells, own.cell(text))
			if i == 0 && s.names != nil {
				_, place, _ := forSizes(text, s.name, own.names)
				ours = ours && place >= 0
			}
		}
		if ours {
			s.lines = append(s.lines, strings.Join(slices.DeleteFunc(cells, func(c string) bool { return c == "" || c == "–" }), " | "))
		}
	}
}

// cell is what a cell says of the size.
func (s *sizeReader) cell(text string) string {
	if s.names == nil {
		return plainWords(text)
	}
	parts := []string{""}
	for _, part := range strings.Split(text, "; ") { // a new one where another size is named
		if rest, _, _ := forSizes(part, s.name, s.names); rest != part && parts[0] != "" {
			parts = append(parts, part)
		} else {
			parts[len(parts)-1] += map[bool]string{true: "; "}[parts[len(parts)-1] != ""] + part
		}
	}
	for _, part := range parts {
		if rest, place, sizes := forSizes(part, s.name, s.names); place >= 0 {
			return plainWords(inPlace(rest, place, sizes))
		}
	}
	return ""
}

func cutLast(text, sep string) (before, after string, found bool) {
	if i := strings.LastIndex(text, sep); i >= 0 {
		return text[:i], text[i+len(sep):], true
	}
	return text, "", false
}

// readFor is what a pattern says, part by part, for somebody who makes one size; names are nil for the pattern of one alone.
func readFor(d document.Document, name string, names []string) (lines []string) {
	for _, s := range d.Sections {
		if s.Title == "Sizes" {
			continue
		}
		r := &sizeReader{names: names, name: name}
		r.blocks(s.Blocks, false)
		for _, line := range r.lines {
			lines = append(lines, s.Title+" > "+line)
		}
	}
	return lines
}

// eachAlone is what the pattern of each size by itself says, with the letters of fabrics and templates that all of them share.
func eachAlone(t testing.TB, text string, names []string) [][]string {
	var list [][]string
	var letters []string
	var known []templates.Template
	for i, name := range names {
		own := *lay.Top(t, text)
		if i > 0 {
			own = *lay.Top(t, fit.WrittenOut(text, name, nil))
		}
		own.Sizes = nil
		r := Study(&own, cutting.Options{})
		if i == 0 {
			letters = fabricLetters(r)
		}
		b := lettered(r, Options{}, letters)
		b.sized = true // its tables have the columns that those of sizes have
		b.nameTemplates(known)
		known = append(known, b.Templates...)
		parts := b.body()
		b.parts = nil
		b.backCover(b.back)
		list = append(list, readFor(b.whole(append(parts, b.parts...)), name, nil))
	}
	return list
}

// patternBreaks are the lines that a pattern of all sizes says otherwise than those of each alone.
func patternBreaks(d document.Document, alone [][]string, names []string) (list []string) {
	for i, name := range names {
		for _, line := range differing(readFor(d, name, names), alone[i]) {
			list = append(list, name+": "+line)
		}
	}
	return list
}

// differing are lines that one of two lists has more often than the other.
func differing(a, b []string) (list []string) {
	counts := map[string]int{}
	for _, line := range a {
		counts[line]++
	}
	for _, line := range b {
		counts[line]--
	}
	for line, n := range counts {
		if n != 0 {
			list = append(list, fmt.Sprintf("%+d %s", n, line))
		}
	}
	slices.Sort(list)
	return list
}

// sizedTexts are layouts with sizes: a sample, some by hand, and invented ones.
func sizedTexts(t testing.TB) (list []string) {
	list = append(list, sampleText(t, "beacon"),
		"side 6\nfabric cream #f4ead7\nfabric navy #1f3350\nstrip-set shore navy 2 cream rest\nblock R ring wedges shore corners cream\nblock H halves pieces navy cream\n"+
			"grid\n  H H H H\n  H R R H\n  H R R H\n  H H H H\nborder 2 navy\nborder 3 cream\nbinding 2 1/2 navy\nsize lap\nsize twin across 6 down 8 side 8 border 2 1/2\nsize crib down 5 border none\n")
	for seed := uint64(0); len(list) < judges.Of(6, 14); seed++ {
		text := invent.Layout(seed)
		if text = invent.WithSize(seed, text, "other"); text == "" || len(text) > 1500 {
			continue
		}
		if top := lay.Top(t, text); len(top.Patches) < 400 && !top.Sizes[0].Own && top.Sizes[0].Units == top.Units {
			list = append(list, text)
		}
	}
	return list
}

// TestPatternOfSizesIsEachSizes: read for one of its sizes, a pattern says what that size's own pattern says.
func TestPatternOfSizesIsEachSizes(t *testing.T) {
	for n, text := range sizedTexts(t) {
		r := Study(lay.Top(t, text), cutting.Options{})
		d, names := Pattern(r, Options{}), r.Plans.SizeNames()
		for _, figure := range numberedTwice(d) {
			t.Errorf("layout %d: %s stands twice", n, figure)
		}
		own := eachAlone(t, text, names)
		for _, wrong := range firstOf(patternBreaks(d, own, names), 12) {
			t.Errorf("layout %d: %s", n, wrong)
		}
		if n > 0 {
			continue
		}
		for of, by := range map[string]string{"48 (96, 168) blocks": "48 (168, 96) blocks", "6 (9, 10) strips": "6 (9, 9) strips", "221 1/2 (317, ": "221 1/2 (317 1/2, ", "Lap (queen)": "Lap (twin)"} {
			broken := mapped(d, func(text string) string { return strings.ReplaceAll(text, of, by) })
			if len(patternBreaks(broken, own, names)) == 0 {
				t.Errorf("%s in the place of %s is not noticed", by, of)
			}
		}
	}
}

// captionNumber is the number in the caption of a figure.
var captionNumber = regexp.MustCompile(`^Figure [0-9]+\.`)

// numberedTwice are the numbers of figures that more than one caption has.
func numberedTwice(d document.Document) (list []string) {
	seen := map[string]bool{}
	mapped(d, func(text string) string {
		if number := captionNumber.FindString(text); number != "" {
			if seen[number] {
				list = append(list, number)
			}
			seen[number] = true
		}
		return text
	})
	return list
}

// TestPagesOfSizes: on every page size a pattern of sizes keeps the laws of pages.
func TestPagesOfSizes(t *testing.T) {
	r := Study(lay.Top(t, sampleText(t, "beacon")), cutting.Options{})
	for i, p := range render.Papers() {
		for _, large := range []bool{false, true} {
			if !judges.On && (i > 0) != large {
				continue
			}
			o := render.Options{Paper: p, Large: large}
			d := Pattern(r, Options{Paper: p, Large: large})
			printed, err := render.PDF(d, o)
			if err != nil {
				t.Fatal(err)
			}
			for _, wrong := range slices.Concat(firstOf(illegible(d, p, large), 3), overflows(printed, large), shorts(printed, o)) {
				t.Errorf("%s, large %v: %s", p.Name, large, wrong)
			}
			if n := backPages(t, d, o); n != 1 {
				t.Errorf("%s, large %v: the back cover takes %d pages", p.Name, large, n)
			}
		}
	}
}

// TestHowSizesAreRead: the line at the start names the sizes in the order of the numbers.
func TestHowSizesAreRead(t *testing.T) {
	if text := report.HowSizesRead([]string{"lap", "twin", "queen"}).String(); !strings.Contains(text, "lap (twin, queen)") {
		t.Error(text)
	}
}
