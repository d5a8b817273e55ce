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

// ours is a palette of All; a fabric is its name and its color.
func ours(name, about string, fabrics ...string) Palette {
	p := Palette{Name: name, About: about}
	for _, f := range fabrics {
		word, hex, _ := strings.Cut(f, " ")
		c, _ := Parse(hex) // TestCollection says that it is one
		p.Fabrics = append(p.Fabrics, Swatch{word, c})
	}
	return p
}

func cellarglass() Palette {
	return ours("cellarglass", "Bottle green and port by candlelight, with smoke between them",
		"bottle #072e20",
		"port #692733",
		"vine #466040",
		"smoke #677a85",
		"amber #cc8730",
		"cork #cbaf8e",
		"candle #e6cc8e",
		"vellum #f1ebd9")
}

func duskmere() Palette {
	return ours("duskmere", "The sky over still water just after sunset",
		"midnight #26224c",
		"damson #593461",
		"mulberry #8b4468",
		"heather #906e98",
		"ember #d77f5c",
		"apricot #e2a776",
		"blush #f1c9bb",
		"moonrise #f4eadb")
}

func frostgate() Palette {
	return ours("frostgate", "Winter grays and ice, and one red berry",
		"ironwork #232b33",
		"pewter #3c4853",
		"haw #a53f41",
		"dovecote #75808b",
		"icicle #80a6b9",
		"breath #b0c0cd",
		"hoarfrost #ccdde4",
		"snowlight #ecf2f3")
}

func kilnyard() Palette {
	return ours("kilnyard", "Brick, ochre and biscuit ware against cold soot",
		"soot #202e37",
		"oxblood #742e2b",
		"brick #9d4730",
		"rust #ba6536",
		"ochre #c49247",
		"biscuit #d6b388",
		"slipware #e4d3b0",
		"bone #f2eee1")
}

func nettlewick() Palette {
	return ours("nettlewick", "Hedge greens with bramble and a pale petal",
		"bramble #482135",
		"thicket #2d4833",
		"nettle #43673f",
		"fern #65824c",
		"lichen #969d6b",
		"dogrose #e3a5b2",
		"whey #d4d4ab",
		"elderflower #efefde")
}

func quincecourt() Palette {
	return ours("quincecourt", "An old garden wall: fig, a teal door, rose brick and ripe quince",
		"fig #3d233b",
		"doorpaint #044f55",
		"wallrose #9e4856",
		"terrace #b66b4e",
		"verdigris #62a898",
		"quince #d3bb54",
		"plaster #e9cfc1",
		"parchment #f0ebd9")
}

func strawloft() Palette {
	return ours("strawloft", "Barn blues, hay and sun-bleached fabric",
		"workcoat #192d54",
		"dungaree #294c79",
		"smock #457195",
		"saddle #b17a50",
		"hayrick #c7a049",
		"sheaf #d9bf6e",
		"linseed #dfd7ba",
		"chaff #f2eee1")
}

func tidewater() Palette {
	return ours("tidewater", "Gray-green sea, wet sand and one warm stretch of rope",
		"undertow #142b44",
		"slate #354c5c",
		"kelp #2f6f72",
		"shoal #418c94",
		"rope #bc976a",
		"lagoon #81c1c0",
		"dune #ded1b1",
		"foam #e3f1ef")
}

func washline() Palette {
	return ours("washline", "Faded cottons in a light wind, pegged out against deep blue",
		"bluebag #1f2e5c",
		"pinafore #2d5075",
		"geranium #b14d54",
		"mint #5c947c",
		"sky-apron #75a3c4",
		"petticoat #e99fac",
		"bonnet #a1cde3",
		"primrose #ebde9c",
		"sheet #f4f0e8")
}
