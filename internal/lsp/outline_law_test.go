package lsp

import (
	"encoding/json"
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"
	"time"

	"eighthturn/internal/quilttest/invent"
	"eighthturn/samples"
)

// TestOutlineIsEnough: whatever is asked while somebody types has the same answer before the text is read as a whole.
func TestOutlineIsEnough(t *testing.T) {
	texts := []string{small}
	for _, s := range samples.All() {
		texts = append(texts, s.Text)
	}
	for seed := range uint64(12) {
		texts = append(texts, invent.Layout(seed))
	}
	asked := 0
	for i, text := range texts {
		text = text[:len(text)-i*len(text)/(3*len(texts))] // some are cut off
		answers := func(whole bool) []string {
			s := begin(t)
			s.pause = time.Hour
			s.opens(text)
			if !whole {
				s.open[uri].become(s.open[uri].text, 2)
			}
			var list []string
			for _, name := range []string{"documentColor", "foldingRange", "documentSymbol", "semanticTokens/full", "completion", "references", "definition", "prepareRename", "documentHighlight"} {
				got, err := s.answer("textDocument/"+name, json.RawMessage(fmt.Sprintf(`{"textDocument":{"uri":%q},"position":{"line":%d,"character":8}}`, uri, 3+i%9)))
				said, _ := json.Marshal(got)
				list = append(list, fmt.Sprint(name, " ", string(said), err))
			}
			if (s.open[uri].known != nil) != whole && !strings.Contains(list[0], "#") {
				t.Errorf("layout %d was read: %v", i, !whole)
			}
			return list
		}
		whole, typed := answers(true), answers(false)
		for n := range whole {
			asked++
			if whole[n] != typed[n] {
				t.Errorf("layout %d:\n%.300s\nis, before it is read as a whole,\n%.300s", i, whole[n], typed[n])
			}
		}
	}
	if asked < 150 {
		t.Errorf("only %d answers", asked)
	}
}

// TestTokensByTheirChange types at random: the tokens that an editor makes of the changes are those that it would get whole.
func TestTokensByTheirChange(t *testing.T) {
	r := rand.New(rand.NewPCG(8, 1))
	s := begin(t)
	s.opens(small)
	var all semanticTokens
	at := object{"textDocument": object{"uri": uri}}
	s.ask("textDocument/semanticTokens/full", at, &all)
	id, mine, few := all.ID, all.Data, 0
	for n := range 300 {
		text := s.open[uri].text.string
		start, from := anywhere(r, text, false)
		end, to := anywhere(r, text, false)
		if to < from || to-from > 6 {
			end = start
		}
		s.ask("textDocument/didChange", object{"textDocument": object{"uri": uri, "version": n}, "contentChanges": []object{{"range": lspRange{start, end}, "text": []string{"", "x", "\n", " W", "dusk "}[r.IntN(5)]}}}, nil)
		var changed struct {
			changedTokens
			Data []int `json:"data"`
		}
		s.ask("textDocument/semanticTokens/full/delta", object{"textDocument": object{"uri": uri}, "previousResultId": id}, &changed)
		for _, e := range changed.Edits {
			mine = slices.Concat(mine[:e.Start], e.Data, mine[e.Start+e.Delete:])
			if len(e.Data) < len(mine)/2 {
				few++
			}
		}
		id = changed.ID
		if want := s.open[uri].tokensOf(0, 1<<30).Data; !slices.Equal(mine, want) || changed.Data != nil {
			t.Fatalf("change %d: %v, want %v", n, mine, want)
		}
	}
	if few < 100 {
		t.Errorf("only %d changes were small", few)
	}
	s.ask("textDocument/semanticTokens/full/delta", object{"textDocument": object{"uri": uri}, "previousResultId": "none"}, &all)
	if !slices.Equal(all.Data, mine) {
		t.Error("who has other tokens does not get all")
	}
}
