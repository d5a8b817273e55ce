package layout_test

import "strings"

// gridCases are faults and warnings of the grid and of what it shows when it is laid.
func gridCases() []testCase {
	return []testCase{
		{
			"a row too short", swap(small, "W W P\n  W P W\n", "⟨W W P⟩\n  ⟦W P⟧\n"), refused,
			says("row 2 has 2 blocks, but row 1 has 3", "rows have one length: write . where nothing stands", "row 1"),
		},
		{
			"a row too long", swap(small, "W W P\n  W P W\n", "⟨W W P⟩\n  ⟦W P W W⟧\n"), refused,
			says("row 2 has 4 blocks, but row 1 has 3", "rows have one length: write . where nothing stands", "row 1"),
		},
		{
			"two rows too short", swap(small, "W W P\n  W P W\n", "⟨⟨W W P⟩⟩\n  ⟦W P⟧\n", "W W\n", "W W\n  ⟦W⟧\n"), refused,
			[]message{
				say("row 2 has 2 blocks, but row 1 has 3", "rows have one length: write . where nothing stands", "row 1"),
				say("row 4 has 1 block, but row 1 has 3", "rows have one length: write . where nothing stands", "row 1"),
			},
		},
		{
			"glued labels", swap(small, "W P W\n", "⟦WPW⟧\n"), refused,
			says("these labels have no blanks between them", "put blanks between the labels: W P W"),
		},
		{
			"glued labels in every row", swap(small, "W W P\n  W P W\n  W W W\n", "⟦WWP⟧\n  WPW\n  WWW\n"), refused,
			says("these labels have no blanks between them", "put blanks between the labels: W W P"),
		},
		{
			"a label unknown", swap(small, "P W\n", "⟦Q⟧ W\n"), refused,
			says(`no block is called "Q"`, "blocks are: W, P"),
		},
		{
			"a label unknown in many places", swap(small, "W W P\n  W P W\n", "⟦Q⟧ W P\n  W Q Q\n"), refused,
			says(`no block is called "Q"`, "blocks are: W, P"),
		},
		{
			"a label near another", swap(small, "P plain piece cream\n", "plain plain piece cream\n", "P\n  W P W\n", "plain\n  W ⟦plian⟧ W\n"), refused,
			says(`no block is called "plian"`, `did you mean "plain"?`),
		},
		{
			"no blocks at all", "strip 4\nfabric cream #f4ead7\nfabric navy #1f3350\ngrid\n  ⟦W⟧ W ⟦P⟧\n  W P W\n  W W W\n", refused,
			[]message{
				say(`no block is called "W"`, "define it: block W web wedges navy kites cream"),
				say(`no block is called "P"`, "define it: block P web wedges navy kites cream"),
			},
		},
		{
			"a turn of one letter", swap(small, "W P W\n", "W⟦:n⟧ P W\n"), refused,
			says(`":n" is not a turn`, "a turn is :nw, :ne, :se or :sw"),
		},
		{
			"a turn in words", swap(small, "W P W\n", "W⟦:left⟧ P W\n"), refused,
			says(`":left" is not a turn`, "a turn is :nw, :ne, :se or :sw"),
		},
		{
			"a turn of nothing", swap(small, "W P W\n", "W⟦:⟧ P W\n"), refused,
			says(`":" is not a turn`, "a turn is :nw, :ne, :se or :sw"),
		},
		{
			"a square turned", swap(small, "P W\n", "P⟦:nw⟧ W\n"), refused,
			says("plain blocks are not rotated", "leave it out"),
		},
		{
			"nothing turned", swap(small, "P W\n", ".⟦:nw⟧ W\n"), refused,
			says("there is nothing to turn at a .", "leave it out"),
		},
		{
			"a label without its name", swap(small, "P W\n", "⟦:nw⟧ W\n"), refused,
			says(`there is no label before the turn ":nw"`, "write the label in front of it"),
		},
		{
			"no corner for the border", swap(small, "W W P\n", "⟦.⟧ W P\n", "W W\n", "W W\nborder 2 navy\n"), warned,
			says("warning: the border has nothing to be sewn to at row 1, column 1", "write a block there, or leave the border out"),
		},
		{
			"a hole", holed("  W P P\n  P ⟦.⟧ P\n  P P P\n"), warned,
			says("warning: the quilt has a hole at row 2, column 2, and the blocks around it cannot be sewn row by row", "write a block there: a plain one will do"),
		},
		{
			"a hole that sashes close", holed("  W P P\n  P P P\n  P P ⟦.⟧\nsash 1 navy around\n"), warned,
			says("warning: the quilt has a hole at row 3, column 3, and the blocks around it cannot be sewn row by row", "write a block there: a plain one will do"),
		},
		{
			"a hole behind the border", holed("  W P P\n  P ⟦.⟧ P\n  P P P\nborder 2 navy\n"), warned,
			says("warning: the quilt has a hole at row 2, column 2, and the blocks around it cannot be sewn row by row", "write a block there: a plain one will do"),
		},
		{
			"a web that cannot close", swap(small, "P plain piece cream\n", "F floating wedges navy background cream\n", "W W P\n  W P W\n  W W W\n", "F F ⟦F⟧\n  F W F\n"), warned,
			says("warning: the webs at row 1, column 3 and 1 more place cannot be complete, since both their ends lie on the quilt's edge", "even numbers of blocks across and down avoid it, or a plain block there"),
		},
		{
			"webs that cannot close", swap(small, "P plain piece cream\n", "F floating wedges navy background cream\n", "W W P\n  W P W\n  W W W\n", "F F F F ⟦F⟧\n  F W W W F\n  F F F F F\n"), warned,
			says("warning: the webs at row 1, column 5 and 1 more place cannot be complete, since both their ends lie on the quilt's edge", "even numbers of blocks across and down avoid it, or a plain block there"),
		},
		{
			"a star that cannot close", "strip 4\nfabric cream #f4ead7\nfabric navy #1f3350\nblock S floating-star wedges navy kites cream background navy\ngrid\n  ⟦S⟧ S\n", warned,
			says("warning: the stars at row 1, column 1 and 1 more place cannot be complete, since both their ends lie on the quilt's edge", "even numbers of blocks across and down avoid it, or a plain block there"),
		},
		{
			"a web of two blocks", swap(small, "P plain piece cream\n", "X web wedges cream kites navy\n", "W W P\n  W P W\n  W W W\n", "⟦W⟧ X\n  X W\n"), warned,
			says("warning: the web between rows 1 and 2, columns 1 and 2 mixes 4 wedges of navy and 4 of cream", "webs gives every web its fabric, in place of the blocks: for example webs navy"),
		},
		{
			"webs of two blocks", swap(small, "P plain piece cream\n", "X web wedges cream kites navy\n", "W W P\n  W P W\n  W W W\n", "⟦W⟧ X W X\n  X W X W\n  W X W X\n"), warned,
			says("warning: the web between rows 1 and 2, columns 1 and 2 mixes 4 wedges of navy and 4 of cream, as do 2 other webs", "webs gives every web its fabric, in place of the blocks: for example webs navy"),
		},
		{
			"turned so that seams miss", swap(small, "W W P\n", "⟦W:ne⟧ W P\n"), warned,
			says("warning: the seams of the blocks at row 1, column 1 and row 1, column 2 miss each other along their common side, as at 1 more place", "let the blocks turn themselves: leave out :nw and the like"),
		},
		{
			"turned so that many seams miss", swap(small, "W W P\n  W P W\n", "⟦W:ne⟧ W P\n  W P W:ne\n"), warned,
			says("warning: the seams of the blocks at row 1, column 1 and row 1, column 2 miss each other along their common side, as at 1 more place", "let the blocks turn themselves: leave out :nw and the like"),
		},
		{
			"laid no times", swap(small, "piece cream\n", "piece cream\nrepeat across ⟦0⟧\n"), refused,
			says("a grid cannot be repeated 0 times", "write 1 or more"),
		},
		{
			"laid and not said how", swap(small, "piece cream\n", "piece cream\nrepeat⟦⟧\n"), refused,
			says("expected across or down, found the end of the line", "for example repeat across 3 down 4"),
		},
		{
			"a repeat of a thousand millions", swap(small, "W W W\n", "W W W\nrepeat across ⟦1000000000⟧\n"), refused,
			says(`expected how often the grid is repeated across, a whole number of at most 6 digits, found "1000000000"`, "write a smaller one"),
		},
		{
			"laid a broken number of times", swap(small, "piece cream\n", "piece cream\nrepeat across 2 down ⟦1/2⟧\n"), refused,
			says(`expected how often the grid is repeated down, a whole number, found "1/2"`, "for example repeat across 3 down 4"),
		},
		{
			"laid across twice", swap(small, "piece cream\n", "piece cream\nrepeat ⟨across⟩ 2 ⟦across⟧ 3\n"), refused,
			says(`"across" is already on this line`, "keep one of the two", "first given here"),
		},
		{
			"laid too often", swap(small, "piece cream\n", "piece cream\n⟦repeat across 999999 down 999999⟧\n"), refused,
			says("the grid has 8999982000009 places; the limit is 40000", ""),
		},
		{
			"a table of webs with rows missing", swap(small, "wedges navy kites cream\n", "kites cream\n", "piece cream\n", "piece cream\n⟦webs⟧\n  navy\n"), refused,
			says("the table of webs has 1 row, but the quilt has 2 rows of web centers inside it", "write one row for each row of web centers inside the quilt"),
		},
		{
			"a table of webs with a value too many", swap(small, "wedges navy kites cream\n", "kites cream\n", "piece cream\n", "piece cream\nwebs\n  ⟦navy navy⟧\n  navy\n"), refused,
			says("this row of the table of webs has 2 values for 1 web center between rows 1 and 2 of the quilt", "write one value for each, or . for the blocks' own"),
		},
		{
			"a table of webs with a gap", swap(small, "W web wedges navy kites cream\n", "⟦W⟧ web kites cream\n", "piece cream\n", "piece cream\nwebs\n  .\n  navy\n"), refused,
			says(`block "W" has no wedges of its own, and webs gives none to its web at row 1, column 1`, "add wedges cream"),
		},
		{
			"a table of webs with a number", swap(small, "wedges navy kites cream\n", "kites cream\n", "piece cream\n", "piece cream\nwebs\n  ⟦4⟧\n  navy\n"), refused,
			says(`expected a fabric, a strip set or ., found "4"`, "write a fabric, a strip set, or . for the blocks' own"),
		},
		{
			"a table of webs with a fabric misspelt", swap(small, "wedges navy kites cream\n", "kites cream\n", "piece cream\n", "piece cream\nwebs\n  ⟦nayv⟧\n  navy\n"), refused,
			says(`no fabric, pool or strip set is called "nayv"`, `did you mean "navy"?`),
		},
		{
			"a row without indentation, glued", swap(small, "  W P W\n", "⟦WPW⟧\n"), refused,
			says(`no statement is called "WPW"`, allStatements()),
		},
		{
			"one web that cannot close", swap(small, "piece cream\n", "piece cream\nblock F floating wedges navy background cream\n", "W W P\n  W P W\n  W W W\n", "F F ⟦F⟧\n  F W F\n  P F F\n"), warned,
			says("warning: the web at row 1, column 3 cannot be complete, since both its ends lie on the quilt's edge", "even numbers of blocks across and down avoid it, or a plain block there"),
		},
		{
			"laid a number of times", swap(small, "piece cream\n", "piece cream\nrepeat ⟦3⟧\n"), refused,
			says(`expected across or down, found "3"`, "for example repeat across 3 down 4"),
		},
		{
			"a label among many", swap(small, "piece cream\n", "piece cream\nblock P1 like P\nblock P2 like P\nblock P3 like P\nblock P4 like P\nblock P5 like P\nblock P6 like P\nblock P7 like P\nblock P8 like P\nblock P9 like P\nblock P10 like P\nblock P11 like P\n", "W P\n  W P W\n  W W W\n", "P P1 P2\n  P3 P4 P5 P6\n  P7 P8 P9 P10\n  P11 ⟦Zz⟧ W P\n"), refused,
			says(`no block is called "Zz"`, "define it: block Zz and its kind"),
		},
		{
			"most rows of another length than the first", swap(small, "W W P\n  W P W\n", "⟦W W⟧\n  ⟨W P W⟩\n"), refused,
			says("row 1 has 2 blocks, but row 2 has 3", "rows have one length: write . where nothing stands", "row 2"),
		},
		{
			"a web that does not close", swap(small, "piece cream\n", "piece cream\nblock F floating wedges navy background cream\n", "W P\n  W P W\n  W W W\n", "P P\n  P ⟦F⟧ P\n  P P W\n"), warned,
			says("warning: the web that the floating block at row 2, column 2 points at is incomplete: the blocks beside it give it too few wedges", "turn it with :nw, :ne, :se or :sw, or change the blocks beside it"),
		},
		{
			"webs that do not close", swap(small, "piece cream\n", "piece cream\nblock F floating wedges navy background cream\n", "W P\n  W P W\n  W W W\n", "P P P\n  P ⟦F⟧ P P\n  P P F P\n  P P P P\n"), warned,
			says("warning: the webs that the floating block at row 2, column 2 and 1 more block point at are incomplete: the blocks beside them give them too few wedges", "turn it with :nw, :ne, :se or :sw, or change the blocks beside it"),
		},
		{
			"a star that does not close", swap(small, "piece cream\n", "piece cream\nblock F floating-star wedges navy kites cream background cream\n", "W P\n  W P W\n  W W W\n", "P P\n  P ⟦F⟧ P\n  P P W\n"), warned,
			says("warning: the star that the floating-star block at row 2, column 2 points at is incomplete: the blocks beside it give it too few kites", "turn it with :nw, :ne, :se or :sw, or change the blocks beside it"),
		},
	}
}

