package picture

import (
	"cmp"
	"fmt"
	"image"
	"math"
	"strings"

	"github.com/rivo/uniseg"

	"eighthturn/internal/credits"
	"eighthturn/internal/diagram"
	"eighthturn/internal/render/pdf"
	"eighthturn/palettes"
	"eighthturn/svgout"
)

// Poster is what is to be shown on one canvas: groups of pictures, each with words below it, and a title.
type Poster struct {
	Width, Height int     // pixels; 0 and 0 for a canvas as high as its pictures need it
	PerInch       float64 // pixels an inch of paper
	Margin        float64 // pixels on every side; below 0 for UsualMargin of the shorter side
	Letters       float64 // how large they are beside the usual ones; 0 for 1
	Ground        palettes.Colour
	Title         string
	Lines         []string // smaller, below the title
	Groups        []Group
	Credits       credits.Credits
	Says          string // the title of the file where the credits have none
	Description   string // what it shows, for someone who cannot see it
}

// Group is pictures that stand together.
type Group struct {
	Parts []Part
	Name  string   // below them, in bold letters; "" for none
	Says  []string // smaller, below the name; each is broken into lines
}

// Part is one picture.
type Part struct {
	Scene *svgout.Scene
	Size  float64 // of its longer side beside that of other pictures; 0 for 1
}

// size is the width and height of a part where the longer side of one of size 1 is 1.
func (p *Part) size() (w, h float64) {
	s := sidesOf(p.Scene)
	by := 1 / max(s.across.whole, s.down.whole)
	if p.Size > 0 {
		by *= p.Size
	}
	return s.across.whole * by, s.down.whole * by
}

// Canvas is pictures and lines of words, each at its place, in pixels from the upper left corner.
type Canvas struct {
	*Poster
	Width, Height int
	Ink           palettes.Colour // of all words
	Panels        []Panel
	Words         []Words
	Lacks         []rune // signs that the fonts lack; pdf.Stand stands in their place
	unit          float64
}

// Panel is a picture at its place.
type Panel struct {
	Scene *svgout.Scene
	At    image.Rectangle
}

// Words are a line of words at its place, and the room that they take.
type Words struct {
	svgout.Text
	Box svgout.Box
}

// Bounds of a canvas.
const (
	MinCanvas = 200    // pixels a side
	MaxCanvas = 10_000 // pixels a side; a JPEG has room for the square of it, and a WebP's side is 16,383 at the most
)

// UsualMargin is the margin of a canvas as a part of its shorter side.
const UsualMargin = 0.06

// usualWide is the width of a canvas that nothing is said of, in pixels, and usualHigh about its height as a part of that.
const (
	usualWide = usualLong
	usualHigh = 0.8
)

// usualLong is the longer side of a picture in pixels of which nothing else is said.
const usualLong = 2100

// NoRoom says that a canvas has no room for its pictures.
type NoRoom struct{ Width, Height int }

func (e *NoRoom) Error() string {
	return fmt.Sprintf("a canvas of %d by %d pixels has no room for these pictures and words", e.Width, e.Height)
}

// Sizes of letters and gaps, as parts of the canvas's unit: the side of a square as large as it.
const (
	titleSize = 0.043
	lineSize  = 0.0225
	nameSize  = 0.021
	saysSize  = 0.0165
	partGap   = 0.018
	groupGap  = 0.04
	headGap   = 0.036
	nameGap   = 0.012
	leading   = 1.3  // from line to line, of the letters' size
	besides   = 0.27 // of the width, the title beside the pictures
	isWorth   = 1.12 // times as large as below: then the title stands beside
	leastPart = 24   // pixels of a picture's longer side
	mostSays  = 4    // lines of a text
	leastType = 9    // pixels
	shrunk    = 0.6  // of the title's letters, at the least
	rise      = 0.95 // of the letters' size: how far above its line of letters a line's room begins
)

// Arrange puts a poster's pictures and words on their places, the pictures as large as can be. The error is a *NoRoom.
func (p *Poster) Arrange() (*Canvas, error) {
	a := &arranging{Poster: p, letters: diagram.NewLettering()}
	if p.Width == 0 || p.Height == 0 {
		return a.free()
	}
	a.set(p.Width, p.Height)
	best := a.best(a.ways())
	if best == nil {
		return nil, &NoRoom{p.Width, p.Height}
	}
	return a.canvas(best), nil
}

// arranging is the work on one canvas.
type arranging struct {
	*Poster
	letters     *diagram.Lettering
	wide, high  float64 // of the canvas
	unit, edge  float64
	roomAcross  float64 // between the margins
	roomDown    float64
	lacks       []rune
	unboundDown bool // the canvas is as high as it needs to be
}

