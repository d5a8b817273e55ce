package preview

import (
	"bytes"
	"errors"
	"image"
	"image/color"
	"image/png"
	"net/http"
	"strconv"
	"strings"

	"eighthturn/internal/measure"
	"eighthturn/internal/plan/motifs"
	"eighthturn/internal/quilt"
	"eighthturn/internal/report"
	"eighthturn/internal/stop"
	"eighthturn/internal/templates"
	"eighthturn/layout"
)

// A page shows a print with the piece that is cut from it, and moves the piece there: it asks for the print, for what there is to cut
// and where, for places that make unlike centers, and for the line of the place that it shows. Lengths are nanometers.

// fussy is a print as a page cuts pieces from it.
type fussy struct {
	Fabric string       `json:"fabric"` // as the layout has it
	Across measure.NM   `json:"across"` // after so much of it the cloth comes again
	Down   measure.NM   `json:"down"`
	Seen   *extent      `json:"seen,omitempty"` // how much of it is known, where nobody knows how it goes on
	Mark   measure.NM   `json:"mark"`           // places are whole numbers of it
	Step   measure.NM   `json:"step"`
	Name   string       `json:"name"`   // for a motif that is new
	Pieces []fussyPiece `json:"pieces"` // that a new motif would be for
	Motifs []fussyMotif `json:"motifs"`
	Opened int          `json:"opened"`        // the motif of the patch that the page names, by index; -1 for none
	Why    string       `json:"why,omitempty"` // there is nothing to cut
}

// extent is how far something reaches, across and down.
type extent [2]measure.NM

// fussyPiece is a piece that is cut from the print, as it lies there at 0 degrees.
type fussyPiece struct {
	Shape    string       `json:"shape"`
	Finished []measure.NM `json:"finished"` // x, y, x, y … from its middle, the corner first where its like meet
	Cut      []measure.NM `json:"cut"`
	Round    int          `json:"round"` // how many make a center
}

// fussyMotif is a motif of the layout.
type fussyMotif struct {
	Name     string       `json:"name"`
	Across   measure.NM   `json:"across"`
	Down     measure.NM   `json:"down"`
	Pointing int          `json:"pointing"`
	Pieces   []fussyPiece `json:"pieces"`
}

// center is a place that makes a center unlike the others.
type center struct {
	Number   int        `json:"number"`
	Says     string     `json:"says"`
	Across   measure.NM `json:"across"`
	Down     measure.NM `json:"down"`
	Pointing int        `json:"pointing"`
}

// centers are the places that a print has, or why it has none.
type centers struct {
	Why     string   `json:"why,omitempty"`
	Centers []center `json:"centers"`
}

// fabricOf is the fabric that a request is about, by index.
func (s *study) fabricOf(r *http.Request) (int, error) {
	fabric, err := strconv.Atoi(r.URL.Query().Get("fabric"))
	if err != nil || fabric < 0 || fabric >= len(s.plans.Top.Fabrics) {
		return 0, errNothing
	}
	return fabric, nil
}

// serveCloth answers with one repeat of a print; of a plain color that is a pixel of it.
func (s *site) serveCloth(w http.ResponseWriter, r *http.Request) {
	s.serveOf(w, r, func(of *study, sign *stop.Sign) ([]byte, error) {
		fabric, err := of.fabricOf(r)
		if err != nil {
			return nil, err
		}
		f := &of.plans.Top.Fabrics[fabric]
		if f.Cloth == nil {
			pixel := image.NewRGBA(image.Rect(0, 0, 1, 1))
			pixel.SetRGBA(0, 0, color.RGBA{f.Colour.R, f.Colour.G, f.Colour.B, 255})
			return pngOf(sign, pixel)
		}
		made := of.from.cut.print(of.plans.Top, fabric).png.Get(sign, func() printed {
			picture := f.Cloth.Picture()
			if picture == nil {
				return printed{nil, errNothing}
			}
			file, err := pngOf(sign, picture)
			return printed{file, err}
		})
		return made.png, made.err
	})
}

func pngOf(sign *stop.Sign, picture image.Image) ([]byte, error) {
	var b bytes.Buffer
	err := (&png.Encoder{CompressionLevel: png.BestSpeed}).Encode(sign.Writer(&b), picture)
	return b.Bytes(), err
}

// serveFussy answers with what there is to cut from a print.
func (s *site) serveFussy(w http.ResponseWriter, r *http.Request) {
	s.serveOf(w, r, func(of *study, _ *stop.Sign) ([]byte, error) {
		fabric, err := of.fabricOf(r)
		if err != nil {
			return nil, err
		}
		read, ok := s.readingOf(of)
		if !ok || fabric >= len(read.Design.Fabrics) {
			return nil, errOvertaken
		}
		return encoded(newFussy(of.plans.Top, read, fabric, cutAt(of.plans.Top, r))), nil
	})
}

// newFussy is a fabric of a top as pieces are cut from it; opened is the motif that the page asks for.
func newFussy(top *quilt.Top, read *layout.Reading, fabric int, opened string) *fussy {
	units, cloth := read.Design.Units, top.Fabrics[fabric].Cloth
	f := &fussy{
		Fabric: read.Design.Fabrics[fabric].Name, Opened: -1, Motifs: []fussyMotif{}, Pieces: wedgeOf(top, fabric),
		Mark: units.Usual(measure.Inch/16, measure.Millimetre), Step: units.Usual(measure.Inch/8, 5*measure.Millimetre),
	}
	f.Name = motifs.NameOf(f.Fabric, 1, takenIn(read))
	unfit := motifs.NoWedges
	if cloth == nil {
		cloth, f.Pieces, unfit = &quilt.Cloth{Across: measure.Inch, Down: measure.Inch, Repeats: true}, []fussyPiece{}, motifs.OneColor
	}
	f.Across, f.Down = cloth.Across, cloth.Down
	if across, down := cloth.Seen(); across > 0 {
		f.Seen = &extent{across, down}
	}
	for _, m := range read.Design.Motifs {
		if m.Fabric != fabric {
			continue
		}
		if m.Name == opened {
			f.Opened = len(f.Motifs)
		}
		made := fussyMotif{m.Name, m.Across, m.Down, m.Pointing, piecesOf(templates.CutAt(top, m.Name))}
		if len(made.Pieces) == 0 {
			made.Pieces = f.Pieces
		}
		f.Motifs = append(f.Motifs, made)
	}
	if len(f.Pieces) == 0 {
		f.Why = sentence(report.NoMotifs(layout.Visible(f.Fabric), &motifs.Unfit{Why: unfit}))
	}
	return f
}

