package main

// viewHelp says what the views are.
func viewHelp() string {
	return "the `VIEW`: colour, value (greys by value), line (outlines to colour in), squint (as seen with eyes half shut), " +
		"vanishing (seams that vanish and should not are marked), or as eyes see it that lack one sort of colour sense: protan, deutan, tritan"
}
