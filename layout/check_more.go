package layout

import (
	"fmt"
	"slices"
	"strings"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
	"eighthturn/palettes"
)

// palettes brings in the fabrics of palettes behind the layout's own.
func (c *checker) palettes() {
	for _, n := range c.tree.Palettes {
		p, _ := palettes.Find(strings.ToLower(n.Name.Text))
		for _, s := range p.Fabrics {
			c.paletteFabric(n, s)
		}
	}
}

func (c *checker) paletteFabric(n *PaletteNode, s palettes.Swatch) {
	key := foldName(s.Name)
	if e, ok := c.names[key]; ok {
		if !e.palette {
			c.warn(e.span, "", "this fabric %s stands for the one of the palette %s", quote(s.Name), quote(n.Name.Text))
		}
		return
	}
	c.names[key] = entry{fabric: len(c.design.Fabrics), set: -1, pool: -1, span: n.Span, palette: true}
	c.order = append(c.order, s.Name)
	c.design.Fabrics = append(c.design.Fabrics, Fabric{Name: s.Name, Colour: s.Colour, UsableWidth: c.design.UsableWidth, Span: n.Span})
}

// scraps makes the pools; a name that was a pool's already adds to it.
func (c *checker) scraps() {
	for _, n := range c.tree.Scraps {
		at := len(c.design.Pools)
		if e, ok := c.names[n.Name.key()]; ok && e.pool >= 0 {
			at = e.pool
		} else if !c.define(n.Name, "pool of scraps", entry{fabric: -1, set: -1, pool: at}) {
			continue
		} else {
			c.design.Pools = append(c.design.Pools, Pool{Name: n.Name.Text, Span: n.Span})
		}
		c.fillPool(&c.design.Pools[at], n)
	}
}

func (c *checker) fillPool(p *Pool, n *ScrapsNode) {
	for _, name := range n.Fabrics {
		if f, ok := c.fabric(name, "a pool is made of fabrics"); ok {
			if slices.Contains(p.Fabrics, f) {
				c.warn(name.Span, "", "%s is in the pool %s already", quote(name.Text), quote(p.Name))
				continue
			}
			p.Fabrics = append(p.Fabrics, f)
		}
	}
	if n.By != nil {
		p.By = DealtBy(slices.Index([]string{"piece", "block", "web"}, n.By.Word))
	}
	if n.Deal != nil {
		p.Deal = n.Deal.Count
	}
}

// bandOf looks up what a band of a strip set is cut from.
func (c *checker) bandOf(b BandNode) (Band, bool) {
	band := Band{Fabric: -1, Pool: -1, Rest: b.Cut == nil}
	e, ok := c.find(b.Fabric)
	switch {
	case !ok:
		return band, false
	case e.set >= 0:
		c.fault(b.Fabric.Span, "write a fabric, for example "+c.someFabric(0), "a strip set is sewn from fabrics, and %s is a strip set", quote(b.Fabric.Text)).note(e.span, "defined here")
		return band, false
	}
	band.Fabric, band.Pool = e.fabric, e.pool
	return band, true
}

// likes gives blocks that are like others their kind and the roles that they lack.
func (c *checker) likes() {
	byLabel := map[string]*BlockNode{}
	for _, n := range c.tree.Blocks {
		if _, ok := byLabel[n.Label.key()]; !ok {
			byLabel[n.Label.key()] = n
		}
	}
	state := map[*BlockNode]likeState{}
	for _, n := range c.tree.Blocks {
		c.like(n, byLabel, state)
	}
}

type likeState uint8

const (
	likeOpen likeState = iota
	likeBusy
	likeDone
)

func (c *checker) like(n *BlockNode, byLabel map[string]*BlockNode, state map[*BlockNode]likeState) {
	if n.Like == nil || state[n] != likeOpen {
		return
	}
	state[n] = likeBusy
	defer func() { state[n] = likeDone }()
	model, ok := byLabel[n.Like.key()]
	if !ok {
		if c.noLabel[n.Like.key()] || c.spoilt[n.Like.key()] || c.labelOfNamelessBlock(n.Like.Text) {
			n.Broken = true
			return
		}
		var known []string
		for _, b := range c.guessable(c.tree.Blocks) {
			if b != n {
				known = append(known, b.Label.Text)
			}
		}
		c.noLabel[n.Like.key()] = true
		c.fault(n.Like.Span, c.labelHint(n.Like.Text, known), "no block is called %s", quote(n.Like.Text))
		n.Broken = true
		return
	}
	if model == n || state[model] == likeBusy {
		c.fault(n.Like.Span, "give one of them its kind", "block %s is like %s, which comes back to itself", quote(n.Label.Text), quote(model.Label.Text))
		n.Broken = true
		return
	}
	c.like(model, byLabel, state)
	c.takeFrom(n, model)
}