// takenIn says whether a layout has a name anywhere.
func takenIn(read *layout.Reading) func(string) bool {
	written := layout.FoldName(read.Source.Text)
	return func(name string) bool { return strings.Contains(written, layout.FoldName(name)) }
}

// sentence is a message and its hint as the page says them.
func sentence(why, hint string) string {
	upper := func(text string) string { return strings.ToUpper(text[:1]) + text[1:] }
	return upper(why) + ". " + upper(hint) + "."
}

// cutAt is the motif that the patch of a block is cut from which a request names; "" for none.
func cutAt(t *quilt.Top, r *http.Request) string {
	q := r.URL.Query()
	cell, err := strconv.Atoi(q.Get("cell"))
	patch, wrong := strconv.Atoi(q.Get("patch"))
	if err != nil || wrong != nil || cell < 0 || cell >= len(t.Cells) || patch < 0 || patch >= t.Cells[cell].Count {
		return ""
	}
	if c := t.CutOfPatch(t.Cells[cell].First + patch); c != nil {
		return c.Motif
	}
	return ""
}

// wedgeOf is the wedge that is cut from a fabric; none where the top has no wedges.
func wedgeOf(t *quilt.Top, fabric int) []fussyPiece {
	height := t.WedgeFinished(fabric)
	if height == 0 {
		return []fussyPiece{}
	}
	const any = "m"
	return piecesOf(templates.CutAt(t.EightOf(fabric, height, quilt.Cut{Motif: any}), any))
}

func piecesOf(list []templates.AtMotif) []fussyPiece {
	pieces := make([]fussyPiece, len(list))
	for i, a := range list {
		pieces[i] = fussyPiece{a.Shape.String(), flat(a.Finished), flat(a.Cut), a.Round}
	}
	return pieces
}

// flat is an outline as one list of numbers.
func flat(outline []measure.Point) []measure.NM {
	list := make([]measure.NM, 0, 2*len(outline))
	for _, p := range outline {
		list = append(list, p.X, p.Y)
	}
	return list
}

// serveCenters answers with places of a print that make unlike centers.
func (s *site) serveCenters(w http.ResponseWriter, r *http.Request) {
	s.serveOf(w, r, func(of *study, sign *stop.Sign) ([]byte, error) {
		fabric, err := of.fabricOf(r)
		if err != nil {
			return nil, err
		}
		top := of.plans.Top
		if top.Fabrics[fabric].Cloth == nil {
			return encoded(newCenters(sign, top, fabric)), nil
		}
		made := of.from.cut.print(top, fabric).centers.Get(sign, func() *centers { return newCenters(sign, top, fabric) })
		return encoded(made), nil
	})
}

// newCenters are the places of a fabric that make unlike centers.
func newCenters(sign *stop.Sign, top *quilt.Top, fabric int) *centers {
	m := &centers{Centers: []center{}}
	plan, err := motifs.Build(top, fabric, motifs.Options{Sign: sign})
	var unfit *motifs.Unfit
	if errors.As(err, &unfit) { // it is nothing else
		m.Why = sentence(report.NoMotifs(layout.Visible(top.Fabrics[fabric].Name), unfit))
		return m
	}
	for i := range plan.Motifs {
		p := &plan.Motifs[i]
		m.Centers = append(m.Centers, center{i + 1, report.MotifLooks(p), p.Across, p.Down, p.Pointing})
	}
	return m
}

// placeOf is where a request wants a motif.
func placeOf(r *http.Request) (at layout.MotifAt, err error) {
	q := r.URL.Query()
	across, wrong1 := strconv.ParseInt(q.Get("across"), 10, 64)
	down, wrong2 := strconv.ParseInt(q.Get("down"), 10, 64)
	pointing, wrong3 := strconv.Atoi(q.Get("pointing"))
	at = layout.MotifAt{Name: q.Get("motif"), Fabric: q.Get("of"), Across: measure.NM(across), Down: measure.NM(down), Pointing: pointing}
	if errors.Join(wrong1, wrong2, wrong3) != nil || !at.Sound() {
		return at, errNothing
	}
	return at, nil
}

// serveMotif answers with the line of a motif at a place.
func (s *site) serveMotif(w http.ResponseWriter, r *http.Request) {
	s.serveOf(w, r, func(of *study, _ *stop.Sign) ([]byte, error) {
		at, err := placeOf(r)
		if err != nil {
			return nil, err
		}
		read, ok := s.readingOf(of)
		if !ok {
			return nil, errOvertaken
		}
		edits := read.Moved(at)
		if edits == nil {
			return nil, errNothing
		}
		return encoded(movedMotif{layout.Visible(read.MotifLine(at)), len(edits) > 0}), nil
	})
}

// movedMotif is the line of a motif at the place that a page shows.
type movedMotif struct {
	Line  string `json:"line"`
	Moved bool   `json:"moved"` // the layout does not say so yet
}
