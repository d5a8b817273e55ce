package preview

import (
	"encoding/binary"
	"encoding/json"

	"eighthturn/internal/measure"
	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/quilt"
	"eighthturn/internal/report"
)

// unit is what coordinates on the page are counted in: a ten-thousandth of an inch. The
// browser keeps whole numbers of it exactly up to tops of 1,600 inches.
const unit = measure.Inch / 10_000

func units(nm measure.NM) int64 {
	if nm < 0 {
		return -int64((-nm + unit/2) / unit)
	}
	return int64((nm + unit/2) / unit)
}

// numbering gives numbers to what a quilt repeats, once and for all, so that a page which
// has them needs only what is new: templates (outlines of one block or single patch), looks
// (a template with its fabrics) and joins (how two templates meet, side by side or one above
// the other). The lists only grow; when they hold mostly what is no longer used, a new
// numbering is begun, and every page is sent everything.
type numbering struct {
	epoch     int
	templates []json.RawMessage
	looks     []json.RawMessage
	joins     []json.RawMessage

	templateOf map[string]int32
	lookOf     map[string]int32
	joinOf     map[joinKey]bool
	cutting    func(*quilt.Top) cutting.Options // how the pieces are cut; nil for the usual way
	scratch    []byte
}

// joinKey is two templates side by side, or one above the other.
type joinKey struct {
	a, b  int32
	below bool
}

func newNumbering(epoch int) *numbering {
	return &numbering{epoch: epoch, templateOf: map[string]int32{}, lookOf: map[string]int32{}, joinOf: map[joinKey]bool{}}
}

// spent says whether the numbering is mostly waste for a picture that uses so many looks.
func (n *numbering) spent(used int) bool { return len(n.looks) > 4*used+256 }

// template is a run of patches that lie the same way to one another.
type template struct {
	Faces   [][]int64      `json:"faces"`           // x, y, x, y …, from the origin
	Patches []patchInfo    `json:"patches"`         // in order; each has the next Count faces
	Inner   []innerStretch `json:"inner,omitempty"` // seams between its faces
}

// patchInfo is what the page tells about a patch.
type patchInfo struct {
	Count    int    `json:"count"` // of faces
	Shape    string `json:"shape"`
	Role     string `json:"role"`
	Letter   string `json:"letter"`
	Finished string `json:"finished"`
	Cut      string `json:"cut"`
}

// innerStretch is a seam within a template: two faces, its two ends, and 1 for the seam of
// a strip set.
type innerStretch [7]int64

// run is patches that follow one another in a top, with their origin.
type run struct {
	first, count int
	origin       measure.Point
}

// templateNumber is the number of the template of a run, made if it is new.
func (n *numbering) templateNumber(t *quilt.Top, r run) (number int32, isNew bool) {
	b := append(n.scratch[:0], byte(t.Units))
	b = binary.AppendVarint(b, int64(t.Seam))
	for p := r.first; p < r.first+r.count; p++ {
		patch := &t.Patches[p]
		b = append(b, byte(patch.Shape))
		b = binary.AppendVarint(b, int64(patch.Count))
		b = append(b, t.Roles[patch.Role].Name...)
		b = append(b, 0)
		b = appendOutlineKey(b, patch.Outline, r.origin)
		for f := patch.First; patch.Count > 1 && f < patch.First+patch.Count; f++ {
			b = appendOutlineKey(b, t.Faces[f].Outline, r.origin)
		}
	}
	n.scratch = b
	if number, ok := n.templateOf[string(b)]; ok {
		return number, false
	}
	number = int32(len(n.templateOf))
	n.templateOf[string(b)] = number
	return number, true
}

func appendOutlineKey(b []byte, outline []measure.Point, origin measure.Point) []byte {
	b = append(b, byte(len(outline)))
	for _, p := range outline {
		b = binary.AppendVarint(b, int64(p.X-origin.X))
		b = binary.AppendVarint(b, int64(p.Y-origin.Y))
	}
	return b
}

// describe makes a template, without its inner seams. What its patches measure is what the cutting plan says of them.
func (p *pictureBuilder) describe(r run) *template {
	if p.pieces == nil {
		p.pieces = cutting.Pieces(p.Top, cutBy(p.numbers.cutting, p.Top))
	}
	made := &template{}
	for n := r.first; n < r.first+r.count; n++ {
		patch, line := &p.Patches[n], &p.pieces.Lines[p.pieces.LineOf[n]]
		role := p.Roles[patch.Role]
		finished, cut := report.PieceSizes(p.pieces, line)
		made.Patches = append(made.Patches, patchInfo{int(patch.Count), patch.Shape.String(), role.Name, role.Letter, finished, cut})
		for f := patch.First; f < patch.First+patch.Count; f++ {
			made.Faces = append(made.Faces, relative(p.Faces[f].Outline, r.origin))
		}
	}
	return made
}

func relative(outline []measure.Point, origin measure.Point) []int64 {
	list := make([]int64, 0, 2*len(outline))
	for _, p := range outline {
		list = append(list, units(p.X-origin.X), units(p.Y-origin.Y))
	}
	return list
}

// lookNumber is the number of a template with the fabrics of its faces.
func (n *numbering) lookNumber(t *quilt.Top, template int32, r run) int32 {
	from, to := t.Patches[r.first].First, t.Patches[r.first+r.count-1]
	faces := t.Faces[from : to.First+to.Count]
	b := binary.AppendUvarint(n.scratch[:0], uint64(template))
	for i := range faces {
		b = binary.AppendUvarint(b, uint64(faces[i].Fabric))
	}
	n.scratch = b
	if number, ok := n.lookOf[string(b)]; ok {
		return number
	}
	number := int32(len(n.looks))
	n.lookOf[string(b)] = number
	list := make([]int32, 1, len(faces)+1)
	list[0] = template
	for i := range faces {
		list = append(list, int32(faces[i].Fabric))
	}
	n.looks = append(n.looks, encoded(list))
	return number
}

// encoded is v as JSON; everything that the preview sends can be written so.
func encoded(v any) json.RawMessage {
	b, err := json.Marshal(v)
	if err != nil {
		panic("preview: " + err.Error())
	}
	return b
}

// cutBy is how a top is cut and bought.
func cutBy(cut func(*quilt.Top) cutting.Options, t *quilt.Top) cutting.Options {
	if cut == nil {
		return cutting.Options{}
	}
	return cut(t)
}
