package preview

import (
	"bytes"
	"encoding/json"
	"strconv"
	"strings"

	"eighthturn/internal/measure"
	"eighthturn/internal/plan/contrast"
	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/quilt"
	"eighthturn/internal/report"
	"eighthturn/layout"
)

// picture is one top made ready for the page, in parts that are sent only if the page lacks
// them.
type picture struct {
	revision                int
	top                     *quilt.Top
	written                 *quilt.Top // the top in the fabrics that are written, where it is in others
	base                    *quilt.Top // the quilt as it is written, in its size too
	tries                   []contrast.Try
	source                  *layout.Source
	epoch                   int
	templates, looks, joins []json.RawMessage // of the numbering, as far as this picture needs
	cells                   []int32           // look of each cell, row by row; -1 where there is nothing
	quilt                   json.RawMessage   // what is true of the whole
	fabrics                 json.RawMessage
	colorways               json.RawMessage // those of the layout; see colorway
	grid                    json.RawMessage // grid lines across and down, in units
	loose                   json.RawMessage // patches that keep to no cell
	sources                 json.RawMessage // lines of the layout
}

// quiltInfo is what is true of the whole top.
type quiltInfo struct {
	Title   string `json:"title"`
	Size    string `json:"size"` // finished, in words
	Blocks  string `json:"blocks"`
	Side    int64  `json:"side"` // of a block
	Width   int64  `json:"width"`
	Height  int64  `json:"height"`
	Columns int    `json:"columns"`
	Rows    int    `json:"rows"`
	Patches int    `json:"patches"`
	Holes   bool   `json:"holes"` // there are places with nothing in them
	Away    string `json:"away"`  // how far off the squint view stands, in words
}

// fabric is a fabric as the page lists it.
type fabric struct {
	Name   string  `json:"name"`
	Print  string  `json:"print,omitempty"`
	Colour string  `json:"colour"`
	Grey   string  `json:"grey"`
	Value  float64 `json:"value"` // CIE L*, one decimal
	Share  float64 `json:"share"` // of the top, percent, one decimal
	Line   int     `json:"line"`

	Seen      map[string]string `json:"seen"`                // its colour by view of colour vision
	Patterned bool              `json:"patterned,omitempty"` // it is a print or striped, and no plain color
}

// grid is where the cells lie.
type grid struct {
	X []int64 `json:"x"` // columns + 1 lines
	Y []int64 `json:"y"`
}

// pictureBuilder makes one picture.
type pictureBuilder struct {
	*quilt.Top
	numbers   *numbering
	source    *layout.Source
	out       *picture
	runs      []run   // of cells, then of single patches
	items     []int32 // template of each run
	itemOf    []int32 // run of each face
	firstFace []int32 // of each run
	fresh     map[int32]*template
	owners    map[joinKey][2]int32 // the runs that a new join is read off
	joins     map[joinKey]*join
	joinOrder []joinKey
	loose     looseParts
	lines     map[int]int
	pieces    *cutting.Plan // how the pieces are cut, nil until a new template asks
}

// newPicture makes a top ready. It must not be called twice at a time with one numbering.
func newPicture(t *quilt.Top, source *layout.Source, n *numbering) *picture {
	p := &pictureBuilder{Top: t, numbers: n, source: source, out: &picture{top: t, source: source, epoch: n.epoch},
		fresh: map[int32]*template{}, owners: map[joinKey][2]int32{}, joins: map[joinKey]*join{}, lines: map[int]int{}}
	p.findRuns()
	p.number()
	p.seams()
	p.store()
	p.describeWhole()
	p.out.templates, p.out.looks, p.out.joins = n.templates, n.looks, n.joins
	return p.out
}

// findRuns tells the cells, whose patches lie within them, from single patches.
func (p *pictureBuilder) findRuns() {
	p.runs = make([]run, len(p.Cells), len(p.Cells)+16)
	p.loose = looseParts{Patches: []int64{}, Seams: []int64{}}
	for i := range p.Cells {
		c := &p.Cells[i]
		at := p.origin(i)
		switch {
		case c.Count == 0:
		case p.within(c, at):
			p.runs[i] = run{c.First, c.Count, at}
		default:
			for n := c.First; n < c.First+c.Count; n++ {
				p.single(n)
			}
		}
	}
	for n := range p.Patches {
		if p.Patches[n].Cell < 0 {
			p.single(n)
		}
	}
}

// origin is the upper left corner of a cell.
func (p *pictureBuilder) origin(cell int) measure.Point {
	return p.CellRect(cell).Min
}

// within says whether all of a cell's patches lie in its square.
func (p *pictureBuilder) within(c *quilt.Cell, at measure.Point) bool {
	for n := c.First; n < c.First+c.Count; n++ {
		for _, q := range p.Patches[n].Outline {
			if q.X < at.X || q.Y < at.Y || q.X > at.X+p.SideFinished || q.Y > at.Y+p.SideFinished {
				return false
			}
		}
	}
	return true
}

// single adds a patch that stands for itself.
func (p *pictureBuilder) single(n int) {
	outline := p.Patches[n].Outline
	at := outline[0]
	for _, q := range outline {
		at.X, at.Y = min(at.X, q.X), min(at.Y, q.Y)
	}
	p.runs = append(p.runs, run{n, 1, at})
}