// sizeCases are faults of sizes that do not go together.
func sizeCases() []testCase {
	return []testCase{
		{
			"two sides", swap(small, "4\n", "⟦4⟧\n", "W web wedges navy kites cream\nblock P plain piece cream\n", "⟨W⟩ web wedges navy kites cream\nblock ⟨P⟩ ring wedges navy corners cream\n"), refused,
			says("cut strips of 4 in make web blocks of 5.3576 in and ring blocks of 7 in, but a grid has one side", "write side 7 instead; each kind then has its own strip", "a web block", "a ring block"),
		},
		{
			"two sides in centimetres", "units cm\nstrip ⟦10⟧\nfabric cream #f4ead7\nfabric navy #1f3350\nblock ⟨W⟩ web wedges navy kites cream\nblock ⟨P⟩ ring wedges navy corners cream\ngrid\n  W W P\n  W P W\n  W W W\n", refused,
			says("cut strips of 10 cm make web blocks of 13.0112 cm and ring blocks of 17 cm, but a grid has one side", "write side 17 instead; each kind then has its own strip", "a web block", "a ring block"),
		},
		{
			"three sides", "strip ⟦4⟧\nfabric cream #f4ead7\nfabric navy #1f3350\nblock ⟨W⟩ web wedges navy kites cream\nblock ⟨P⟩ ring wedges navy corners cream\nblock T tumblers pieces cream navy about 4\ngrid\n  W W P\n  T P W\n  W W W\n", refused,
			says("cut strips of 4 in make web blocks of 5.3576 in and ring blocks of 7 in, but a grid has one side", "write side 7 instead; each kind then has its own strip", "a web block", "a ring block"),
		},
		{
			"a top too large", swap(small, "grid", "⟦grid⟧", "W W\n", "W W\n"+strings.Repeat("border 100 navy\n", 60)), refused,
			says("this top is 12016.0727 in long; the limit is 10000 in", ""),
		},
		{
			"a set for no side", swap(small, "strip 4\n", "", "block W web wedges navy kites cream\n", "strip-set shore navy 1 3/4 cream 2\nblock W web wedges shore kites cream\n", "grid", "⟦grid⟧"), refused,
			says("this layout says neither the cut strip nor the finished side of its blocks", "for example strip 4"),
		},
	}
}
