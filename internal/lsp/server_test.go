package lsp

import (
	"encoding/json"
	"errors"
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"
	"time"
	"unicode/utf16"

	"github.com/sourcegraph/jsonrpc2"

	"eighthturn/internal/quilttest/invent"
	"eighthturn/layout"
	"eighthturn/samples"
)

// small is a layout without fault.
const small = `strip 4
fabric cream #f4ead7
fabric dusk rebeccapurple "night 🌙 sky" # a comment
strip-set shore dusk 1 3/4 cream rest
scraps blues dusk cream
block W web wedges shore kites cream
block P like W kites dusk
grid
  W W P
  W P:ne W
  W W W
border 2 dusk
`

// session is an editor that talks to a server without a stream.
type session struct {
	t testing.TB
	*server
	said map[string][]diagnostic // by document
}

func begin(t testing.TB, encodings ...string) *session {
	s := &session{t, newServer("test"), map[string][]diagnostic{}}
	s.notify = func(_ string, params any) {
		p := params.(published)
		s.said[p.URI] = p.Diagnostics
	}
	s.ask("initialize", object{"capabilities": object{"general": object{"positionEncodings": encodings}}}, nil)
	return s
}

// ask sends a request and reads its answer as an editor would.
func (s *session) ask(name string, params, answer any) {
	s.t.Helper()
	if err := s.try(name, params, answer); err != nil {
		s.t.Fatalf("%s: %v", name, err)
	}
}

func (s *session) try(name string, params, answer any) error {
	s.t.Helper()
	raw, err := json.Marshal(params)
	if err != nil {
		s.t.Fatal(err)
	}
	got, err := s.answer(name, raw)
	if err != nil || answer == nil {
		return err
	}
	if raw, err = json.Marshal(got); err != nil {
		s.t.Fatal(err)
	}
	if err := json.Unmarshal(raw, answer); err != nil {
		s.t.Fatalf("%s: %s", raw, err)
	}
	return nil
}

const uri = "untitled:a.quilt"

func (s *session) opens(text string) {
	s.ask("textDocument/didOpen", object{"textDocument": object{"uri": uri, "version": 1, "text": text}}, nil)
}

// here is the parameters for the place of a mark, ^, and the text without it.
func here(marked string) (text string, at object) {
	before, after, found := strings.Cut(marked, "^")
	if !found {
		panic("no place is marked")
	}
	line := strings.Count(before, "\n")
	last := before[strings.LastIndexByte(before, '\n')+1:]
	return before + after, object{"textDocument": object{"uri": uri}, "position": position{line, len(utf16.Encode([]rune(last)))}}
}

// with is a text with one stretch changed.
func with(text, old, now string) string {
	if strings.Count(text, old) != 1 {
		panic("it does not stand there once: " + old)
	}
	return strings.Replace(text, old, now, 1)
}

func TestDiagnosticsAndActions(t *testing.T) {
	s := begin(t)
	wrong := with(small, "kites cream", "kites crem")
	s.opens(wrong)
	_, _, faults := layout.Read(wrong)
	if len(s.said[uri]) != len(faults) || len(faults) == 0 {
		t.Fatalf("%v, want %v", s.said[uri], faults)
	}
	for i, f := range faults {
		if got := s.said[uri][i]; got.Message != f.Message+"\n"+f.Hint && got.Message != f.Message {
			t.Errorf("says %q, want %q and %q", got.Message, f.Message, f.Hint)
		}
	}
	var actions []codeAction
	s.ask("textDocument/codeAction", object{"textDocument": object{"uri": uri}, "range": s.said[uri][0].Range, "context": object{}}, &actions)
	if len(actions) != 1 || actions[0].Title != `did you mean "cream"?` {
		t.Fatalf("%+v", actions)
	}
	if got := apply(newText(wrong, false), actions[0].Edit.Changes[uri]); got != small {
		t.Errorf("typed, the hint gives %q", got)
	}
	s.ask("textDocument/didClose", object{"textDocument": object{"uri": uri}}, nil)
	if len(s.said[uri]) != 0 {
		t.Error("closed, and still at fault")
	}
}

// apply makes edits that do not touch each other.
func apply(t text, edits []textEdit) string {
	var list []layout.Edit
	for _, e := range edits {
		list = append(list, layout.Edit{Span: layout.Span{Start: t.offset(e.Range.Start), End: t.offset(e.Range.End)}, Text: e.NewText})
	}
	return layout.Apply(t.string, list)
}