// number finds the template and the look of every run.
func (p *pictureBuilder) number() {
	p.items = make([]int32, len(p.runs))
	p.firstFace = make([]int32, len(p.runs))
	p.itemOf = make([]int32, len(p.Faces))
	p.out.cells = make([]int32, len(p.Cells))
	for i, r := range p.runs {
		if r.count == 0 {
			p.out.cells[i] = -1
			continue
		}
		number, isNew := p.numbers.templateNumber(p.Top, r)
		if isNew {
			p.fresh[number] = p.describe(r)
			p.owners[joinKey{a: number, b: -1}] = [2]int32{int32(i), int32(i)}
		}
		p.items[i] = number
		look := p.numbers.lookNumber(p.Top, number, r)
		if i < len(p.Cells) {
			p.out.cells[i] = look
		} else {
			p.loose.add(p, r, look)
		}
		p.firstFace[i] = int32(p.Patches[r.first].First)
		last := &p.Patches[r.first+r.count-1]
		for f := p.firstFace[i]; f < int32(last.First+last.Count); f++ {
			p.itemOf[f] = int32(i)
		}
	}
}

// store appends what is new to the numbering.
func (p *pictureBuilder) store() {
	for n := len(p.numbers.templates); n < len(p.numbers.templateOf); n++ {
		p.numbers.templates = append(p.numbers.templates, encoded(p.fresh[int32(n)]))
	}
	for _, key := range p.joinOrder {
		p.numbers.joins = append(p.numbers.joins, encoded(p.joins[key]))
	}
	p.out.loose = encoded(&p.loose)
}

// line is the line of the layout that a byte stands on.
func (p *pictureBuilder) line(offset int) int {
	n, ok := p.lines[offset]
	if !ok {
		n = p.source.Line(offset)
		p.lines[offset] = n
	}
	return n
}

// describeWhole makes what is true of the whole.
func (p *pictureBuilder) describeWhole() {
	holes := false
	for i := range p.Cells {
		holes = holes || p.Empty(i)
	}
	p.out.quilt = encoded(quiltInfo{
		Title: p.Title, Side: units(p.SideFinished), Width: units(p.Outer.Max.X), Height: units(p.Outer.Max.Y),
		Size:    inWords(p.Outer, p.Units),
		Blocks:  strconv.Itoa(p.Columns) + " × " + strconv.Itoa(p.Rows) + " blocks",
		Columns: p.Columns, Rows: p.Rows, Patches: len(p.Patches), Holes: holes,
		Away: report.Away(viewedFrom, p.Units),
	})
	var g grid
	for x := range p.Columns + 1 {
		g.X = append(g.X, units(p.FirstCell.X+measure.NM(x)*p.StepFinished))
	}
	for y := range p.Rows + 1 {
		g.Y = append(g.Y, units(p.FirstCell.Y+measure.NM(y)*p.StepFinished))
	}
	p.out.grid = encoded(g)
	p.out.fabrics = encoded(p.listFabrics(p.Share()))
	p.out.sources = encoded(p.listSources())
}

// inWords is a size as it is said.
func inWords(r quilt.Rect, u measure.System) string {
	return strings.Replace(u.By(r.Width(), r.Height()), " by ", " × ", 1)
}

// listFabrics lists the fabrics, which cover these shares of the top.
func (p *pictureBuilder) listFabrics(share []float64) []fabric {
	list := make([]fabric, len(p.Fabrics))
	for i, f := range p.Fabrics {
		list[i] = fabric{
			Name: f.Name, Print: f.Print, Colour: f.Colour.Hex(), Grey: f.Colour.Grey().Hex(),
			Value: thousandths(f.Colour.Lightness()), Share: tenths(100 * share[i]), Line: p.line(f.Place.Start),
			Seen: seen(f.Colour), Patterned: f.Cloth != nil,
		}
	}
	return list
}

// thousandths keeps a value from being rounded up twice where the page shows it whole.
func thousandths(v float64) float64 { return float64(int(v*1000+0.5)) / 1000 }

func tenths(v float64) float64 { return float64(int(v*10+0.5)) / 10 }

// recoloured is the picture of the same top in other colours.
func (p *picture) recoloured(t *quilt.Top, source *layout.Source, revision int) *picture {
	now := *p
	now.top, now.source, now.revision = t, source, revision
	again := &pictureBuilder{Top: t, source: source, lines: map[int]int{}}
	now.fabrics = encoded(again.listFabrics(t.Share()))
	return &now
}

// sent is what pages were sent of a picture: it holds no top.
func (p *picture) sent() *picture {
	now := *p
	now.top, now.written, now.base, now.source = nil, nil, nil, nil
	return &now
}

// fill writes into m what a page lacks that shows base, nil if it shows nothing of use.
func (p *picture) fill(m *message, base *picture) {
	m.Picture = p.revision
	if base == p {
		return
	}
	if base != nil && base.epoch == p.epoch {
		m.Base = base.revision
		m.Templates, m.Looks, m.Joins = p.templates[len(base.templates):], p.looks[len(base.looks):], p.joins[len(base.joins):]
		m.Changed = changedCells(base.cells, p.cells)
	} else {
		base = &picture{}
		m.Templates, m.Looks, m.Joins = p.templates, p.looks, p.joins
	}
	if m.Changed == nil {
		m.Cells = p.cells
	}
	unless := func(old, now json.RawMessage) json.RawMessage {
		if bytes.Equal(old, now) {
			return nil
		}
		return now
	}
	m.Quilt, m.Grid = unless(base.quilt, p.quilt), unless(base.grid, p.grid)
	m.Colorways = unless(base.colorways, p.colorways)
	m.Fabrics, m.Loose, m.Sources = unless(base.fabrics, p.fabrics), unless(base.loose, p.loose), unless(base.sources, p.sources)
}

// changedCells is cell, look, cell, look … where two pictures of equally many cells differ;
// nil where sending all of them is shorter.
func changedCells(before, now []int32) []int32 {
	if len(before) != len(now) {
		return nil
	}
	list := []int32{}
	for i := range now {
		if before[i] != now[i] {
			list = append(list, int32(i), now[i])
		}
	}
	if len(list) > len(now) {
		return nil
	}
	return list
}
