package grammar_test

import (
	"regexp"
	"slices"
	"strings"
	"testing"

	"eighthturn/internal/quilttest/golden"
	"eighthturn/layout"
	"eighthturn/samples"
	"eighthturn/samples/starters"
)

const file = "quilt.tmLanguage.json"

// The grammar that editors are given is the one that the language's description makes.
func TestGrammarIsTheLanguages(t *testing.T) {
	golden.Text(t, file, Of().JSON())
}

// part is a piece of a line with its scope.
type part struct {
	start, end int
	scope      string
}

// engine applies a grammar as editors do: of the rules that may apply, the one whose match begins first, and of those the
// one listed first.
type engine struct {
	g     Grammar
	ready map[string]*regexp.Regexp
}

func (e *engine) regexp(text string) *regexp.Regexp {
	if e.ready[text] == nil {
		e.ready[text] = regexp.MustCompile(text)
	}
	return e.ready[text]
}

func (e *engine) line(line string) []part {
	var parts []part
	rules, at := e.g.Patterns, 0
	for at < len(line) {
		rule, m := e.first(rules, line, at)
		if m == nil {
			return parts
		}
		captures := rule.Captures
		if rule.Begin != "" {
			captures, rules = rule.BeginCaptures, rule.Patterns
		}
		for group, c := range captures {
			n := int(group[0] - '0')
			if m[2*n] >= 0 {
				parts = append(parts, part{m[2*n], m[2*n+1], c.Name})
			}
		}
		if m[1] == at && rule.Begin == "" {
			return parts
		}
		at = m[1]
	}
	return parts
}

// first is the rule that applies next and its match in the line.
func (e *engine) first(rules []Rule, line string, at int) (Rule, []int) {
	var best Rule
	var found []int
	for _, r := range rules {
		r = e.g.Repository[strings.TrimPrefix(r.Include, "#")]
		text := r.Match + r.Begin
		if strings.HasPrefix(text, "^") && at > 0 {
			continue
		}
		m := e.regexp(text).FindStringSubmatchIndex(line[at:])
		if m == nil || found != nil && m[0]+at >= found[0] {
			continue
		}
		for i := range m {
			if m[i] >= 0 {
				m[i] += at
			}
		}
		best, found = r, m
	}
	return best, found
}

// wants is what the language's own reader finds in a layout, as scopes of pieces of the text.
func wants(source *layout.Source) map[layout.Span]string {
	tree, _ := layout.Parse(source)
	want := map[layout.Span]string{}
	for i := range tree.Lines {
		l := &tree.Lines[i]
		if l.Keyword != "" && len(l.Tokens) > 0 {
			want[l.Tokens[0].Span] = Statement
		}
		if !l.Comment.Empty() {
			want[l.Comment] = Comment
		}
	}
	for _, f := range tree.Fabrics {
		if f.Print != nil {
			want[f.Print.Span] = Text
		}
	}
	for _, n := range []*layout.TextNode{tree.Title, tree.Designer, tree.Level, tree.Copyright} {
		if n != nil {
			want[n.Span] = Text
		}
	}
	for _, n := range []*layout.LengthNode{tree.Strip, tree.Side, tree.Seam, tree.UsableWidth} {
		if n != nil {
			want[n.Span] = Number
		}
	}
	return want
}

// missed are the pieces of a layout that the grammar sees otherwise than the language does.
func missed(g Grammar, text string) []string {
	e := &engine{g, map[string]*regexp.Regexp{}}
	source := layout.NewSource(text)
	seen := map[int]part{}
	start := 0
	for _, line := range strings.Split(text, "\n") {
		for _, p := range e.line(line) {
			seen[start+p.start] = part{start + p.start, start + p.end, p.scope}
		}
		start += len(line) + 1
	}
	var list []string
	want := wants(source)
	for span, scope := range want {
		p := seen[span.Start]
		if p.scope != scope || scope != Number && p.end != span.End {
			list = append(list, scope+": "+text[span.Start:span.End])
		}
	}
	for at, p := range seen {
		if (p.scope == Comment || p.scope == Statement) && want[layout.Span{Start: p.start, End: p.end}] != p.scope {
			list = append(list, "no "+p.scope+": "+text[at:p.end])
		}
	}
	return list
}

