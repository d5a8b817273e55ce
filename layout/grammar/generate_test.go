// Package grammar_test turns the description of the layout language into a highlighting grammar for text editors, in the form
// that began with TextMate and that many of them read, and tries it.
//
// Its patterns are regular expressions without looking round, so that every engine takes them: each takes whole words and
// the blanks behind them, and words that mean nothing by themselves are taken last.
package grammar_test

import (
	"bytes"
	"encoding/json"
	"regexp"
	"slices"
	"strings"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
	"eighthturn/layout"
)

// Scopes of the parts of a layout, which editors have colours for.
const (
	Comment   = "comment.line.number-sign.quilt"
	Statement = "keyword.control.quilt"
	Kind      = "entity.name.type.quilt"
	Role      = "variable.parameter.quilt"
	Option    = "keyword.other.quilt"
	Text      = "string.quoted.quilt"
	Colour    = "constant.other.color.quilt"
	Number    = "constant.numeric.quilt"
	Unit      = "keyword.other.unit.quilt"
	Corner    = "storage.modifier.quilt"
	Nothing   = "punctuation.separator.quilt" // the dot where no block stands, and the stroke between two webs
)

// Rule is one rule of a grammar: a Match within a line, or what stands between Begin and End.
type Rule struct {
	Match         string             `json:"match,omitempty"`
	Captures      map[string]Capture `json:"captures,omitempty"`
	Begin         string             `json:"begin,omitempty"`
	BeginCaptures map[string]Capture `json:"beginCaptures,omitempty"`
	End           string             `json:"end,omitempty"`
	Patterns      []Rule             `json:"patterns,omitempty"`
	Include       string             `json:"include,omitempty"`
}

// Capture is the scope of one group of an expression.
type Capture struct {
	Name string `json:"name"`
}

// Grammar is a highlighting grammar.
type Grammar struct {
	Comment    string          `json:"comment"`
	Name       string          `json:"name"`
	ScopeName  string          `json:"scopeName"`
	FileTypes  []string        `json:"fileTypes"`
	Patterns   []Rule          `json:"patterns"`
	Repository map[string]Rule `json:"repository"`
}

// Of is the grammar of the language as its description has it now.
func Of() Grammar {
	var statements, kinds []string
	for _, s := range layout.Statements() {
		statements = append(statements, s.Words()...)
	}
	for _, k := range blocks.Kinds() {
		kinds = append(kinds, k.Name)
	}
	includes := func(names ...string) (list []Rule) {
		for _, n := range names {
			list = append(list, Rule{Include: "#" + n})
		}
		return list
	}
	return Grammar{
		Comment: "Made from the description of the language: go test ./layout/grammar -update", Name: "Quilt layout",
		ScopeName: "source.quilt", FileTypes: []string{"quilt"},
		Patterns: includes("comment-line", "block", "block-like", "statement", "rows"),
		Repository: map[string]Rule{
			"comment-line": {Match: `^\x{FEFF}?(#.*)$`, Captures: scopes(Comment)},
			"block": {
				Begin: `^\x{FEFF}?[ \t]*((?i)block)[ \t]+([^\s#]+)[ \t]+((?i)` + either(kinds) + `)` + wordEnd, End: `$`,
				BeginCaptures: scopes(Statement, "", Kind), Patterns: includes("comment", "text", "colour", "length", "role", "option", "other"),
			},
			"block-like": {
				Begin: `^\x{FEFF}?[ \t]*((?i)block)[ \t]+([^\s#]+)[ \t]+((?i)like)[ \t]+([^\s#]+)` + wordEnd, End: `$`,
				BeginCaptures: scopes(Statement, "", Option), Patterns: includes("comment", "text", "colour", "length", "role", "option", "other"),
			},
			"statement": {
				Begin: `^\x{FEFF}?[ \t]*((?i)` + either(statements) + `)` + wordEnd, End: `$`,
				BeginCaptures: scopes(Statement), Patterns: includes("comment", "text", "colour", "length", "nothing", "option", "other"),
			},
			"rows":    {Begin: `^[ \t]+`, End: `$`, Patterns: includes("comment", "nothing", "cell", "reversed", "other")},
			"comment": {Match: `(#(?:[ \t].*)?)$`, Captures: scopes(Comment)},
			"text": {Match: `([` + quotes + `].*?[` + quotes + `])(?:[ \t]*(#(?:[ \t].*)?)?$|[ \t]+((?i)on-hand|usable-width)` + wordEnd + `)`,
				Captures: scopes(Text, Comment, Option)},
			"colour":   {Match: `(#(?:[0-9A-Fa-f]{6}|[0-9A-Fa-f]{3}))` + wordEnd, Captures: scopes(Colour)},
			"length":   {Match: `(` + number + `)(?:(["”″]|''|′′|’’)|[ \t]*((?i)` + either(units()) + `))?` + wordEnd, Captures: scopes(Number, Unit, Unit)},
			"role":     {Match: `((?i)` + either(roles()) + `)` + wordEnd, Captures: scopes(Role)},
			"option":   {Match: `((?i)` + either(optionWords()) + `)` + wordEnd, Captures: scopes(Option)},
			"reversed": {Match: `((?i)reversed|turned)` + wordEnd, Captures: scopes(Option)},
			"nothing":  {Match: `([./])` + wordEnd, Captures: scopes(Nothing)},
			"cell":     {Match: `([^\s#:]+)(:(?i:` + either(blocks.CornerNames()) + `))` + wordEnd, Captures: scopes("", Corner)},
			"other":    {Match: `(?:[^\s#]|#[^\s])+`},
		},
	}
}

