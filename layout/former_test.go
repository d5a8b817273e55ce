package layout_test

import (
	"strings"
	"testing"

	"eighthturn/layout"
)

// todays are the words of the language that older layouts have others for.
func todays() map[string]string {
	return map[string]string{"reversed": "turned", "background": "ground"}
}

// aged is a text with the words of older layouts, and whether there were any.
func aged(text string) (string, bool) {
	old := text
	for now, then := range todays() {
		old = strings.ReplaceAll(strings.ReplaceAll(old, now+" ", then+" "), now+"\t", then+"\t")
	}
	return old, old != text
}

// TestFormerWords: a layout of older words reads as one of today's does, without a message of its own; tidied it keeps them,
// and made modern it is today's layout to the letter.
func TestFormerWords(t *testing.T) {
	count := 0
	for _, text := range []string{
		"strip 4\nfabric navy #1f3350\nfabric cream #f4ead7\nstrip-set glow navy 2 1/4 cream rest\nwebs glow / reversed glow\nblock F floating background cream\ngrid\n  F F\n  F F\n",
		"strip 4\nfabric navy #1f3350\nfabric cream #f4ead7\nstrip-set glow navy 2 1/4 cream rest\nblock W web wedges glow reversed glow kites cream\nblock F floating-star kites navy wedges reversed glow background cream # no ground here\nblock G like F background navy\ngrid\n  W F\n  G W\n",
		"strip 4\nfabric navy #1f3350\nfabric cream #f4ead7\nstrip-set glow navy 2 1/4 cream rest\nwebs\n  reversed glow\nblock W web wedges navy kites cream\ngrid\n  W W\n  W W\n",
	} {
		modern, _ := layout.Tidy(text)
		old, any := aged(strings.Replace(modern, "no ground here", "no ground, turned, here", 1))
		if !any {
			t.Errorf("nothing is older in %q", text)
		}
		now, _, said := layout.Read(modern)
		then, _, saidThen := layout.Read(old)
		if now == nil || then == nil || len(said) != len(saidThen) {
			t.Fatalf("%q: %v, and %v", old, said, saidThen)
		}
		if fills(now) != fills(then) {
			t.Errorf("%q says %s, and with older words %s", modern, fills(now), fills(then))
		}
		kept, _ := layout.Tidy(old)
		if got, _ := aged(kept); got != kept {
			t.Errorf("tidying wrote today's words: %q", kept)
		}
		fresh, _ := layout.Modernize(old)
		if want := strings.Replace(modern, "no ground here", "no ground, turned, here", 1); fresh != want {
			t.Errorf("made modern: %q, expected %q", fresh, want)
		}
		if again, _ := layout.Modernize(fresh); again != fresh {
			t.Errorf("made modern twice: %q", again)
		}
		count++
	}
	if count == 0 {
		t.Error("no layout was asked")
	}
}

// fills is what every role and web of a design is given, without the places.
func fills(d *layout.Design) string {
	var b strings.Builder
	say := func(f layout.Fill) {
		f.Span = layout.Span{}
		for _, n := range []int{f.Fabric, f.Set, f.Pool} {
			b.WriteByte(byte('a' + n + 1))
		}
		if f.Reversed {
			b.WriteByte('r')
		}
	}
	for _, f := range d.Webs {
		say(f)
	}
	for _, f := range d.WebTable {
		say(f)
	}
	for i := range d.Blocks {
		for _, list := range d.Blocks[i].Fills {
			for _, f := range list {
				say(f)
			}
			b.WriteByte('|')
		}
	}
	return b.String()
}
