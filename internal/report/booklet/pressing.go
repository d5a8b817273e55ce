package booklet

import (
	"slices"

	"eighthturn/internal/document"
	"eighthturn/internal/plan/sewing"
)

// pressing says which way the allowances of a block lie, where no step has said it.
func (b *book) pressing(n int) {
	k := &b.Sewing.Blocks[n]
	items := b.pressItems(n)
	like := b.sewnLike(n)
	if len(items) == 0 || like < 0 && pressedAtOnce(k, items) || like >= 0 && b.pressedLike(n, like) {
		return
	}
	b.keep(heading(2, "Pressing"), document.List{Items: items})
}

// pressedAtOnce says whether all that there is to press stands with a block's one step.
func pressedAtOnce(k *sewing.Block, items []document.Item) bool {
	return len(k.Steps) == 1 && len(items) == 1
}

// pressedLike says whether a block is pressed as another is, with the same words.
func (b *book) pressedLike(n, like int) bool {
	return slices.EqualFunc(b.pressItems(n), b.pressItems(like), func(a, b document.Item) bool { return a.Text.String() == b.Text.String() })
}

// pressItems is the pressing of a block, sentence by sentence.
func (b *book) pressItems(n int) []document.Item {
	k := &b.Sewing.Blocks[n]
	var items []document.Item
	say := func(text string) { items = append(items, item(document.Plain(text))) }
	differ := false
	for group := range k.Ways {
		ways := b.words().PressLines(k, group)
		differ = differ || len(ways) > 1
		for _, way := range ways {
			say(way.Text)
		}
	}
	if differ {
		say("Pressed so, the allowances of neighbours lie opposite ways and nest.")
	}
	for i := range k.Rounds {
		text := b.words().RoundLine(&k.Rounds[i])
		if k.Rounds[i].Turns {
			text += " To turn them, open the stitches of the last seam within its allowances, and press all flat."
		}
		say(text)
	}
	if slices.ContainsFunc(k.Rounds, func(r sewing.Round) bool { return r.Turns }) {
		say("Clockwise is as the right side shows it. On the wrong side, where you press, it is anticlockwise; the arrows in the pictures show it as you see it there.")
	}
	return items
}
