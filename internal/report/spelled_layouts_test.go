package report

import (
	"strings"
	"testing"

	"eighthturn/internal/measure"
	"eighthturn/internal/plan/contrast"
	"eighthturn/internal/plan/orders"
	"eighthturn/internal/quilt"
	"eighthturn/palettes"
)

// spelledOut is a small layout whose documents somebody has read line by line.
type spelledOut struct {
	name, text string
	with       func(*Plans) // what is asked for beside the usual; nil for nothing
	drawn      string       // the titles of figures that are spelled out, too
	few        bool         // of the documents those alone that tell more of this layout than of the others
}

const sixFabrics = "fabric navy #1f3350\nfabric rust #b5532a\nfabric teal #2f7d83\nfabric plum #4b2440\nfabric moss #5d6433\nfabric cream #f4ead7\n"

// grown is a layout of blocks of one color each, so many beside and below one another.
func grown(across, down int, statements string) string {
	return "side 3\n" + sixFabrics + "block P plain piece plum\nblock M plain piece moss\ngrid\n P M\n" + statements + "repeat across " + number(across/2) + " down " + number(down) + "\n"
}

// spelledLayouts are small layouts that have together what reports tell of.
func spelledLayouts(t *testing.T) []spelledOut {
	return []spelledOut{
		{name: "web", drawn: ".", text: "title \"Four webs\"\ndesigner \"Ada Quill\"\npattern-number \"Q-7\"\npattern-date \"March 2027\"\nstrip 4\n" + sixFabrics +
			"block W web wedges navy rust kites cream\nblock F floating wedges teal background cream\ngrid\n W F\n F W\nborder 2 plum corners rust\nbinding 2 1/2 moss\n"},
		{name: "ring", drawn: "blocks in rows|borders|placement|block R, step 1|block H", with: lettered, text: "side 6\nlevel \"patient\"\n" + sixFabrics +
			"block R ring wedges rust teal corners cream\nblock P plain piece plum\nblock H halves pieces navy cream\ngrid\n R P H\n P R .\nsash 1 moss posts rust around\nborder 1 navy\nborder 2 teal corners plum\nborder 3 rust\nborder 1 1/2 cream\nbinding 2 1/2 navy\nbacking moss\nbatting\n"},
		{name: "columns", drawn: "block T|in columns|Cutting map", with: func(p *Plans) { p.Cutting.Copies, p.BothShop, p.Name = 3, true, "columns" }, text: "units cm\nside 13\n" + sixFabrics +
			"block W web wedges navy kites cream\nblock T tumblers pieces teal rust line 15\ngrid\n W W T W W\n W W T W W\nborder 6 plum lengthwise\nbinding 6 navy\nbacking cream\n"},
		{name: "tumblers", drawn: "columns together", text: "strip 4\n" + sixFabrics + "block T tumblers pieces navy rust teal line 6\nblock U tumblers pieces plum cream line 6\ngrid\n T . U\n T U U\nborder 2 moss\n"},
		{name: "dealt", drawn: "^$", text: "strip 4\n" + sixFabrics + "scraps darks navy rust teal plum moss by set\nstrip-set drift darks 1 3/4 darks 1 1/2 darks 1 3/4 sets 5\nwebs drift / reversed drift\nblock W web kites cream\ngrid\n W W W W\n W W W W\n W W W W\n W W W W\n"},
		{name: "many-sets", few: true, text: "strip 4\n" + sixFabrics + "scraps darks navy rust teal plum moss by set\nstrip-set drift darks 1 cream 1 darks 1 cream 1 cream 1 cream rest sets 9\nwebs drift / reversed drift\nblock W web kites cream\ngrid\n W W W W\n W W W W\n W W W W\n W W W W\n"},
		{name: "strip-sets", drawn: "strip set", text: shores, with: func(p *Plans) { p.Nearby = orders.Nearby(shores, nil, p.Top) }},
		{name: "alike-sets", few: true, with: func(p *Plans) { p.Cutting.Copies = 2 }, text: "strip 4\n" + sixFabrics + "strip-set dune rust 1 1/2 cream rest rust 1 1/2\nstrip-set reef teal 1 1/2 plum rest\nblock W web wedges dune reef kites cream\nblock V web wedges reversed reef kites cream\nblock P plain piece moss\ngrid\n W V P\n V W P\n"},
		{name: "precuts", drawn: "Cutting map", text: strings.Replace(strings.Replace(strings.Replace(sixFabrics, "#1f3350", "#1f3350 from 3 fat-quarters", 1), "#b5532a", "#b5532a from 20 squares 10", 1), "#2f7d83", "#2f7d83 \"waves\" from 30 strips 2 1/2", 1) +
			"strip 4\nblock W web wedges navy kites rust\nblock P halves pieces teal plum\ngrid\n W W W\n W W W\n P P W\nborder 2 cream\nbinding 2 1/2 moss\n"},
		{name: "cut-already", with: func(p *Plans) { p.Exact = true }, text: "strip 4\n" + strings.Replace(strings.Replace(strings.Replace(sixFabrics, "#4b2440", "#4b2440 on-hand 1/4 yd", 1), "#5d6433", "#5d6433 on-hand 2 yd usable-width 42", 1), "#1f3350", "#1f3350 on-hand 3/8 yd", 1) +
			"strip-set shore rust 1 3/4 cream rest\non-hand wedges reversed shore 8\non-hand kites cream 12\non-hand wedges navy 5\non-hand wedges rust 3\nblock W web wedges shore reversed shore kites cream\nblock V web wedges navy teal kites cream\ngrid\n W V W V\n V W V W\nborder 4 plum\nborder 3 moss\n"},
		{name: "print", drawn: "Cutting map", with: func(p *Plans) { p.Top = photographed(t, printedLayout) }, text: printedLayout},
		{name: "stripes", drawn: "Cutting map", text: "strip 4\n" + sixFabrics + "fabric awning stripes navy 3/4 cream 1/2 rust 1 1/4\nfabric deck stripes cream 1/2 teal 1/2 crosswise\nmotif arrow awning across 3/8 down 0 pointing 45\n" +
			"block R ring wedges awning lengthwise from 1/2 awning crosswise from 3/8 corners navy\nblock S ring wedges arrow deck corners cream\nblock T ring wedges awning lengthwise corners plum\ngrid\n R S\n S T\nborder 2 deck corners arrow\n"},
		{name: "sizes", with: func(p *Plans) { p.Line = func(at int) int { return at/20 + 1 } }, text: "title \"Six ways\"\n" + strings.Replace(sizesLayout, "border 2 navy", "border 2 navy corners cream", 1) + "fabric dusk #802010 \"evening\"\ncolorway night navy #3a2040 cream #908890\ncolorway day navy dusk\ncolorway odd cream navy navy cream\ncolorway pale navy #d0d0d0\nsize queen across 8 down 9\nsize king across 10 down 10 border 2 1/2 6\nsize metric side 15 units cm\n"},
		{name: "loose", few: true, drawn: "rows", text: "side 6\n" + sixFabrics + "block P plain piece navy\nblock H halves pieces rust cream\ngrid\n P . H .\n . . . .\n H . P P\nsash 1 teal\n"},
		{name: "one-block", drawn: ".", text: "side 6\nfabric navy #1f3350\nblock P plain piece navy\ngrid\n P\n"},
		{name: "scraps", few: true, text: "side 5\n" + sixFabrics + "fabric sky #d8e4ee\nfabric oat #e8dcc0\nfabric ink #101018\nscraps darks navy rust teal plum moss ink\nscraps lights cream sky oat\nblock W web wedges darks kites lights\nblock R ring wedges darks lights corners lights\nblock S star wedges ink kites lights\nblock H halves pieces darks lights\ngrid\n W W S H\n W W S H\n R R S H\n R R H H\nborder 2 navy\nbinding 2 1/4 ink\n"},
		{name: "every-border", few: true, text: "side 4\n" + sixFabrics + "block A floating-star kites navy wedges rust background cream\nblock B web wedges teal kites cream\nblock C star wedges plum kites cream\nblock D plain piece moss\ngrid\n A B C\n B C D\n C D A\nborder 1 navy corners cream\nborder 1 rust\nborder 2 teal lengthwise\nborder 1 1/2 plum\nborder 1 moss\nbacking cream\nbinding 2 navy\nseam 3/8\n"},
		{name: "tried", few: true, with: func(p *Plans) {
			p.Tries = []contrast.Try{{Fabric: 0, Colour: palettes.Colour{R: 0xf0, G: 0xe8, B: 0xd8}}}
			p.Contrast = contrast.Options{Contrast: &contrast.Contrast{Soft: 9, Clear: 22}, Distance: 78 * measure.Inch}
		}, text: "strip 4\n" + sixFabrics + "block W web wedges navy kites cream\ngrid\n W W\n W W\nborder 2 rust\n"},
		{name: "parted", few: true, text: "side 6\n" + sixFabrics + "block P plain piece navy\nblock H halves pieces rust cream\ngrid\n P . H .\n . . . .\n H . P P\n"},
		{name: "odd", few: true, with: func(p *Plans) { p.Cutting.Copies = 2 }, text: "side 6\n" + sixFabrics + "strip-set shore rust equal cream equal teal equal\nblock W web wedges shore kites cream\nblock R ring wedges shore corners cream\nblock F floating wedges navy teal background cream\n" +
			"grid\n F W W W F\n W W W W W\n F W R W F\nbinding 2 1/2 plum\nbacking plum\nsize lap\n"},
		{name: "labels", few: true, text: "side 3\n" + sixFabrics + "block A halves pieces navy rust\nblock B like A pieces rust teal\nblock C like A pieces teal plum\nblock D like A pieces plum moss\nblock E like A pieces moss cream\nblock G like A pieces navy teal\nblock H like A pieces navy plum\nblock I like A pieces navy moss\nblock J like A pieces navy cream\nblock K like A pieces rust plum\nblock L like A pieces rust moss\nblock M like A pieces rust cream\nblock é like A pieces teal moss\nblock O like A pieces teal cream\n" +
			"grid\n A B C D E G H\n I J K L M é O\nbacking navy\n"},
		{name: "kits", with: func(p *Plans) { p.Cutting.Copies, p.Cutting.LeastCloth = 2, true }, text: "strip 4\n" + sixFabrics + "scraps lights cream moss plum\nstrip-set shore rust 1 1/4 cream 1 1/4 teal 1 1/4 navy 1 1/4 lights rest\nblock W web wedges shore kites cream\ngrid\n W W\n W W\nborder 12 rust\n"},
		{name: "stray", few: true, text: "strip 4\n" + sixFabrics + "fabric ink #101018\nfabric oat #e8dcc0\nfabric sky #d8e4ee\nscraps darks navy plum ink oat rust\nscraps lights cream sky\nblock R ring wedges darks lights corners lights\ngrid\n R R R\n R R R\n R R R\n"},
		{name: "dealt-five", few: true, text: "strip 4\n" + sixFabrics + "scraps darks navy rust teal plum moss by set\nstrip-set drift darks 1 cream 1 1/4 cream 1 1/4 cream 1 1/4 cream rest sets 3\nwebs drift\nblock W web kites cream\ngrid\n W W W W\n W W W W\n W W W W\n W W W W\n"},
		{name: "grown", few: true, text: grown(24, 22, "")},
		{name: "grown-sashes", few: true, text: grown(6, 5, "sash 1/2 cream\n")},
	}
}

const shores = "strip 4\n" + sixFabrics + "strip-set shore rust 1 3/4 cream 1 1/2 teal 1 3/4\nstrip-set cove navy 2 1/4 cream rest\nblock W web wedges shore kites cream\nblock V web wedges cove kites plum\nblock F floating wedges moss background cream\n" +
	"grid\n W W\n V F\n"

const printedLayout = "side 6\nfabric navy #1f3350\nfabric garden stripes navy 3 white 3\nmotif rose garden across 4 down 3\nmotif bud garden across 7 down 5 pointing 45\n" +
	"block A ring wedges rose corners navy\nblock B ring wedges bud corners garden\ngrid\n A B A\n B A B\nborder 3 garden corners rose\n"

func lettered(p *Plans) {
	for i := range p.Top.Fabrics {
		p.Letters = append(p.Letters, string(rune('A'+i)))
	}
}

// laidOut is a layout's plans.
func (c *spelledOut) laidOut(top *quilt.Top) *Plans {
	p := &Plans{Top: top}
	if c.with != nil {
		c.with(p)
	}
	return p
}