// Whatever samples and starters hold is seen as the language reads it.
func TestSamples(t *testing.T) {
	pieces := 0
	for _, s := range samples.All() {
		for _, wrong := range missed(Of(), s.Text) {
			t.Errorf("%s: %s", s.Name, wrong)
		}
		pieces += len(wants(layout.NewSource(s.Text)))
	}
	for _, s := range starters.All() {
		for _, wrong := range missed(Of(), s.Text) {
			t.Errorf("%s: %s", s.Name, wrong)
		}
	}
	if pieces < 100 {
		t.Errorf("only %d pieces were compared", pieces)
	}
	odd := "#title \"x\"\n TITLE “108\" wide”#  \nfabric a-b #fff \"p # q\" on-hand 3½ yd # \"late\"\nseam .25\nstrip 3-1/2\" # four\nfabric c #123456#\nnote \"ends\" # here \"not\"\n"
	for _, wrong := range missed(Of(), strings.Replace(odd, "seam .25\n", "", 1)) {
		t.Error(wrong)
	}
}

func TestSamplesCatches(t *testing.T) {
	for what, spoil := range map[string]func(map[string]Rule){
		"comments": func(m map[string]Rule) { delete(m, "comment") },
		"statements": func(m map[string]Rule) {
			r := m["statement"]
			r.Begin = strings.Replace(r.Begin, "border|", "", 1)
			m["statement"] = r
		},
		"text": func(m map[string]Rule) {
			r := m["text"]
			r.Match = strings.Replace(r.Match, ".*?", "[^ ]*?", 1)
			m["text"] = r
		},
		"colours as comments": func(m map[string]Rule) { r := m["comment"]; r.Match = `(#.*)$`; m["comment"] = r; delete(m, "colour") },
	} {
		g := Of()
		spoil(g.Repository)
		wrong := 0
		for _, s := range samples.All() {
			wrong += len(missed(g, s.Text))
		}
		if wrong == 0 {
			t.Errorf("without its %s the grammar passes", what)
		}
	}
}

// One line of every sort, piece by piece.
func TestPieces(t *testing.T) {
	for line, want := range map[string]string{
		"block S floating-star kites lamp  wedges reversed halo  # x": "block=keyword.control floating-star=entity.name.type kites=variable.parameter wedges=variable.parameter reversed=keyword.other # x=comment.line",
		"block A2 like A kites web-blue":                              "block=keyword.control like=keyword.other kites=variable.parameter",
		"fabric navy #1f3350 \"night # sky\" on-hand 1 1/2 yd":        "fabric=keyword.control #1f3350=constant.other.color \"night # sky\"=string.quoted on-hand=keyword.other 1 1/2=constant.numeric yd=keyword.other.unit",
		"  S:se . S:SW F":           ":se=storage.modifier .=punctuation.separator :SW=storage.modifier",
		"webs navy / reversed glow": "webs=keyword.control /=punctuation.separator reversed=keyword.other",
		"strip 3½\"":                "strip=keyword.control 3½=constant.numeric \"=keyword.other.unit",
		"units cm":                  "units=keyword.control cm=keyword.other",
		"stripes 4":                 "",
	} {
		e := &engine{Of(), map[string]*regexp.Regexp{}}
		parts := e.line(line)
		slices.SortFunc(parts, func(a, b part) int { return a.start - b.start })
		var got []string
		for _, p := range parts {
			scope := strings.TrimSuffix(p.scope, ".quilt")
			scope = strings.TrimSuffix(strings.TrimSuffix(scope, ".number-sign"), ".quilt")
			got = append(got, line[p.start:p.end]+"="+scope)
		}
		if strings.Join(got, " ") != want {
			t.Errorf("%q:\n got %s\nwant %s", line, strings.Join(got, " "), want)
		}
	}
}

// The words of options cannot be names, so whatever is coloured as one is one.
func TestOptionWords(t *testing.T) {
	for _, w := range optionWords() {
		if _, _, faults := layout.Read("fabric " + w + " #123456\n"); !strings.Contains(message(faults), "one of the language's own words") {
			t.Errorf("%q may be a name", w)
		}
	}
	if len(optionWords()) < 20 || message(nil) != "" {
		t.Error("there is nothing to compare")
	}
}

func message(faults []layout.Fault) string {
	var all []string
	for _, f := range faults {
		all = append(all, f.Message)
	}
	return strings.Join(all, "\n")
}