// takeFrom completes a block from the one that it is like.
func (c *checker) takeFrom(n, model *BlockNode) {
	n.Kind, n.Broken = model.Kind, n.Broken || model.Broken
	if n.Kind == nil {
		return
	}
	own := n.Roles
	n.Roles = nil
	for _, r := range own {
		if r.Index = n.Kind.Role(strings.ToLower(r.Word.Text)); r.Index < 0 {
			c.wrongRole(n.Kind, r.Word)
			n.Broken = true
			continue
		}
		n.Roles = append(n.Roles, r)
	}
	for _, r := range model.Roles {
		if !slices.ContainsFunc(n.Roles, func(o RoleNode) bool { return o.Index == r.Index }) {
			n.Roles = append(n.Roles, r)
		}
	}
	if n.Line == nil && n.About == nil {
		n.Line, n.About = model.Line, model.About
	}
}

func (c *checker) sash() {
	if n := c.tree.Sash; n != nil {
		e := c.edging(n, "a sash")
		c.design.Sash = &e
	}
}

// warnParted warns of webs that sashes part.
func (c *checker) warnParted() {
	d := &c.design
	what := ""
	for _, w := range d.WebCentres {
		if w.Tips > 2 {
			what = "web"
		}
	}
	for _, s := range d.StarCentres {
		if s.Kites > 1 && what == "" {
			what = "star"
		}
	}
	d.WebCentres, d.StarCentres = nil, nil
	if what != "" {
		c.warn(d.Sash.Span, "leave the sashes out where webs should close", "sashes part every %s: its pieces no longer meet", what)
	}
}

// webTable looks up the table of webs and sees that every wedge has its fabric.
func (c *checker) webTable() {
	w := c.tree.Webs
	d := &c.design
	if w == nil || len(w.Values) > 0 || w.Broken || len(w.Rows) == 0 {
		return
	}
	d.WebTable = make([]Fill, (d.Columns+1)*(d.Rows+1))
	for i := range d.WebTable {
		d.WebTable[i] = noFill
	}
	if len(w.Rows) != d.Rows-1 {
		c.fault(w.Span.firstBytes(len("webs")), "write one row for each row of web centres inside the quilt", "the table of webs has %s, but the quilt has %s of web centres inside it", plural(len(w.Rows), "row"), plural(d.Rows-1, "row"))
		return
	}
	before := len(c.list)
	for i, row := range w.Rows {
		c.webTableRow(i+1, row)
	}
	if len(c.list) > before || w.Broken {
		return
	}
	if !c.tree.sizeReported {
		c.fitTable()
	}
	c.tableGaps()
}

// webTableRow looks up the values of the centres in one row of corners.
func (c *checker) webTableRow(y int, row WebRowNode) {
	d := &c.design
	var corners []int
	for x := 1; x < d.Columns; x++ {
		if (x+y)&1 == 1 == d.StarFirst {
			corners = append(corners, y*(d.Columns+1)+x)
		}
	}
	if len(corners) != len(row.Values) {
		c.fault(row.Span, "write one value for each, or . for the blocks' own", "this row of the table of webs has %s for %s between rows %d and %d of the quilt", plural(len(row.Values), "value"), plural(len(corners), "web centre"), y, y+1)
		return
	}
	for i, v := range row.Values {
		if v.Own {
			continue
		}
		f := c.fill(v.Value, true, "webs")
		if d.WebTable[corners[i]] = f; !f.Given() {
			c.tree.Webs.Broken = true
		}
	}
}

// tableGaps reports blocks without wedges of their own at web centres that the table gives
// none, once for each block.
func (c *checker) tableGaps() {
	d := &c.design
	reported := map[int]bool{}
	for i, cell := range d.Cells {
		if cell.Block < 0 || reported[cell.Block] {
			continue
		}
		b := &d.Blocks[cell.Block]
		for _, p := range b.Kind.Turned(int(cell.Turns)) {
			role := &b.Kind.Roles[p.Role]
			if !role.OfWebs || len(b.Fills[p.Role]) > 0 {
				continue
			}
			if _, ok := d.Web(i, p); !ok {
				reported[cell.Block] = true
				c.fault(c.tree.Blocks[cell.Block].Label.Span, "add "+role.Name+" "+c.someFabric(0), "block %s has no %s of its own, and webs gives none to its web at %s", quote(b.Label), role.Name, c.place(i))
				break
			}
		}
	}
}

// Web is what `webs` gives a wedge of a cell by the web centre that its tip stands on.
func (d *Design) Web(cell int, p blocks.Piece) (Fill, bool) {
	x, y := cell%d.Columns, cell/d.Columns
	tip := p.Outline[0]
	if tip.X == blocks.Full {
		x++
	}
	if tip.Y == blocks.Full {
		y++
	}
	if d.WebTable != nil {
		f := d.WebTable[y*(d.Columns+1)+x]
		return f, f.Given()
	}
	if len(d.Webs) == 0 {
		return Fill{}, false
	}
	return d.Webs[webSort(y)%len(d.Webs)], true
}

// webSort is which of two sorts, set like a draughtboard, a web centre belongs to. Every
// other corner of the grid is a web centre, so the nearest ones lie a row up or down and
// the sorts alternate by rows; the first row inside the quilt is of the first sort.
func webSort(y int) int { return 1 - y&1 }