func TestHover(t *testing.T) {
	for marked, want := range map[string][]string{
		with(small, "kites cream", "kites cr^eam"):           {"**cream** #f4ead7, value L* 93", "kites of block W", "strip set shore", "pool blues"},
		with(small, "strip 4", "st^rip 4"):                   {"strip length", "Blocks finish at", "For example `strip 4`"},
		with(small, "wedges shore", "wedges sho^re"):         {"strip-set shore dusk 1 3/4 cream rest", "wedges of block W"},
		with(small, "P:ne", "P^:ne"):                         {"block P like W kites dusk", "2 times"},
		with(small, "W web", "W we^b"):                       {"`wedges`", "`kites`"},
		with(small, "kites cream", "ki^tes cream"):           {"`kites`: "},
		with(small, "blues dusk cream", "blu^es dusk cream"): {"scraps blues dusk cream"},
		with(small, "a comment", "a comm^ent"):               nil,
	} {
		s := begin(t)
		text, at := here(marked)
		s.opens(text)
		var got *hover
		s.ask("textDocument/hover", at, &got)
		if (got == nil) != (want == nil) {
			t.Errorf("%q: %v", marked, got)
			continue
		}
		for _, w := range want {
			if !strings.Contains(strings.ToLower(got.Contents.Value), strings.ToLower(w)) {
				t.Errorf("%q says %q, without %q", marked, got.Contents.Value, w)
			}
		}
	}
}

func TestCompletion(t *testing.T) {
	for marked, want := range map[string]string{
		with(small, "strip 4", "str^"):                                                   "strip strip-set grid border -W -dusk",
		with(small, "block P like W kites dusk", "block P ^"):                            "web ring like -dusk -kites",
		with(small, "like W kites", "like ^ kites"):                                      "W P -web",
		with(small, "W web wedges shore kites cream", "W web wedges shore k^"):           "kites dusk shore blues reversed -wedges",
		with(small, "  W W W\n", "  W ^\n"):                                              "W P . -dusk",
		with(small, "P:ne", "P:^"):                                                       "nw ne se sw -W",
		with(small, "fabric cream #f4ead7", "fabric cream ^"):                            "navy beige swatch -web",
		with(small, "border 2 dusk", "border 2 dusk ^"):                                  "corners lengthwise cut",
		with(small, "strip 4\n", "strip 4\npalette ^\n"):                                 "tidewater",
		with(small, "strip 4\n", "strip 4\nunits ^\n"):                                   "inches cm -dusk",
		with(small, "blues dusk cream", "blues dusk by ^"):                               "piece block web -dusk",
		with(small, "strip 4\n", "strip 4\ncolorway winter ^\n"):                         "dusk cream -navy -web",
		with(small, "strip 4\n", "strip 4\nsize twin ^\n"):                               "across down strip side border -navy",
		with(small, "strip 4\n", "strip 4\nsize twin border ^\n"):                        "none",
		with(small, "strip 4\n", "strip 4\ncolorway winter dusk ^\n"):                    "cream navy -web",
		with(small, "strip 4\n", "strip 4\nswap ^\n"):                                    "row -column -with -number",
		with(small, "strip 4\n", "strip 4\nswap row ^\n"):                                "-row -column -number",
		with(small, "strip 4\n", "strip 4\nswap row 1 column 2 ^\n"):                     "with -row",
		with(small, "strip 4\n", "strip 4\nswap row 1 column 2 with row 2 column 1 ^\n"): "-row -with",
		with(small, "strip 4\n", "strip 4\non-hand ^\n"):                                 "wedges kites -dusk",
		with(small, "strip 4\n", "strip 4\non-hand wedges ^\n"):                          "shore dusk reversed -strip",
		with(small, "strip 4\n", "strip 4\ncolourway winter dusk navy c^\n"):             "cream -navy",
	} {
		s := begin(t)
		text, at := here(marked)
		s.opens(text)
		var items []completionItem
		s.ask("textDocument/completion", at, &items)
		has := map[string]bool{}
		for _, i := range items {
			has[i.Label] = true
		}
		for _, w := range strings.Fields(want) {
			if bare, not := strings.CutPrefix(w, "-"); has[bare] == not {
				t.Errorf("%q: %s is offered: %v", marked, bare, has[bare])
			}
		}
	}
}

