package layout_test

// hintCases are mistakes to which answers once said to type something wrong; of fabrics see fabricCases.
func hintCases() []testCase {
	return []testCase{
		{
			"an equals sign before a width", swap(small, "W W\n", "W W\nborder ⟦=⟧ 3 navy\n"), refused,
			says(`expected the width of the border, found "="`, "leave out the equals sign"),
		},
		{
			"an equals sign without blanks", swap(small, "strip 4", "⟦strip=4⟧"), refused,
			says(`no statement is called "strip=4"`, "leave out the equals sign"),
		},
		{
			"a role of no kind where one is lacking", swap(small, "W web wedges navy kites cream", "W ring wedges navy ⟦edges⟧ cream", "P plain piece cream", "P ring wedges navy corners cream"), refused,
			says(`expected a role of the ring block, found "edges"`, `did you mean "corners"?`),
		},
		{
			"a role of no kind before one", swap(small, "W web wedges navy kites cream", "W ring ⟦outer⟧ navy corners cream"), refused,
			says(`expected a role of the ring block, found "outer"`, `did you mean "wedges"?`),
		},
		{
			"a role of no kind behind one", swap(small, "W web wedges navy kites cream", "W ring wedges navy ⟦outer⟧ cream", "P plain piece cream", "P ring wedges navy corners cream"), refused,
			says(`expected a role of the ring block, found "outer"`, `did you mean "corners"?`),
		},
		{
			"the size of a quilt", swap(small, "strip 4", "size ⟦60⟧ x 80"), refused,
			says(`expected a size's name, found "60"`, "a size has a name and numbers of blocks: size lap across 8 down 10; the quilt is as large as its grid makes it"),
		},
		{
			"a comma in a pool", swap(small, "#1f3350\n", "#1f3350\nfabric a #8ab\nscraps p ⟦navy,⟧ a, cream\n", "wedges navy", "wedges p"), refused,
			says(`no fabric, pool or strip set is called "navy,"`, "leave out the commas"),
		},
		{
			"a comma between roles", swap(small, "wedges navy kites", "wedges ⟦navy,⟧ kites"), refused,
			says(`no fabric, pool or strip set is called "navy,"`, "leave out the comma"),
		},
		{
			"label and kind swapped", swap(small, "block W web wedges", "block web ⟦W⟧ wedges"), refused,
			says(`expected a kind of block, found "W"`, "the label comes first: block W web"),
		},
		{
			"a size behind the grid", swap(small, "grid", "grid ⟦8x10⟧"), refused,
			says(`expected the rows on lines of their own below, found "8x10"`, "leave out 8x10"),
		},
		{
			"a binding without its width", swap(small, "W W\n", "W W\nbinding ⟦dark-green⟧\n"), refused,
			says(`expected the width of the binding, found "dark-green"`, "for example binding 2 1/2 dark-green"),
		},
		{
			"all rows without indentation", swap(small, "  W W P\n  W P W\n  W W W\n", "⟦W⟧ W P\nW P W\nW W W\n"), warned,
			says("warning: 3 rows of blocks have lost their indentation", "put blanks before them"),
		},
		{
			"a strip set that nothing defines", swap(small, "#1f3350\n", "#1f3350\nwebs ⟦a⟧ / reversed ⟨a⟩\n", "wedges navy ", ""), refused,
			says(`no fabric, pool or strip set is called "a"`, "define it: strip-set a and its fabrics", "here too"),
		},
		{
			"a border on one side", swap(small, "W W\n", "W W\nborder 3 navy ⟦top⟧\n"), refused,
			says(`a border goes around all sides, found "top"`, "leave out top"),
		},
		{
			"a statement in two words", swap(small, "#1f3350\n", "#1f3350\n⟦strip⟧ set shore navy 1 3/4 cream rest\n", "wedges navy", "wedges shore"), refused,
			says(`no statement is called "strip"`, "write strip-set"),
		},
		{
			"a kind in two words", swap(small, "P plain piece cream", "P ⟦floating⟧ star wedges navy kites navy background cream"), refused,
			says(`expected a kind of block, found "floating"`, "write floating-star"),
		},
		{
			"a fraction without its line behind a border", swap(small, "W W\n", "W W\nborder ⟦1 3⟧ navy\n"), refused,
			says(`"1 3" is not one length`, "did you mean 1/3?"),
		},
		{
			"a name misspelled twice", swap(small, "wedges navy", "wedges ⟦nvay⟧", "piece cream", "piece ⟨nvay⟩"), refused,
			says(`no fabric, pool or strip set is called "nvay"`, `did you mean "navy"?`, "here too"),
		},
	}
}
