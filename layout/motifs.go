package layout

import (
	"strings"

	"eighthturn/internal/measure"
)

func motifStatements() []Statement {
	return []Statement{{
		Word: "motif", Form: "motif name fabric across length down length [pointing degrees] [mirrored]",
		Summary: "a place on a print, from which all pieces of a role are cut alike", Example: "motif rose garden across 4 down 6 1/2 pointing 30",
		Options: []Option{{"across", "across 4"}, {"down", "down 6 1/2"}, {"pointing", "pointing 30"}, {Word: "mirrored"}}, next: `"across", "down", "pointing" or "mirrored"`, defines: true,
		parse: parseMotif, check: (*checker).motifs, after: []string{"palette"},
	}}
}

// motifNode is a place on a print as written.
type motifNode struct {
	Span
	Name         NameNode
	Fabric       NameNode
	Across, Down *LengthNode
	Pointing     *countNode
	Mirrored     Span // the word, empty if it was not there
}

// Motif is a place on a print: the middle of every piece that is cut from it lies there, its center of gravity. The print is seen
// as its photo shows it, its selvages on the left and on the right.
type Motif struct {
	Name         string
	Fabric       int         // index
	Across, Down measure.NM  // from the photo's upper left corner, or from the beginning of the stripes
	Pointing     int         // degrees clockwise, 0 to 359, by which the piece is turned there; at 0 it points up
	Mirror       *MirrorLine // of the print, at which the place of every other piece is mirrored; nil where all are cut alike
	Span         Span
}

// Cut says from which place of its cloth a piece is cut.
type Cut struct {
	Motif     int        // index into Design.Motifs, -1 for none
	Crosswise bool       // without a motif: strips are cut from selvage to selvage, else along them
	Alike     bool       // all pieces have the stripes at one place, From
	From      measure.NM // how far within the repeat the wide end lies, or the middle of a piece that stripes run along
}

func parseMotif(p *parser, c *cursor, keyword Span) {
	c.newField()
	name, ok := c.newName("a motif's name", false)
	if !ok {
		c.dropRest()
		return
	}
	n := &motifNode{Name: name}
	p.tree.Motifs = append(p.tree.Motifs, n)
	c.newField()
	n.Fabric, ok = c.nameOf("the fabric that " + quote(name.Text) + " is on")
	if ok {
		ok = c.motifOptions(n)
	}
	c.dropIfFaulty(!ok)
	n.Span = keyword.To(c.last())
}

// motifOptions takes where a motif lies.
func (c *cursor) motifOptions(n *motifNode) bool {
	faults := len(c.list)
	for !c.done() && len(c.list) == faults {
		switch word := strings.ToLower(c.peek()); {
		case word == "across" && n.Across == nil:
			n.Across = c.lengthOption("how far across the motif lies")
		case word == "down" && n.Down == nil:
			n.Down = c.lengthOption("how far down the motif lies")
		case word == "pointing" && n.Pointing == nil:
			c.newField()
			c.word()
			if turn, ok := c.count("degrees clockwise from the top of the photo"); ok {
				n.Pointing = &turn
			}
		case word == "mirrored" && n.Mirrored.Empty():
			c.newField()
			n.Mirrored = c.word()
		default:
			return true
		}
	}
	if len(c.list) == faults && (n.Across == nil || n.Down == nil) {
		c.fault(c.here(), "for example motif "+n.Name.Text+" "+n.Fabric.Text+" across 4 down 6 1/2", "expected how far across and down %s lies, found the end of the line", quote(n.Name.Text))
	}
	return len(c.list) == faults
}

// fullTurn is that of a motif, in degrees.
const fullTurn = 360

// motifs makes the motifs, once every fabric has its stripes.
func (c *checker) motifs() {
	c.striped()
	for _, n := range c.tree.Motifs {
		if !c.define(n.Name, aMotif, len(c.design.Motifs)) {
			continue
		}
		m := Motif{Name: n.Name.Text, Span: n.Span}
		if n.Fabric.Empty() { // could not be read
			c.design.Motifs = append(c.design.Motifs, m)
			continue
		}
		if f, ok := c.fabric(n.Fabric, "a motif lies on a fabric"); ok {
			m.Fabric = f
			c.motifPlace(n, &m)
			if !n.Mirrored.Empty() {
				c.mirrorMotif(n, &m)
			}
		}
		if n.Pointing != nil {
			if m.Pointing = n.Pointing.Count; m.Pointing >= fullTurn {
				c.fault(n.Pointing.Span, "", "a motif points by 0 to %d degrees, found %d", fullTurn-1, m.Pointing)
			}
		}
		c.design.Motifs = append(c.design.Motifs, m)
	}
}

// motifPlace is where a motif lies on its print.
func (c *checker) motifPlace(n *motifNode, m *Motif) {
	f := &c.design.Fabrics[m.Fabric]
	if f.Photo == nil && f.Stripes == nil {
		e, _ := c.names.find(n.Fabric)
		c.fault(n.Fabric.Span, "write a fabric that has a photo (swatch) or stripes", "a motif is a place on a print, and %s is one color", quote(n.Fabric.Text)).note(e.span, "defined here")
		return
	}
	across, down := MaxCloth, MaxCloth
	if f.Photo != nil {
		across, down = f.Photo.Shows()
	}
	if f.Photo != nil && f.Photo.Repeat != nil {
		across, down = max(across, f.Photo.Repeat.Across), max(down, f.Photo.Repeat.Down)
	}
	m.Across, m.Down = c.placeOnPrint(n.Across, across, "across"), c.placeOnPrint(n.Down, down, "down")
}

// placeOnPrint is how far a motif lies from an edge of its photo.
func (c *checker) placeOnPrint(n *LengthNode, most measure.NM, way string) measure.NM {
	if n == nil {
		return 0
	}
	nm := n.In(c.design.Units).NM()
	if nm < 0 || nm > most {
		c.fault(n.Span, "count from the photo's upper left corner", "the photo shows %s %s, and the motif lies at %s", c.text(most), way, c.text(nm))
		return 0
	}
	return nm
}
