package palettes

import "strings"

// All returns the palettes that come with the program, in the order of the alphabet. In each the fabrics rise by at least
// 6 L* from one to the next, from one below L* 35 to one above 82, and no fabric's name comes twice.
func All() []Palette {
	return []Palette{
		cellarglass(),
		duskmere(),
		frostgate(),
		kilnyard(),
		nettlewick(),
		quincecourt(),
		strawloft(),
		tidewater(),
		washline(),
	}
}

// Find finds a palette of All by its name, in capitals or small letters.
func Find(name string) (Palette, bool) {
	for _, p := range All() {
		if strings.EqualFold(p.Name, name) {
			return p, true
		}
	}
	return Palette{}, false
}

func cellarglass() Palette {
	return Palette{Name: "cellarglass", About: "Bottle green and port by candlelight, with smoke between them", Fabrics: []Swatch{
		{"bottle", Colour{0x07, 0x2e, 0x20}},
		{"port", Colour{0x69, 0x27, 0x33}},
		{"vine", Colour{0x46, 0x60, 0x40}},
		{"smoke", Colour{0x67, 0x7a, 0x85}},
		{"amber", Colour{0xcc, 0x87, 0x30}},
		{"cork", Colour{0xcb, 0xaf, 0x8e}},
		{"candle", Colour{0xe6, 0xcc, 0x8e}},
		{"vellum", Colour{0xf1, 0xeb, 0xd9}},
	}}
}

func duskmere() Palette {
	return Palette{Name: "duskmere", About: "The sky over still water just after sunset", Fabrics: []Swatch{
		{"midnight", Colour{0x26, 0x22, 0x4c}},
		{"damson", Colour{0x59, 0x34, 0x61}},
		{"mulberry", Colour{0x8b, 0x44, 0x68}},
		{"heather", Colour{0x90, 0x6e, 0x98}},
		{"ember", Colour{0xd7, 0x7f, 0x5c}},
		{"apricot", Colour{0xe2, 0xa7, 0x76}},
		{"blush", Colour{0xf1, 0xc9, 0xbb}},
		{"moonrise", Colour{0xf4, 0xea, 0xdb}},
	}}
}

func frostgate() Palette {
	return Palette{Name: "frostgate", About: "Winter grays and ice, and one red berry", Fabrics: []Swatch{
		{"ironwork", Colour{0x23, 0x2b, 0x33}},
		{"pewter", Colour{0x3c, 0x48, 0x53}},
		{"haw", Colour{0xa5, 0x3f, 0x41}},
		{"dovecote", Colour{0x75, 0x80, 0x8b}},
		{"icicle", Colour{0x80, 0xa6, 0xb9}},
		{"breath", Colour{0xb0, 0xc0, 0xcd}},
		{"hoarfrost", Colour{0xcc, 0xdd, 0xe4}},
		{"snowlight", Colour{0xec, 0xf2, 0xf3}},
	}}
}

func kilnyard() Palette {
	return Palette{Name: "kilnyard", About: "Brick, ochre and biscuit ware against cold soot", Fabrics: []Swatch{
		{"soot", Colour{0x20, 0x2e, 0x37}},
		{"oxblood", Colour{0x74, 0x2e, 0x2b}},
		{"brick", Colour{0x9d, 0x47, 0x30}},
		{"rust", Colour{0xba, 0x65, 0x36}},
		{"ochre", Colour{0xc4, 0x92, 0x47}},
		{"biscuit", Colour{0xd6, 0xb3, 0x88}},
		{"slipware", Colour{0xe4, 0xd3, 0xb0}},
		{"bone", Colour{0xf2, 0xee, 0xe1}},
	}}
}

func nettlewick() Palette {
	return Palette{Name: "nettlewick", About: "Hedge greens with bramble and a pale petal", Fabrics: []Swatch{
		{"bramble", Colour{0x48, 0x21, 0x35}},
		{"thicket", Colour{0x2d, 0x48, 0x33}},
		{"nettle", Colour{0x43, 0x67, 0x3f}},
		{"fern", Colour{0x65, 0x82, 0x4c}},
		{"lichen", Colour{0x96, 0x9d, 0x6b}},
		{"dogrose", Colour{0xe3, 0xa5, 0xb2}},
		{"whey", Colour{0xd4, 0xd4, 0xab}},
		{"elderflower", Colour{0xef, 0xef, 0xde}},
	}}
}

func quincecourt() Palette {
	return Palette{Name: "quincecourt", About: "An old garden wall: fig, a teal door, rose brick and ripe quince", Fabrics: []Swatch{
		{"fig", Colour{0x3d, 0x23, 0x3b}},
		{"doorpaint", Colour{0x04, 0x4f, 0x55}},
		{"wallrose", Colour{0x9e, 0x48, 0x56}},
		{"terrace", Colour{0xb6, 0x6b, 0x4e}},
		{"verdigris", Colour{0x62, 0xa8, 0x98}},
		{"quince", Colour{0xd3, 0xbb, 0x54}},
		{"plaster", Colour{0xe9, 0xcf, 0xc1}},
		{"parchment", Colour{0xf0, 0xeb, 0xd9}},
	}}
}

func strawloft() Palette {
	return Palette{Name: "strawloft", About: "Barn blues, hay and sun-bleached fabric", Fabrics: []Swatch{
		{"workcoat", Colour{0x19, 0x2d, 0x54}},
		{"dungaree", Colour{0x29, 0x4c, 0x79}},
		{"smock", Colour{0x45, 0x71, 0x95}},
		{"saddle", Colour{0xb1, 0x7a, 0x50}},
		{"hayrick", Colour{0xc7, 0xa0, 0x49}},
		{"sheaf", Colour{0xd9, 0xbf, 0x6e}},
		{"linseed", Colour{0xdf, 0xd7, 0xba}},
		{"chaff", Colour{0xf2, 0xee, 0xe1}},
	}}
}

func tidewater() Palette {
	return Palette{Name: "tidewater", About: "Gray-green sea, wet sand and one warm stretch of rope", Fabrics: []Swatch{
		{"undertow", Colour{0x14, 0x2b, 0x44}},
		{"slate", Colour{0x35, 0x4c, 0x5c}},
		{"kelp", Colour{0x2f, 0x6f, 0x72}},
		{"shoal", Colour{0x41, 0x8c, 0x94}},
		{"rope", Colour{0xbc, 0x97, 0x6a}},
		{"lagoon", Colour{0x81, 0xc1, 0xc0}},
		{"dune", Colour{0xde, 0xd1, 0xb1}},
		{"foam", Colour{0xe3, 0xf1, 0xef}},
	}}
}

func washline() Palette {
	return Palette{Name: "washline", About: "Faded cottons in a light wind, pegged out against deep blue", Fabrics: []Swatch{
		{"bluebag", Colour{0x1f, 0x2e, 0x5c}},
		{"pinafore", Colour{0x2d, 0x50, 0x75}},
		{"geranium", Colour{0xb1, 0x4d, 0x54}},
		{"mint", Colour{0x5c, 0x94, 0x7c}},
		{"sky-apron", Colour{0x75, 0xa3, 0xc4}},
		{"petticoat", Colour{0xe9, 0x9f, 0xac}},
		{"bonnet", Colour{0xa1, 0xcd, 0xe3}},
		{"primrose", Colour{0xeb, 0xde, 0x9c}},
		{"sheet", Colour{0xf4, 0xf0, 0xe8}},
	}}
}
