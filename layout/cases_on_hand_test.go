package layout_test

// onHandCases are faults and warnings of pieces on hand.
func onHandCases() []testCase {
	const example = "for example on-hand wedges navy 12"
	mixed := "side 7\nfabric cream #f4ead7\nfabric navy #1f3350\nblock R ring wedges navy corners cream\nblock W web wedges navy kites cream\ngrid\n  R W\n"
	pooled := "strip 4\nfabric cream #f4ead7\nfabric navy #1f3350\nscraps darks navy cream\nstrip-set shore darks rest cream 2\nblock W web wedges shore kites darks\ngrid\n  W\n"
	return []testCase{
		{"pieces on hand", small + "on-hand wedges navy 12\non-hand kites cream 4 # cut last year\nON-HAND Wedges Navy 3 strip 4\n", accepted, nil},
		{"wedges of a strip set on hand", banded + "on-hand wedges reversed shore 48\non-hand wedges shore 1\n", accepted, nil},
		{"wedges of one of two strips", mixed + "on-hand wedges navy 8 strip 4\non-hand wedges navy 8 strip 5 1/16\non-hand corners cream 4\n", accepted, nil},
		{"pieces on hand that the quilt has no use for", small + "on-hand wedges cream 12\non-hand wedges navy 2 strip 3\non-hand corners navy 4\n", accepted, nil},
		{
			"pieces on hand of no sort", small + "on-hand⟦⟧\n", refused,
			says("expected the pieces on hand, wedges or kites or corners, found the end of the line", example),
		},
		{
			"pieces on hand of another sort", small + "on-hand ⟦squares⟧ navy 4\n", refused,
			says(`expected the pieces on hand, wedges or kites or corners, found "squares"`, example),
		},
		{
			"pieces on hand misspelt", small + "on-hand ⟦wedge⟧ navy 4\n", refused,
			says(`expected the pieces on hand, wedges or kites or corners, found "wedge"`, `did you mean "wedges"?`),
		},
		{
			"pieces on hand of nothing", small + "on-hand wedges⟦⟧\n", refused,
			says("expected what the wedges are cut from, found the end of the line", example),
		},
		{
			"pieces on hand without a number", small + "on-hand wedges navy⟦⟧\n", refused,
			says("expected how many wedges are on hand, a whole number, found the end of the line", example),
		},
		{
			"a length on hand where pieces are", small + "on-hand wedges navy ⟦1/2⟧ yd\n", refused,
			says(`expected how many wedges are on hand, a whole number, found "1/2"`, example),
		},
		{
			"no pieces on hand", small + "on-hand wedges navy ⟦0⟧\n", refused,
			says("0 wedges cannot be on hand", "write a number from 1 to 150000, or leave the line out"),
		},
		{
			"too many pieces on hand", small + "on-hand kites cream ⟦150001⟧\n", refused,
			says("150001 kites cannot be on hand", "write a number from 1 to 150000, or leave the line out"),
		},
		{
			"pieces on hand of an unknown fabric", small + "on-hand wedges ⟦nvy⟧ 4\n", refused,
			says(`no fabric, pool or strip set is called "nvy"`, `did you mean "navy"?`),
		},
		{
			"kites of a strip set on hand", swap(banded, "strip-set shore", "strip-set ⟨shore⟩") + "on-hand kites ⟦shore⟧ 4\n", refused,
			says(`the kites are cut from fabric, and "shore" is a strip set`, "write a fabric, for example cream", "defined here"),
		},
		{
			"pieces on hand of a pool", pooled + "on-hand kites ⟦darks⟧ 4\n", refused,
			says(`pieces on hand are of one fabric, and "darks" is a pool of scraps`, "write one of its fabrics, and a line for each"),
		},
		{
			"wedges on hand of a set with a pool", pooled + "on-hand wedges ⟦reversed shore⟧ 4\n", refused,
			says(`"shore" has strips from a pool, so its wedges are not all alike`, "leave the line out"),
		},
		{
			"wedges on hand of strips of two widths", mixed + "⟦on-hand wedges navy 8⟧\n", refused,
			says("wedges here are cut from strips of two widths, and the line does not say which these are", "write strip 4 or strip 5 1/16 behind the number"),
		},
		{
			"a strip for kites on hand", small + "on-hand kites cream 4 strip ⟦4⟧\n", refused,
			says("the kites are as large as the blocks make them; only wedges say their strip", "leave out strip 4"),
		},
		{
			"a strip that is none", small + "on-hand wedges navy 4 strip ⟦wide⟧\n", refused,
			says(`expected the strip that they are cut from, found "wide"`, example),
		},
	}
}
