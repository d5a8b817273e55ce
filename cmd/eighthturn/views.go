package main

// viewHelp says what the views are.
func viewHelp() string {
	return "the `VIEW`: color, value (grays by value), line (outlines to color in), squint (as seen with half-closed eyes), " +
		"vanishing (marks seams that vanish and should not), or a color-blind viewer's: protan, deutan, tritan"
}