func TestNames(t *testing.T) {
	s := begin(t)
	text, at := here(with(small, "kites cream", "kites cr^eam"))
	s.opens(text)
	var defined location
	s.ask("textDocument/definition", at, &defined)
	if defined.Range != (lspRange{position{1, 7}, position{1, 12}}) {
		t.Errorf("defined at %v", defined.Range)
	}
	var places []location
	s.ask("textDocument/references", at, &places)
	if len(places) != 3 {
		t.Errorf("used at %v", places)
	}
	at["newName"] = "chalk"
	var edit workspaceEdit
	s.ask("textDocument/rename", at, &edit)
	if got := apply(newText(text, false), edit.Changes[uri]); got != strings.ReplaceAll(small, "cream", "chalk") {
		t.Errorf("renamed: %q", got)
	}
	for _, taken := range []string{"dusk", "DUSK", "border", "2x", "a b", "", "rest", strings.Repeat("x", 61)} {
		at["newName"] = taken
		if err := s.try("textDocument/rename", at, nil); err == nil {
			t.Errorf("%q is taken for a name", taken)
		}
	}
}

// TestRenamedLayoutsAreTheSame renames every name of layouts and wants the same quilt, with the same messages.
func TestRenamedLayoutsAreTheSame(t *testing.T) {
	texts := []string{small}
	for seed := range uint64(25) {
		texts = append(texts, invent.Layout(seed))
	}
	names := 0
	for _, text := range texts {
		s := begin(t)
		s.opens(text)
		before := s.open[uri].read()
		seen := map[string]bool{}
		for _, m := range before.mentions() {
			key := fmt.Sprint(m.Scope) + m.Key()
			if m.Defines == "" || seen[key] {
				continue
			}
			seen[key] = true
			names++
			p := &placed{Document: documentID{uri}, Position: s.open[uri].text.position(m.Span.Start), NewName: "Zz9"}
			edit, err := s.open[uri].rename(p)
			if err != nil {
				t.Errorf("%q: %v", m.Name(), err)
				continue
			}
			renamed := apply(s.open[uri].text, edit.(workspaceEdit).Changes[uri])
			after := layout.Inspect(renamed, nil)
			if (after.Design == nil) != (before.Design == nil) || len(after.Faults) != len(layout.Inspect(text, nil).Faults) {
				t.Errorf("%q renamed in\n%s\n%v", m.Name(), renamed, after.Faults)
			}
		}
	}
	if names < 100 {
		t.Errorf("only %d names", names)
	}
}

func TestColorsSymbolsFoldsTokens(t *testing.T) {
	s := begin(t)
	s.opens(small)
	at := object{"textDocument": object{"uri": uri}}
	var colors []colorInformation
	s.ask("textDocument/documentColor", at, &colors)
	if len(colors) != 2 || colors[1].Range != (lspRange{position{2, 12}, position{2, 25}}) || colors[1].Color.Red != 0x66/255.0 {
		t.Errorf("colors: %v", colors)
	}
	s.opens(small + "colorway winter cream #123456 dusk cream\n")
	s.ask("textDocument/documentColor", at, &colors)
	if len(colors) != 3 || colors[2].Color.Blue != 0x56/255.0 {
		t.Errorf("colors with those of a colorway: %v", colors)
	}
	s.opens(small)
	var written []colorPresentation
	s.ask("textDocument/colorPresentation", object{"textDocument": object{"uri": uri}, "range": colors[0].Range, "color": color{1, 0.5, 0, 1}}, &written)
	if len(written) != 1 || written[0].Label != "#ff8000" {
		t.Errorf("written: %v", written)
	}
	var folds []foldingRange
	s.ask("textDocument/foldingRange", at, &folds)
	if len(folds) != 1 || folds[0] != (foldingRange{StartLine: 7, EndLine: 10}) {
		t.Errorf("folds: %v", folds)
	}
	var symbols []documentSymbol
	s.ask("textDocument/documentSymbol", at, &symbols)
	var names []string
	for _, n := range symbols {
		names = append(names, n.Name)
	}
	if got := strings.Join(names, " "); got != "cream dusk shore blues W P grid" {
		t.Errorf("symbols: %s", got)
	}
	var tokens semanticTokens
	s.ask("textDocument/semanticTokens/full", at, &tokens)
	if got := words(small, tokens.Data); !strings.HasPrefix(got, "keyword strip, number 4, keyword fabric, variable cream, number #f4ead7, keyword fabric, variable dusk") ||
		!strings.Contains(got, `string "night 🌙 sky", comment # a comment`) || !strings.Contains(got, "class P, property :ne") {
		t.Errorf("tokens: %s", got)
	}
	var help signatureHelp
	text, place := here(with(small, "border 2 dusk", "border 2 ^"))
	s.opens(text)
	s.ask("textDocument/signatureHelp", place, &help)
	if len(help.Signatures) != 1 || help.Signatures[0].Parameters[help.ActiveParameter].Label != "fabric" {
		t.Errorf("signature: %+v", help)
	}
}

