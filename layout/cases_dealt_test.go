package layout_test

// dealtSet is a layout whose strip set is dealt by set, with other lines for its pools and for the set.
func dealtSet(pools, set string) string {
	return "strip 4\nfabric cream #f4ead7\nfabric navy #1f3350\nfabric rust #b5532a\nfabric teal #2f7d83\n" + pools + "\n" + set + "\n" +
		"block W web wedges drift kites cream\ngrid\n  W W\n  W W\n"
}

// dealtCases are faults of strip sets that are dealt by set.
func dealtCases() []testCase {
	const pool = "scraps darks navy rust teal by set"
	return []testCase{
		{"a set of three from three", dealtSet(pool, "strip-set drift darks 1 3/4 darks 1 1/2 darks 1 3/4"), accepted, nil},
		{"a set with a strip of its own", dealtSet(pool, "strip-set drift darks 1 3/4 cream 1 1/2 darks rest sets 3"), accepted, nil},
		{
			"a set of more places than fabrics", dealtSet("⟨scraps darks navy rust by set⟩", "strip-set drift ⟦darks⟧ 1 3/4 darks 1 1/2 darks 1 3/4"), refused,
			says(`each set of "drift" takes 3 fabrics from "darks", which has only 2 fabrics, and no set holds a fabric twice`, "add 1 fabric to the pool, or take fewer strips from it", "defined here"),
		},
		{
			"a dealt set with a pool dealt otherwise", dealtSet(pool+"\n⟨scraps lights cream by web⟩", "strip-set drift darks 1 3/4 ⟦lights⟧ 1 1/2 darks 1 3/4"), refused,
			says(`"drift" is dealt by set, but its pool "lights" is dealt by web`, "write by set behind the fabrics of lights", "defined here"),
		},
		{
			"a fabric in two pools of a set", dealtSet(pool+"\n⟨scraps mids cream teal by set⟩", "⟦strip-set drift darks 1 3/4 mids 1 1/2 darks 1 3/4⟧"), refused,
			says(`"teal" is in both pools of "drift", "darks" and "mids", and no set holds a fabric twice`, "take it out of one of the two", "defined here"),
		},
		{
			"a fabric of the pool in every set", dealtSet("⟨"+pool+"⟩", "strip-set drift darks 1 3/4 ⟦teal⟧ 1 1/2 darks 1 3/4"), refused,
			says(`"teal" is a strip of every set of "drift" and in its pool "darks", and no set holds a fabric twice`, "take it out of the pool", "defined here"),
		},
		{
			"sets of no pool", dealtSet("", "strip-set drift navy 1 3/4 cream 1 1/2 rust rest sets ⟦4⟧"), refused,
			says(`"drift" has no strips from a pool that is dealt by set, so there is nothing to deal`, "write by set behind the fabrics of its pools, or leave out sets"),
		},
		{
			"no sets", dealtSet(pool, "strip-set drift darks 1 3/4 darks 1 1/2 darks 1 3/4 sets ⟦0⟧"), refused,
			says("a strip set is dealt as 1 to 500 sets, found 0", "write a number from 1 to 500"),
		},
		{
			"sets before the last strip", dealtSet(pool, "strip-set drift darks 1 3/4 darks 1 1/2 sets 4 ⟦darks⟧ 1 3/4"), refused,
			says(`expected the end of the line, found "darks"`, "name all fabrics before sets"),
		},
		{
			"sets without a number", dealtSet(pool, "strip-set drift darks 1 3/4 darks rest sets⟦⟧"), refused,
			says("expected how many sets are dealt, a whole number, found the end of the line", "for example strip-set shore rust 1 3/4 cream 1 1/2 teal rest"),
		},
		{
			"pieces from a pool dealt by set", swap(dealtSet("scraps ⟨darks⟩ navy rust teal by set", "strip-set drift darks 1 3/4 darks 1 1/2 darks 1 3/4"), "kites cream", "kites ⟦darks⟧"), refused,
			says(`"darks" is dealt by set, so only strip sets are made of it`, "make a strip set of it, or deal it by piece, block or web", "defined here"),
		},
		{
			"a swap of scraps dealt by set", dealtSet(pool, "strip-set drift darks 1 3/4 darks 1 1/2 darks 1 3/4") + "swap ⟦row 1 column 1⟧ with row 1 column 2\n", refused,
			says(`block "W" has no scraps of its own to swap: they are dealt by set, to whole webs`, "leave the swap out"),
		},
	}
}
