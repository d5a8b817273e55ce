package layout_test

// swapCases are faults of swaps.
func swapCases() []testCase {
	const example = "for example swap row 2 column 3 with row 5 column 1"
	dealt := func(line string) string {
		return swap(small, "#1f3350\n", "#1f3350\nscraps bits navy cream\n", "wedges navy", "wedges bits") + line + "\n"
	}
	byWeb := func(line string) string {
		return swap(small, "#1f3350\n", "#1f3350\nfabric rust #b5532a\nscraps bits navy rust by web\n", "wedges navy", "wedges bits") + line + "\n"
	}
	inColumns := func(line string) string {
		return "side 6\nfabric cream #f4ead7\nfabric navy #1f3350\nscraps bits navy cream\nblock T tumblers about 4 pieces bits\ngrid\n  T T\n  T T\n" + line + "\n"
	}
	return []testCase{
		{"a swap of scraps in a set", swap(small, "#1f3350\n", "#1f3350\nscraps bits navy cream\nstrip-set bands bits 2 cream rest\n", "wedges navy", "wedges bands") + "swap row 1 column 1 with row 3 column 2\n", accepted, nil},
		{
			"a swap without its places", dealt("swap⟦⟧"), refused,
			says("expected row and its number, found the end of the line", example),
		},
		{
			"a swap without a column", dealt("swap row 1 ⟦with⟧ row 2 column 1"), refused,
			says(`expected column and its number, found "with"`, example),
		},
		{
			"a swap with one block", dealt("swap row 1 column 1⟦⟧"), refused,
			says("expected with and a second block, found the end of the line", example),
		},
		{
			"a row that is no number", dealt("swap row ⟦one⟧ column 1 with row 2 column 1"), refused,
			says(`expected the number of the row, a whole number, found "one"`, example),
		},
		{
			"a row below the quilt", dealt("swap row 1 column 1 with row ⟦4⟧ column 1"), refused,
			says("the quilt has 3 rows, so it has no row 4", "write a number from 1 to 3"),
		},
		{
			"a column before the first", dealt("swap row 1 column ⟦0⟧ with row 2 column 1"), refused,
			says("the quilt has 3 columns, so it has no column 0", "write a number from 1 to 3"),
		},
		{
			"a swap with itself", dealt("⟦swap row 1 column 1 with row 1 column 1⟧"), refused,
			says("a block cannot be swapped with itself", "name another block behind with"),
		},
		{
			"a swap of a block without scraps", dealt("swap row 1 column 1 with ⟦row 1 column 3⟧"), refused,
			says(`block "P" has no scraps of its own to swap: none of its pieces come from a pool`, "leave the swap out"),
		},
		{
			"a swap of scraps dealt by web", byWeb("swap ⟦row 1 column 1⟧ with row 1 column 2"), refused,
			says(`block "W" has no scraps of its own to swap: they are dealt by web, to all blocks around it`, "leave the swap out"),
		},
		{
			"a swap in a column", inColumns("swap ⟦row 1 column 1⟧ with row 1 column 2"), refused,
			says("the blocks of a column are sewn in one strip, and cannot be swapped", ""),
		},
		{
			"a swap with nothing", swap(dealt("swap row 1 column 1 with ⟦row 3 column 3⟧"), "  W W W\n", "  W W .\n"), refused,
			says("there is no block at row 3, column 3", ""),
		},
		{
			"a swap of two labels", swap(dealt("⟦swap row 1 column 1 with row 1 column 3⟧"), "piece cream", "piece bits"), refused,
			says(`only blocks of one label can be swapped: there is "W" at row 1, column 1, and "P" at row 1, column 3`, "name two blocks of one label"),
		},
	}
}