func (a *arranging) set(width, height int) {
	a.wide, a.high = float64(width), float64(height)
	a.unit = math.Sqrt(a.wide * a.high)
	a.edge = a.Margin
	if a.edge < 0 {
		a.edge = UsualMargin * min(a.wide, a.high)
	}
	a.roomAcross, a.roomDown = a.wide-2*a.edge, a.high-2*a.edge
}

// letter is a size of letters in whole pixels, of a part of the unit.
func (a *arranging) letter(part float64) float64 {
	return max(leastType, math.Round(part*a.unit*cmp.Or(a.Letters, 1)))
}

// way is one way to arrange the pictures, and what comes of it.
type way struct {
	beside, stacked bool // the title stands beside the pictures; the parts of a group stand one below the other
	columns         int
	scale           float64 // pixels of a picture of size 1
	head            []Words // the title and its lines, from their own upper left corner
	headWide        float64
	headHigh        float64
	captions        [][]Words // by group, from their own upper left corner
	captionHigh     float64
	captionWide     float64
	groupWide       float64 // the widest
	groupHigh       float64 // the highest, without its caption
}

// ways are all ways that may be taken.
func (a *arranging) ways() (list []*way) {
	several := false
	for i := range a.Groups {
		several = several || len(a.Groups[i].Parts) > 1
	}
	for _, beside := range [2]bool{false, true} {
		for _, stacked := range [2]bool{false, true} {
			if stacked && !several || beside && a.Title == "" && len(a.Lines) == 0 {
				continue
			}
			for columns := range len(a.Groups) {
				list = append(list, &way{beside: beside, stacked: stacked, columns: columns + 1})
			}
		}
	}
	return list
}

// best is the way with the largest pictures, nil where none has room. A title beside them must be worth it.
func (a *arranging) best(ways []*way) (best *way) {
	worth := func(w *way) float64 {
		if w.beside {
			return w.scale / isWorth
		}
		return w.scale
	}
	for _, w := range ways {
		if a.try(w) && (best == nil || worth(w) > worth(best)) {
			best = w
		}
	}
	return best
}

// try finds how large the pictures become, false where there is no room for them.
func (a *arranging) try(w *way) bool {
	across, down := a.roomAcross, a.roomDown
	if a.Title != "" || len(a.Lines) > 0 {
		room := across
		if w.beside {
			room = across * besides
		}
		w.head, w.headWide, w.headHigh = a.heading(room)
		if w.beside {
			across -= w.headWide + 1.5*headGap*a.unit
		} else {
			down -= w.headHigh + headGap*a.unit
		}
	}
	rows := float64((len(a.Groups) + w.columns - 1) / w.columns)
	cell := (across - float64(w.columns-1)*groupGap*a.unit) / float64(w.columns)
	if cell < leastPart {
		return false
	}
	a.caption(w, cell)
	w.scale = math.Inf(1)
	for i := range a.Groups {
		wide, high, gapsAcross, gapsDown := a.extent(&a.Groups[i], w.stacked)
		w.scale = min(w.scale, (cell-gapsAcross)/wide)
		if !a.unboundDown {
			w.scale = min(w.scale, ((down-(rows-1)*groupGap*a.unit)/rows-w.captionHigh-gapsDown)/high)
		}
	}
	if !(w.scale >= leastPart) || w.beside && w.headHigh > a.roomDown {
		return false
	}
	for i := range a.Groups {
		wide, high, gapsAcross, gapsDown := a.extent(&a.Groups[i], w.stacked)
		w.groupWide, w.groupHigh = max(w.groupWide, wide*w.scale+gapsAcross), max(w.groupHigh, high*w.scale+gapsDown)
	}
	return true
}

// extent is how wide and high a group's pictures are where one of size 1 is 1, and the gaps between them, in pixels.
func (a *arranging) extent(g *Group, stacked bool) (wide, high, gapsAcross, gapsDown float64) {
	for i := range g.Parts {
		w, h := g.Parts[i].size()
		if stacked {
			wide, high = max(wide, w), high+h
		} else {
			wide, high = wide+w, max(high, h)
		}
	}
	gaps := float64(len(g.Parts)-1) * partGap * a.unit
	if stacked {
		return wide, high, 0, gaps
	}
	return wide, high, gaps, 0
}

// heading sets the title and its lines into a width.
func (a *arranging) heading(room float64) (list []Words, wide, high float64) {
	if title := a.shown(a.Title, true); title != "" {
		size := a.letter(titleSize)
		least := max(leastType, math.Round(size*shrunk))
		lines := a.broken(title, size, true, room)
		for size > least && (len(lines) > 2 || a.letters.Width(lines[0], size, true) > room) {
			size--
			lines = a.broken(title, size, true, room)
		}
		list, high = a.lines(list, a.clipped(lines, 2, size, true, room), size, true, high)
		high += a.unit * nameGap / 2
	}
	for _, text := range a.Lines {
		size := a.letter(lineSize)
		list, high = a.lines(list, a.clipped(a.broken(a.shown(text, false), size, false, room), 2, size, false, room), size, false, high)
	}
	for i := range list {
		wide = max(wide, list[i].Box.Width)
	}
	return list, wide, high
}

