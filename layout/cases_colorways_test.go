package layout_test

// inOthers is the small layout in another colorway.
func inOthers(colorway string) string { return small + colorway + "\n" }

// colorwayCases are faults and warnings of colorways.
func colorwayCases() []testCase {
	return []testCase{
		{"a colorway of colors", inOthers("colorway dusk cream #d9c7b0 navy black"), accepted, nil},
		{"a colorway in British spelling", inOthers("colourway dusk cream #d9c7b0"), accepted, nil},
		{"two fabrics that change places", inOthers("colorway other-way-round cream navy navy cream"), accepted, nil},
		{"a fabric for colorways alone", inOthers("fabric plum #5a2a4f\ncolorway dusk navy plum"), accepted, nil},
		{"a palette's fabric", inOthers("palette tidewater\ncolorway dusk navy kelp"), accepted, nil},
		{
			"a colorway without a name", inOthers("colorway⟦⟧"), refused,
			says("expected a colorway's name, found the end of the line", "for example colorway dusk cream #d9c7b0 rust navy navy rust"),
		},
		{
			"a colorway of nothing", inOthers("colorway dusk⟦⟧"), refused,
			says(`expected a fabric and what takes its place in "dusk", found the end of the line`, "for example colorway dusk cream #d9c7b0 rust navy navy rust"),
		},
		{
			"half a change", inOthers("colorway dusk cream⟦⟧"), refused,
			says(`expected the color or the fabric that takes the place of "cream", found the end of the line`, "for example colorway dusk cream #d9c7b0 rust navy navy rust"),
		},
		{
			"a colorway twice", inOthers("colorway ⟨dusk⟩ cream #d9c7b0\ncolorway ⟦Dusk⟧ cream white"), refused,
			says(`the colorway "Dusk" is already defined`, "give this one another name", "first defined here"),
		},
		{
			"a fabric changed twice", inOthers("colorway dusk ⟨cream⟩ #d9c7b0 ⟦cream⟧ white"), refused,
			says(`"cream" has another fabric in its place already`, "leave out cream white", "first changed here"),
		},
		{
			"a fabric for itself", inOthers("colorway dusk ⟦cream cream⟧ navy black"), refused,
			says(`"cream" takes its own place`, "leave out cream cream"),
		},
		{
			"one fabric for another that stays", inOthers("colorway dusk cream ⟦navy⟧"), refused,
			says(`"navy" takes the place of "cream" and keeps its own`, "to swap the two, write navy cream behind them"),
		},
		{
			"one fabric for another that only changes its color", inOthers("colorway dusk navy white cream ⟦navy⟧"), refused,
			says(`"navy" takes the place of "cream" and keeps its own`, "write the fabric that takes the place of navy"),
		},
		{
			"one fabric for two", inOthers("fabric plum #5a2a4f\ncolorway dusk navy plum cream ⟦plum⟧"), refused,
			says(`"plum" takes the place of "navy" already`, "write a color, as in cream #5a2a4f"),
		},
		{
			"a fabric that nothing has", inOthers("colorway dusk ⟦craem⟧ white"), refused,
			says(`no fabric, pool or strip set is called "craem"`, `did you mean "cream"?`),
		},
		{
			"a fabric of a palette that is not there", inOthers("colorway dusk navy ⟦kelp⟧"), refused,
			says(`no color and no fabric of this layout is called "kelp"`, "bring in its palette: write palette tidewater"),
		},
		{
			"half a color", inOthers("colorway dusk navy ⟦#12345⟧"), refused,
			says(`"#12345" has 5 digits after #, expected 3 or 6, as in #1f3350`, "write # and six digits, or a name such as navy"),
		},
		{
			"a pool in a colorway", swap(small, "piece cream\n", "piece blues\nscraps ⟨blues⟩ navy cream\n") + "colorway dusk ⟦blues⟧ white\n", refused,
			says(`a colorway changes fabrics, and "blues" is a pool of scraps`, "write a fabric, for example cream", "defined here"),
		},
		{
			"a fabric that is not in the quilt", inOthers("fabric plum #5a2a4f\ncolorway dusk ⟦plum⟧ white"), warned,
			says(`warning: "plum" is changed and is not in the quilt`, ""),
		},
	}
}