// words is semantic tokens in words.
func words(s string, data []int) string {
	t := newText(s, false)
	var list []string
	line, character := 0, 0
	for ; len(data) >= 5; data = data[5:] {
		if data[0] > 0 {
			character = 0
		}
		line, character = line+data[0], character+data[1]
		start, end := t.offset(position{line, character}), t.offset(position{line, character + data[2]})
		list = append(list, tokenTypes()[data[3]]+" "+s[start:end])
	}
	return strings.Join(list, ", ")
}

// TestFormatting: what an editor makes of the edits is what tidy writes.
func TestFormatting(t *testing.T) {
	for _, text := range []string{small, with(small, "strip 4", "strip    4"), strings.ReplaceAll(small, "\n", "\r\n"), small + "\n\n", strings.TrimRight(small, "\n"), with(small, "strip 4", "stripp 4")} {
		s := begin(t)
		s.opens(text)
		var edits []textEdit
		s.ask("textDocument/formatting", object{"textDocument": object{"uri": uri}}, &edits)
		want, _ := layout.Tidy(text)
		if got := apply(newText(text, false), edits); got != want {
			t.Errorf("%q\nbecomes %q\nwant %q", text, got, want)
		}
	}
}

// TestProtocolErrors sends what must not be sent, and what nobody knows.
func TestProtocolErrors(t *testing.T) {
	s := &session{t, newServer("test"), nil}
	at := object{"textDocument": object{"uri": uri}}
	code := func(name string, params any, want int64) {
		t.Helper()
		if got := codeOf(s.try(name, params, nil)); got != want {
			t.Errorf("%s: %v, want %v", name, got, want)
		}
	}
	code("textDocument/hover", at, notInitialized)
	s.ask("initialize", object{}, nil)
	code("initialize", object{}, jsonrpc2.CodeInvalidRequest)
	code("textDocument/hover", at, jsonrpc2.CodeInvalidParams)
	code("textDocument/didChange", at, jsonrpc2.CodeInvalidParams)
	code("textDocument/rename", at, jsonrpc2.CodeInvalidParams)
	code("textDocument/hover", "x", jsonrpc2.CodeInvalidParams)
	code("textDocument/fly", at, jsonrpc2.CodeMethodNotFound)
	s.notify = func(string, any) {}
	s.opens(small)
	code("textDocument/didChange", object{"textDocument": object{"uri": uri}, "contentChanges": []object{{"range": lspRange{position{3, 0}, position{1, 0}}, "text": "x"}}}, jsonrpc2.CodeInvalidParams)
	s.ask("shutdown", nil, nil)
	code("textDocument/hover", at, jsonrpc2.CodeInvalidRequest)
}

// codeOf is the number of an error of the protocol, 0 for none.
func codeOf(err error) int64 {
	var e *jsonrpc2.Error
	if errors.As(err, &e) {
		return e.Code
	}
	return 0
}

// TestTextsStayEqual makes edits at random in the server's text and in a list of UTF-16 code units, as editors hold it.
func TestTextsStayEqual(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 5))
	stock := []string{"\n", "\r\n", "\r", "a", "é", "é", "🌙", "👩‍👩‍👧", "\u2028", "\t", "fabric dusk #1f3350", "\ufeff", "", "中文"}
	for _, bytes := range []bool{false, true} {
		mine, theirs := newText(small, bytes), small
		for n := range 10_000 {
			var change contentChange
			for range r.IntN(3) {
				change.Text += stock[r.IntN(len(stock))]
			}
			start, from := anywhere(r, theirs, bytes)
			end, to := anywhere(r, theirs, bytes)
			if to < from {
				start, end, from, to = end, start, to, from
			}
			if to-from > 40 {
				end, to = start, from
			}
			change.Range = &lspRange{start, end}
			theirs = theirs[:from] + change.Text + theirs[to:]
			var ok bool
			if mine, ok = mine.changed(change); !ok || mine.string != theirs {
				t.Fatalf("edit %d, %v: %q, want %q", n, change, mine.string, theirs)
			}
			if at, offset := anywhere(r, theirs, bytes); mine.offset(at) != offset || mine.position(offset) != at {
				t.Fatalf("edit %d: %v is byte %d and %v, want %d", n, at, mine.offset(at), mine.position(mine.offset(at)), offset)
			}
			if len(theirs) > 4000 {
				mine, theirs = newText(small, bytes), small
			}
		}
	}
}