// lines adds lines of words below one another, from a height on.
func (a *arranging) lines(list []Words, texts []string, size float64, bold bool, high float64) ([]Words, float64) {
	for _, text := range texts {
		w := Words{Text: svgout.Text{Y: high + size*rise, Size: size, Text: text, Bold: bold}}
		w.Box = svgout.Box{Y: high, Width: a.letters.Width(text, size, bold), Height: size * leading}
		list, high = append(list, w), high+size*leading
	}
	return list, high
}

// caption sets the words below each group into a width.
func (a *arranging) caption(w *way, room float64) {
	w.captions = make([][]Words, len(a.Groups))
	for i := range a.Groups {
		g := &a.Groups[i]
		high := nameGap * a.unit
		if g.Name == "" && len(g.Says) == 0 {
			continue
		}
		if g.Name != "" {
			size := a.letter(nameSize)
			w.captions[i], high = a.lines(nil, a.clipped(a.broken(a.shown(g.Name, true), size, true, room), 2, size, true, room), size, true, high)
		}
		for _, text := range g.Says {
			size := a.letter(saysSize)
			w.captions[i], high = a.lines(w.captions[i], a.clipped(a.broken(a.shown(text, false), size, false, room), mostSays, size, false, room), size, false, high)
		}
		w.captionHigh = max(w.captionHigh, high)
		for n := range w.captions[i] {
			w.captionWide = max(w.captionWide, w.captions[i][n].Box.Width)
		}
	}
}

// shown is a text as the fonts have it.
func (a *arranging) shown(text string, bold bool) string {
	return strings.Join(strings.Fields(pdf.Shown(a.letters, text, bold, func(r rune) {
		if !strings.ContainsRune(string(a.lacks), r) {
			a.lacks = append(a.lacks, r)
		}
	})), " ")
}

// broken is a text in lines that fit into a width, but for single words that do not.
func (a *arranging) broken(text string, size float64, bold bool, room float64) (lines []string) {
	line := ""
	for _, word := range strings.Fields(text) {
		longer := strings.TrimLeft(line+" "+word, " ")
		if line != "" && a.letters.Width(longer, size, bold) > room {
			lines, longer = append(lines, line), word
		}
		line = longer
	}
	return append(lines, line)
}

// clipped is lines, so many at the most and each within a width, with an ellipsis where something is left out.
func (a *arranging) clipped(lines []string, most int, size float64, bold bool, room float64) []string {
	more := len(lines) > most
	lines = lines[:min(most, len(lines))]
	for i, line := range lines {
		left := more && i == len(lines)-1
		if !left && a.letters.Width(line, size, bold) <= room {
			continue
		}
		kept, state := "", -1
		for rest := line; rest != ""; {
			var cluster string
			cluster, rest, _, state = uniseg.FirstGraphemeClusterInString(rest, state)
			if a.letters.Width(kept+cluster+"…", size, bold) > room {
				break
			}
			kept += cluster
		}
		lines[i] = strings.TrimRight(kept, " ,;:") + "…"
	}
	return lines
}

// free arranges a poster on a canvas that is as high as it needs to be.
func (a *arranging) free() (*Canvas, error) {
	a.unboundDown = true
	a.set(usualWide, usualWide*usualHigh)
	var best *way
	var high float64
	for _, w := range a.ways() {
		if w.beside || !a.try(w) {
			continue
		}
		h := a.content(w) + 2*a.edge
		if best == nil || math.Abs(math.Log(h/a.high)) < math.Abs(math.Log(high/a.high)) {
			best, high = w, h
		}
	}
	if best == nil || high > MaxCanvas {
		return nil, &NoRoom{usualWide, MaxCanvas}
	}
	a.high = max(MinCanvas, math.Ceil(high))
	return a.canvas(best), nil
}

// rows is how many rows of groups a way has.
func (a *arranging) rows(w *way) int { return (len(a.Groups) + w.columns - 1) / w.columns }

// content is how high all is that a way puts below one another.
func (a *arranging) content(w *way) float64 {
	high := float64(a.rows(w))*(w.groupHigh+w.captionHigh) + float64(a.rows(w)-1)*groupGap*a.unit
	if w.beside {
		return max(high, w.headHigh)
	}
	if len(w.head) > 0 {
		high += headGap*a.unit + w.headHigh
	}
	return high
}
