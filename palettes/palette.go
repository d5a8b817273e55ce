package palettes

// Swatch is a fabric colour with its name.
type Swatch struct {
	Name   string
	Colour Colour
}

// Palette is a set of fabrics that go together. Palettes of ours stand in value order, the darkest first; one read from a
// file keeps the order of the file.
type Palette struct {
	Name    string
	About   string // a few words for lists and help, without full stop; "" where nothing is known
	Fabrics []Swatch
	Omitted []string // what of a file is not among the fabrics, and why: its name in quotes, a colon, and the reason
}
