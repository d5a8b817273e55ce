package layout_test

// lineCases are faults of whole lines: statements, comments, rows in the wrong place.
func lineCases() []testCase {
	return []testCase{
		{
			"a statement misspelt", swap(small, "grid", "⟦gird⟧"), refused,
			says(`no statement is called "gird"`, `did you mean "grid"?`),
		},
		{
			"a statement misspelt that defines", swap(small, "fabric navy #1f3350\n", "⟦fabirc⟧ navy #1f3350\n"), refused,
			says(`no statement is called "fabirc"`, `did you mean "fabric"?`),
		},
		{
			"a statement with a colon", swap(small, "fabric navy #1f3350\n", "⟦fabric:⟧ navy #1f3350\n"), refused,
			says(`no statement is called "fabric:"`, "leave out the colon"),
		},
		{
			"a statement by another word", swap(small, "fabric navy #1f3350\n", "⟦colour⟧ navy #1f3350\n"), refused,
			says(`no statement is called "colour"`, `did you mean "fabric"?`),
		},
		{
			"a statement that is none", swap(small, "fabric navy #1f3350\n", "⟦wibble⟧ navy #1f3350\n"), refused,
			says(`no statement is called "wibble"`, allStatements()),
		},
		{
			"size by another word", swap(small, "strip 4\n", "size ⟦7⟧\n"), refused,
			says(`expected a size's name, found "7"`, "the finished side of a block is side 7"),
		},
		{
			"rows by another word", swap(small, "grid", "⟦rows⟧"), refused,
			says(`no statement is called "rows"`, `did you mean "grid"?`),
		},
		{
			"webs misspelt", swap(small, "wedges navy kites cream\n", "kites cream\n", "piece cream\n", "piece cream\n⟦wbes⟧ navy\n"), refused,
			says(`no statement is called "wbes"`, `did you mean "webs"?`),
		},
		{
			"text alone", swap(small, "strip 4\n", "⟦\"Harbor⟧ lanterns\"\nstrip 4\n"), refused,
			says("expected a statement, found text in quotes", "put the word title or note before it"),
		},
		{
			"comment of another sort", swap(small, "strip 4\n", "⟦//⟧ a lap quilt\nstrip 4\n"), refused,
			says(`expected a statement, found "//"`, "comments begin with # and a space"),
		},
		{
			"comment of another sort behind a statement", swap(small, "4\n", "4 ⟦--⟧ a lap quilt\n"), refused,
			says(`nothing more belongs on this line, found "--"`, "comments begin with # and a space"),
		},
		{
			"comment of one letter without a blank", swap(small, "4\n", "4 ⟦#d⟧\n"), refused,
			says(`nothing more belongs on this line, found "#d"`, "a comment in mid-line needs a space behind its #: # d"),
		},
		{
			"comment without a blank in mid-line", swap(small, "4\n", "4 ⟦#dark⟧\n"), refused,
			says(`nothing more belongs on this line, found "#dark"`, "a comment in mid-line needs a space behind its #: # dark"),
		},
		{
			"comment without a blank behind blanks", swap(small, "strip 4\n", "  ⟦#dark⟧\nstrip 4\n"), refused,
			says(`expected a statement, found "#dark"`, "a comment needs # and a space: # dark"),
		},
		{
			"a colour behind a fabric is no comment", swap(small, "#1f3350", "#1f3350 ⟦#dark⟧"), refused,
			says(`expected a print name in quotes, "on-hand", "usable-width" or "from", found "#dark"`, "a comment in mid-line needs a space behind its #: # dark"),
		},
		{
			"a statement twice", swap(small, "strip 4\n", "⟨units⟩ cm\n⟦units⟧ inches\nstrip 10\n"), refused,
			says(`"units" is already in this layout`, "keep one of the two", "first given here"),
		},
		{
			"strip twice", swap(small, "strip 4\n", "⟨strip⟩ 4\n⟦strip⟧ 5\n"), refused,
			says(`"strip" is already in this layout`, "keep one of the two", "first given here"),
		},
		{
			"grid twice", swap(small, "grid", "⟨grid⟩", "W W\n", "W W\n⟦grid⟧\n  W W W W\n"), refused,
			says(`"grid" is already in this layout`, "keep one of the two", "first given here"),
		},
		{
			"a word too many", swap(small, "4\n", "4 ⟦wide⟧\n"), refused,
			says(`nothing more belongs on this line, found "wide"`, "leave out wide"),
		},
		{
			"batting with a word too many", swap(small, "4\n", "4\nbatting ⟦wool⟧\n"), refused,
			says(`nothing more belongs on this line, found "wool"`, "leave out wool"),
		},
		{
			"a row under no grid", swap(small, "grid\n  W W P\n", "  ⟦W⟧ W P\n"), refused,
			says("this row of blocks is not under a grid", `put the line "grid" above them`),
		},
		{
			"a row behind another statement", swap(small, "W W\n", "W W\nborder 1 navy\n  ⟦W⟧ W W\n"), refused,
			says("this row of blocks is outside the grid", "rows end where another statement begins: move this one up to the others"),
		},
		{
			"a row without indentation", swap(small, "  W P W\n", "⟦W⟧ P W\n"), warned,
			says("warning: this row of blocks has lost its indentation", "put blanks before it"),
		},
		{
			"a row without indentation and with a label too many", swap(small, "  W P W\n", "⟦W⟧ ⟦Q⟧ W\n"), refused,
			[]message{
				say("warning: this row of blocks has lost its indentation", "put blanks before it"),
				say(`no block is called "Q"`, "blocks are: W, P"),
			},
		},
		{
			"rows on the line of grid", swap(small, "grid\n  W W P\n", "grid ⟦W⟧ W P\n"), refused,
			says(`expected the rows on lines of their own below, found "W"`, "put the labels on the lines below, with blanks before them"),
		},
		{
			"no rows", swap(small, "grid\n  W W P\n  W P W\n  W W W\n", "⟦grid⟧\n"), refused,
			says("the grid has no rows", "write the labels of the blocks under it, indented, row by row"),
		},
		{
			"no grid", swap(small, "grid\n  W W P\n  W P W\n  W W W\n", "⟦⟧"), refused,
			says("this layout has no grid", "write grid, and under it, indented, the labels of the blocks row by row"),
		},
		{
			"nothing but dots", "strip 4\nfabric cream #f4ead7\nfabric navy #1f3350\nblock P plain piece cream\n⟦grid⟧\n  . .\n", refused,
			says("the grid holds no blocks", "write labels of blocks in its rows"),
		},
		{
			"empty", "⟦⟧", refused,
			says("this layout is empty", "a layout needs a strip or a side, fabrics, blocks and a grid"),
		},
		{
			"blank", "⟦⟧ \n\n \t\n", refused,
			says("this layout is empty", "a layout needs a strip or a side, fabrics, blocks and a grid"),
		},
		{
			"byte order mark alone", "⟦⟧\ufeff\n", refused,
			says("this layout is empty", "a layout needs a strip or a side, fabrics, blocks and a grid"),
		},
		{
			"only comments", "# nothing yet\n⟦⟧", refused,
			says("this layout has no grid", "write grid, and under it, indented, the labels of the blocks row by row"),
		},
		{
			"a fault everywhere", "⟦strp⟧ 4\nfabric cream #f4ead7\nfabric navy ⟦#1f335⟧\nblock W web wedges ⟦nvy⟧ kites cream\nblock P plain piece cream\ngrid\n  W W P\n  W ⟦X⟧ W\n  W W W\n", refused,
			[]message{
				say(`no statement is called "strp"`, `did you mean "strip"?`),
				say(`"#1f335" has 5 digits after #, expected 3 or 6, as in #1f3350`, "write # and six digits, or a name such as navy"),
				say(`no fabric, pool or strip set is called "nvy"`, `did you mean "navy"?`),
				say(`no block is called "X"`, "blocks are: W, P"),
			},
		},
		{
			"no size, and a line that cannot be read", swap(small, "strip 4\n", "⟦stripe-width:⟧ 4 in\n"), refused,
			says(`no statement is called "stripe-width:"`, allStatements()),
		},
		{
			"no size, and a line of nothing known", swap(small, "strip 4\n", "⟦xyzzy⟧ 4\n"), refused,
			says(`no statement is called "xyzzy"`, allStatements()),
		},
		{
			"no grid, and a line of nothing known", swap(small, "grid", "⟦pattern⟧"), refused,
			says(`no statement is called "pattern"`, allStatements()),
		},
	}
}