// wordEnd is where a word ends: blanks, or the line's end.
const wordEnd = `(?:[ \t]+|$)`

// quotes are the marks that text stands between.
const quotes = `"“”„«»`

// number is a length as quilters write it: 3 1/2, 3-1/2, 3½, 3.5.
const number = `(?:[0-9]+[ \t-]+)?[0-9]+[/⁄][0-9]+|(?:[0-9]+[ \t]*)?[¼½¾⅐⅑⅒⅓⅔⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞]|[0-9]+(?:[.,][0-9]+)?`

func units() []string {
	words := measure.UnitWords()
	return append(words, "in.", "yd.")
}

// optionWords are the words with which statements go on, and those of lengths and of the fabrics of roles, in the order of
// the alphabet.
func optionWords() []string {
	words := []string{"cut", "finished", "reversed", "turned"}
	for _, s := range layout.Statements() {
		for _, o := range s.Options {
			words = append(words, o.Word)
		}
	}
	slices.Sort(words)
	return slices.Compact(words)
}

// roles is every role of every kind, each once.
func roles() []string {
	var list []string
	seen := map[string]bool{}
	for _, k := range blocks.Kinds() {
		for _, r := range k.Roles {
			for _, word := range []string{r.Name, r.Former} { // older layouts are colored too
				if word != "" && !seen[word] {
					seen[word] = true
					list = append(list, word)
				}
			}
		}
	}
	return list
}

// either is an expression for one word of several.
func either(words []string) string {
	quoted := make([]string, len(words))
	for i, w := range words {
		quoted[i] = regexp.QuoteMeta(w)
	}
	return "(?:" + strings.Join(quoted, "|") + ")"
}

// scopes are the scopes of the groups of an expression, from the first on; "" for none.
func scopes(names ...string) map[string]Capture {
	m := map[string]Capture{}
	for i, name := range names {
		if name != "" {
			m[string(rune('1'+i))] = Capture{name}
		}
	}
	return m
}

// JSON is the grammar as editors read it.
func (g Grammar) JSON() []byte {
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	if err := e.Encode(g); err != nil {
		panic(err) // strings cannot fail to be written
	}
	return b.Bytes()
}