// runs finds the columns of column blocks and divides them.
func (c *checker) runs() {
	d := &c.design
	reported := map[int]bool{}
	for i := range d.Cells {
		cell := &d.Cells[i]
		if cell.Block < 0 || d.Blocks[cell.Block].Kind == nil || !d.Blocks[cell.Block].Kind.Column || cell.Run >= 0 {
			continue
		}
		run := Run{Block: cell.Block, X: i % d.Columns, Y: i / d.Columns}
		for at := i; at < len(d.Cells) && d.Cells[at].Block == cell.Block && (run.Cells == 0 || d.Sash == nil); at += d.Columns {
			d.Cells[at].Run = len(d.Runs)
			run.Cells++
		}
		divided, ok := c.divide(run, reported[run.Block])
		reported[run.Block] = reported[run.Block] || !ok
		run.Divided = divided
		d.Runs = append(d.Runs, run)
	}
}

// divide finds how a column is divided; quiet where the block was reported already.
func (c *checker) divide(run Run, quiet bool) (blocks.Column, bool) {
	d := &c.design
	b := &d.Blocks[run.Block]
	n := c.tree.Blocks[run.Block]
	length := measure.NM(run.Cells) * d.SideFinished
	strip := d.SideFinished + 2*d.Seam
	switch {
	case quiet || n.Broken:
		return blocks.Column{}, false
	case b.line != nil && b.about != nil:
		c.fault(b.about.Span, "keep one of the two", "line and about cannot both be given, since each follows from the other").note(b.line.Span, "the other one")
		return blocks.Column{}, false
	case b.line == nil && b.about == nil:
		c.fault(n.Label.Span, "for example about "+measure.Number(measure.Nearest(3*d.SideFinished/4, d.Units.Unit()/2), d.Units), "block %s says neither the line of the wedge rule nor about how long its pieces are", quote(b.Label))
		return blocks.Column{}, false
	case b.line != nil:
		line := b.line.In(d.Units).NM()
		mean := blocks.MeanByLine(line, strip, d.Seam)
		col, err := blocks.ByLine(length, d.SideFinished, mean)
		return col, c.divided(b.line.Span, err, strip)
	}
	about := b.about.In(d.Units).NM()
	if b.about.Cut {
		about -= 2 * d.Seam
	}
	if about < MinFinished {
		c.fault(b.about.Span, "write a longer length", "pieces of %s cannot be cut", c.text(about))
		return blocks.Column{}, false
	}
	col, err := blocks.ByLength(length, d.SideFinished, about)
	return col, c.divided(b.about.Span, err, strip)
}

// divided reports why a column could not be divided.
func (c *checker) divided(at Span, err error, strip measure.NM) bool {
	if err == nil {
		return true
	}
	d := &c.design
	e := err.(*blocks.ColumnError)
	if e.Needed > 0 {
		least := measure.RoundUp(blocks.LineFor(float64(e.Needed+2*d.Seam), strip, d.Seam), d.Units.Unit()/8)
		c.fault(at, fmt.Sprintf("line %s or more, or about %s or more", measure.Number(least, d.Units), measure.Number(measure.RoundUp(e.Needed+2*d.Seam, d.Units.Unit()/4), d.Units)),
			"in columns %s wide such pieces have no narrow side left: their mean length must be more than %s", c.text(d.SideFinished), c.text(e.Needed))
		return false
	}
	c.fault(at, "write a smaller line, or about", "a column of %s is too short for such a piece and its two end pieces", c.text(e.Short))
	return false
}

// words takes what the printed pattern says.
func (c *checker) words() {
	d, t := &c.design, c.tree
	d.Backing = -1
	for _, text := range []struct {
		from *TextNode
		to   *string
	}{{t.Designer, &d.Designer}, {t.Level, &d.Level}, {t.Copyright, &d.Copyright}} {
		if text.from != nil {
			*text.to = text.from.Text
		}
	}
	for _, n := range t.Notes {
		d.Notes = append(d.Notes, NoteText{c.notePlace(n), n.Text.Text})
	}
	if t.Backing != nil {
		d.Backing, _ = c.fabric(*t.Backing, "a backing is cut from one fabric")
	}
	d.Batting = t.Batting != nil
	if t.Contrast != nil {
		d.Contrast = &Contrast{t.Contrast.Soft, t.Contrast.Clear}
	}
}

// notePlace is the place that a note names: a block's label or a part of the pattern.
func (c *checker) notePlace(n *NoteNode) string {
	if n.Place == nil {
		return ""
	}
	if i, ok := c.labels[n.Place.key()]; ok {
		return c.design.Blocks[i].Label
	}
	for _, part := range noteParts() {
		if strings.EqualFold(part, n.Place.Text) {
			return part
		}
	}
	if c.spoilt[n.Place.key()] || c.noLabel[n.Place.key()] || c.unlabelled > 0 {
		return ""
	}
	c.fault(n.Place.Span, "parts are: "+strings.Join(noteParts(), ", "), "%s is neither a block nor a part of the pattern", quote(n.Place.Text))
	return ""
}
