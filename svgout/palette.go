package svgout

import "fmt"

// palette defines each fabric's color as one paint, where that is asked for: a gradient of a single stop, which is one flat color
// (SVG 1.1, section 13.2.4). Whatever shows the fabric refers to it, what lies beneath the seams too, so that a fabric is given
// another color in one place; drawing programs list such paints as swatches.
func (d *document) palette() {
	if !d.OnePaint {
		return
	}
	fmt.Fprintln(d.out, "<defs>")
	for f, p := range d.Paints {
		fmt.Fprintf(d.out, `<linearGradient id="%s" inkscape:swatch="solid" inkscape:label="%s"><stop offset="0" stop-color="%s"/></linearGradient>`+"\n",
			d.paintID(f), escaped(d.Top.Fabrics[f].Name), p.Colour.Hex())
	}
	fmt.Fprintln(d.out, "</defs>")
}

func (d *document) paintID(fabric int) string { return fmt.Sprintf("%spaint-%d", d.prefix, fabric+1) }
