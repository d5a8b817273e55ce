package preview

import (
	"cmp"
	"encoding/json"
	"slices"

	"eighthturn/internal/quilt"
	"eighthturn/internal/stop"
)

// pageNumbers tell how the page counts the faces and seams of a picture. It holds no top, but
// items (cells, then patches that stand for themselves) and what lies between them.
type pageNumbers struct {
	top  *quilt.Top
	face []int32 // by face of the top
	seam []int32 // by seam of the top, those of strip sets behind those between patches
}

// facesOf are the numbers of patches' faces, and of faces.
func (n *pageNumbers) facesOf(patches, faces []int) []int32 {
	list := make([]int32, 0, len(patches)+len(faces))
	for _, i := range patches {
		p := &n.top.Patches[i]
		list = append(list, n.face[p.First:p.First+p.Count]...)
	}
	for _, f := range faces {
		list = append(list, n.face[f])
	}
	return list
}

func (n *pageNumbers) seamsOf(seams []int) []int32 {
	list := make([]int32, len(seams))
	for i, s := range seams {
		list[i] = n.seam[s]
	}
	return list
}

// pageSeam is a seam between two faces of the top, the lower one first, by a number.
type pageSeam struct {
	a, b   int32
	number int32
}

func seamBetween(a, b, number int32) pageSeam { return pageSeam{min(a, b), max(a, b), number} }

func (s pageSeam) compare(o pageSeam) int {
	return cmp.Or(cmp.Compare(s.a, o.a), cmp.Compare(s.b, o.b), cmp.Compare(s.number, o.number))
}

// seamOf is a seam by its index, those of strip sets behind those between patches.
func seamOf(t *quilt.Top, i int) *quilt.Seam {
	if i < len(t.Seams) {
		return &t.Seams[i]
	}
	return &t.StripSeams[i-len(t.Seams)]
}

// counting walks a picture as the page does: item by item, of each its faces and the seams
// between them, and of a cell the seams to its right and below it; in the end the seams
// beside single patches. It reads what was sent and nothing else.
type counting struct {
	*pageNumbers
	sign      *stop.Sign
	p         *picture
	runs      []run
	look      []int32 // template of each look
	inner     [][]innerStretch
	joins     map[joinKey][][6]int64
	loose     looseParts
	firstFace []int32 // of each run
	seams     []pageSeam
}

// pageNumbers counts the faces and seams of a picture.
func (p *picture) pageNumbers(sign *stop.Sign) *pageNumbers {
	c := &counting{pageNumbers: &pageNumbers{top: p.top, face: make([]int32, len(p.top.Faces))}, sign: sign, p: p}
	c.read()
	sign.Look()
	c.faces()
	for i := range c.runs {
		sign.Step(1)
		c.item(int32(i))
	}
	for i := 0; i < len(c.loose.Seams); i += 9 {
		s := c.loose.Seams[i:]
		c.add(c.firstFace[s[0]]+int32(s[1]), c.firstFace[s[2]]+int32(s[3]))
	}
	sign.Look()
	c.match()
	return c.pageNumbers
}

// match finds each seam of the top among those of the page, by the faces that it joins.
func (c *counting) match() {
	all := make([]pageSeam, len(c.top.Seams)+len(c.top.StripSeams))
	c.sign.Step(len(all))
	for i := range all {
		s := seamOf(c.top, i)
		all[i] = seamBetween(s.A, s.B, int32(i))
	}
	slices.SortFunc(all, pageSeam.compare)
	slices.SortFunc(c.seams, pageSeam.compare)
	c.seam = make([]int32, len(all))
	for i, s := range all {
		c.seam[s.number] = c.seams[i].number
	}
}

// read takes apart what the page was sent.
func (c *counting) read() {
	again := &pictureBuilder{Top: c.top}
	again.findRuns()
	c.runs = again.runs
	for _, raw := range c.p.looks {
		c.look = append(c.look, decoded[[]int32](raw)[0])
	}
	for _, raw := range c.p.templates {
		c.inner = append(c.inner, decoded[template](raw).Inner)
	}
	c.joins = map[joinKey][][6]int64{}
	for _, raw := range c.p.joins {
		j := decoded[join](raw)
		c.joins[joinKey{j.A, j.B, j.Below == 1}] = j.Stretches
	}
	c.loose = decoded[looseParts](c.p.loose)
}

// decoded reads back what encoded wrote.
func decoded[T any](raw json.RawMessage) (v T) {
	if err := json.Unmarshal(raw, &v); err != nil {
		panic("preview: " + err.Error())
	}
	return v
}

func (c *counting) faces() {
	c.firstFace = make([]int32, len(c.runs))
	next := int32(0)
	for i, r := range c.runs {
		if r.count == 0 {
			continue
		}
		first, last := c.top.Patches[r.first].First, &c.top.Patches[r.first+r.count-1]
		c.firstFace[i] = int32(first)
		for f := first; f < last.First+last.Count; f++ {
			c.face[f] = next
			next++
		}
	}
}

// templateOf is the template of a run that is not empty.
func (c *counting) templateOf(item int32) int32 {
	if cells := int32(len(c.p.cells)); item >= cells {
		return c.look[c.loose.Patches[6*(item-cells)+2]]
	}
	return c.look[c.p.cells[item]]
}

func (c *counting) item(i int32) {
	if c.runs[i].count == 0 {
		return
	}
	own := c.templateOf(i)
	for _, s := range c.inner[own] {
		c.add(c.firstFace[i]+int32(s[0]), c.firstFace[i]+int32(s[1]))
	}
	cells, columns := int32(len(c.p.cells)), int32(c.top.Columns)
	if i < cells && i%columns+1 < columns {
		c.meeting(i, i+1, false)
	}
	if i+columns < cells {
		c.meeting(i, i+columns, true)
	}
}

func (c *counting) meeting(a, b int32, below bool) {
	if c.runs[b].count == 0 {
		return
	}
	for _, s := range c.joins[joinKey{c.templateOf(a), c.templateOf(b), below}] {
		c.add(c.firstFace[a]+int32(s[0]), c.firstFace[b]+int32(s[1]))
	}
}

func (c *counting) add(a, b int32) {
	c.sign.Step(1)
	c.seams = append(c.seams, seamBetween(a, b, int32(len(c.seams))))
}