// anywhere is a place between two characters, counted as the protocol says it: line ends are \n, \r\n and \r.
func anywhere(r *rand.Rand, s string, bytes bool) (position, int) {
	places := []position{{}}
	offsets := []int{0}
	line, character := 0, 0
	for i, c := range s {
		size := len(string(c))
		switch {
		case c == '\r' && i+1 < len(s) && s[i+1] == '\n':
			continue // no place within a line end
		case c == '\n' || c == '\r':
			line, character = line+1, 0
		case bytes:
			character += size
		default:
			character += len(utf16.Encode([]rune{c}))
		}
		places, offsets = append(places, position{line, character}), append(offsets, i+size)
	}
	n := r.IntN(len(places))
	return places[n], offsets[n]
}

// TestSamplesAnswer asks everything at places of the samples, whole and cut off: no request fails.
func TestSamplesAnswer(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	for _, sample := range samples.All() {
		text := sample.Text
		for range 3 {
			s := begin(t)
			s.opens(text[:r.IntN(len(text))])
			s.everything(position{r.IntN(60), r.IntN(60)}, position{r.IntN(60), r.IntN(60)})
		}
	}
}

// everything asks every request about places of a document.
func (s *session) everything(from, to position) {
	for name := range methods() {
		if !strings.HasPrefix(name, "textDocument/") || strings.HasPrefix(name, "textDocument/did") {
			continue
		}
		err := s.try(name, object{"textDocument": object{"uri": uri}, "position": from, "range": lspRange{from, to}, "newName": "Zz9"}, nil)
		if err != nil && name != "textDocument/rename" {
			s.t.Errorf("%s at %v: %v", name, from, err)
		}
	}
}

// FuzzRequests asks everything of any text, at any place, after any change.
func FuzzRequests(f *testing.F) {
	f.Add(small, 3, 4, 5, 6, "x\r\n🌙")
	f.Add("webs\n  .\n", 1, 2, -1, 1<<30, "")
	f.Add("fabric \"\ngrid\n W:", 2, 3, 0, 0, "\"")
	f.Fuzz(func(t *testing.T, text string, line, character, toLine, toCharacter int, typed string) {
		if len(text) > 600 { // what is longer costs more and says no more
			return
		}
		s := begin(t, []string{"utf-16", "utf-8"}[len(text)%2])
		s.opens(text)
		from, to := position{line, character}, position{toLine, toCharacter}
		s.everything(from, to)
		_ = s.try("textDocument/didChange", object{"textDocument": object{"uri": uri, "version": 2}, "contentChanges": []object{{"range": lspRange{from, to}, "text": typed}}}, nil)
		s.everything(to, from)
	})
}

// BenchmarkKeystroke types a letter into a grid of 200 by 200 blocks and asks what an editor then asks: tokens, and words that may
// stand there. Beside it, as the reference, stands reading the same text as check does, which waits for a pause.
func BenchmarkKeystroke(b *testing.B) {
	text := "side 6\nfabric cream #f4ead7\nfabric dusk #1f3350\nblock P plain piece cream\nblock Q plain piece dusk\ngrid\n" + strings.Repeat("  "+strings.Repeat("P Q ", 100)+"\n", 200)
	b.Run("reference", func(b *testing.B) {
		for b.Loop() {
			layout.Inspect(text, nil)
		}
	})
	for name, typed := range map[string]string{"right": "1", "wrong": "x"} {
		b.Run(name, func(b *testing.B) {
			s := begin(b)
			s.pause = time.Hour
			s.opens(text)
			document := object{"uri": uri}
			var tokens semanticTokens
			s.ask("textDocument/semanticTokens/full", object{"textDocument": document}, &tokens)
			id := tokens.ID
			for i := 0; b.Loop(); i++ {
				s.ask("textDocument/didChange", object{"textDocument": object{"uri": uri, "version": i}, "contentChanges": []object{{"range": lspRange{position{0, 5}, position{0, 6}}, "text": []string{typed, "6"}[i%2]}}}, nil)
				var changed changedTokens
				s.ask("textDocument/semanticTokens/full/delta", object{"textDocument": document, "previousResultId": id}, &changed)
				s.ask("textDocument/completion", object{"textDocument": document, "position": position{0, 6}}, nil)
				id = changed.ID
			}
		})
	}
}
