package paper

import (
	"encoding/base64"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"strconv"
	"strings"

	"eighthturn/palettes"
)

// drawn is a picture as package svgout wrote it, read back. It is in user units of that
// package's, 96 an inch.
type drawn struct {
	width, height float64
	title         string
	marks         []mark
}

// mark is one thing that is drawn: paths, words or an image.
type mark struct {
	cloth   bool // it is the fabrics' own and not drawn over them
	paths   []path
	fill    *palettes.Colour
	line    *palettes.Colour
	width   float64
	dashes  []float64
	round   bool    // ends and corners of lines
	opacity float64 // of the line
	words   *words
	image   []byte // a PNG file, over the rectangle of the first path
	print   int    // the fabric, from 1, by whose photo the paths are filled; 0 for a colour
}

type path struct {
	points []xy
	closed bool
}

type xy struct{ x, y float64 }

// words are a text, the place where its line of letters begins or has its middle, and its
// size.
type words struct {
	text   string
	at     xy
	size   float64
	bold   bool
	middle bool
}

// style is what elements take over from those about them.
type style map[string]string

// readDrawn reads a picture of package svgout's. What that package does not write is an
// error: nothing is passed over that could be seen.
func readDrawn(svg io.Reader, what reading) (*drawn, error) {
	r := &reader{decoder: xml.NewDecoder(svg), drawn: &drawn{}, what: what}
	for {
		token, err := r.decoder.Token()
		if errors.Is(err, io.EOF) {
			return r.drawn, nil
		}
		if err != nil {
			return nil, err
		}
		switch t := token.(type) {
		case xml.StartElement:
			err = r.begin(t)
		case xml.EndElement:
			r.end()
		case xml.CharData:
			r.text.Write(t)
		}
		if err != nil {
			return nil, err
		}
	}
}

// reading is how much of a picture is read.
type reading uint8

const (
	wholeDrawing reading = iota
	withoutCloth         // what is drawn over the cloth or in its place
)

// reader is the work on one picture.
type reader struct {
	what reading
	*drawn
	decoder *xml.Decoder
	open    []element
	within  int // so many elements of definitions are open, which are not drawn by themselves
	text    strings.Builder
}

type element struct {
	name  string
	style style
	cloth bool
}

func (r *reader) begin(t xml.StartElement) error {
	e := element{name: t.Name.Local, style: style{}}
	if n := len(r.open); n > 0 {
		e.cloth = r.open[n-1].cloth
		for k, v := range r.open[n-1].style {
			e.style[k] = v
		}
	}
	for _, a := range t.Attr {
		e.style[a.Name.Local] = a.Value
	}
	r.text.Reset()
	r.open = append(r.open, e)
	if r.within > 0 || e.name == "defs" {
		r.within++
		return nil
	}
	if e.cloth && r.what == withoutCloth {
		return nil
	}
	switch e.name {
	case "svg":
		return r.size(e.style["viewBox"])
	case "g":
		id := e.style["id"]
		r.open[len(r.open)-1].cloth = strings.HasSuffix(id, "beneath") || strings.Contains(id, "fabric-")
	case "path":
		return r.path(e)
	case "rect":
		return r.rect(e)
	case "image":
		return r.image(e)
	case "text", "title", "desc":
	default:
		return fmt.Errorf("the picture has a part that cannot be printed, %q", e.name)
	}
	return nil
}

// end ends an element; words are known only then.
func (r *reader) end() {
	last := len(r.open) - 1
	e := r.open[last]
	r.open = r.open[:last]
	if r.within > 0 {
		r.within--
		return
	}
	switch {
	case e.name == "title" && last == 1:
		r.title = r.text.String()
	case e.name == "text":
		m := r.mark(e)
		m.words = &words{text: r.text.String(), at: xy{e.number("x"), e.number("y")}, size: e.number("font-size"), bold: e.style["font-weight"] == "bold", middle: e.style["text-anchor"] == "middle"}
		r.marks = append(r.marks, m)
	}
	r.text.Reset()
}

func (r *reader) size(viewBox string) error {
	_, err := fmt.Sscanf(viewBox, "0 0 %g %g", &r.width, &r.height)
	if err != nil || !(r.width > 0 && r.height > 0) {
		return fmt.Errorf("the picture has no size, its view box is %q", viewBox)
	}
	return nil
}

// number is an attribute as a number, 0 where it is none.
func (e *element) number(name string) float64 {
	v, _ := strconv.ParseFloat(e.style[name], 64)
	return v
}

// mark is a mark with the paint of an element.
func (r *reader) mark(e element) mark {
	m := mark{cloth: e.cloth, opacity: 1, width: e.number("stroke-width"), round: e.style["stroke-linecap"] == "round"}
	m.fill, m.line = e.colour("fill", "#000000"), e.colour("stroke", "none")
	if text, ok := e.style["stroke-opacity"]; ok {
		m.opacity, _ = strconv.ParseFloat(text, 64)
	}
	for _, word := range strings.Fields(strings.ReplaceAll(e.style["stroke-dasharray"], ",", " ")) {
		v, _ := strconv.ParseFloat(word, 64)
		m.dashes = append(m.dashes, v)
	}
	if m.width <= 0 {
		m.line = nil
	}
	return m
}

func (e *element) colour(name, usual string) *palettes.Colour {
	text, ok := e.style[name]
	if !ok {
		text = usual
	}
	c, err := palettes.Parse(text)
	if text == "none" || err != nil {
		return nil
	}
	return &c
}

func (r *reader) rect(e element) error {
	m := r.mark(e)
	if err := m.printOf(e.style["fill"]); err != nil {
		return err
	}
	x, y, width, height := e.number("x"), e.number("y"), e.number("width"), e.number("height")
	m.paths = []path{{[]xy{{x, y}, {x + width, y}, {x + width, y + height}, {x, y + height}}, true}}
	r.marks = append(r.marks, m)
	return nil
}

// imageHead is how an image within a picture begins.
const imageHead = "data:image/png;base64,"

func (r *reader) image(e element) error {
	data, ok := strings.CutPrefix(e.style["href"], imageHead)
	if !ok {
		return errors.New("the picture has an image that is no PNG")
	}
	file, err := base64.StdEncoding.DecodeString(data)
	if err != nil {
		return err
	}
	if err := r.rect(e); err != nil {
		return err
	}
	r.marks[len(r.marks)-1].image = file
	return nil
}

// printOf notes whose photo fills a mark, if one does.
func (m *mark) printOf(fill string) error {
	id, ok := strings.CutPrefix(fill, "url(#")
	if !ok {
		return nil
	}
	_, number, found := strings.Cut(strings.TrimSuffix(id, ")"), "print-")
	n, err := strconv.Atoi(number)
	if !found || err != nil || n < 1 {
		return fmt.Errorf("the picture has a fill that cannot be printed, %q", fill)
	}
	m.print = n
	return nil
}

// path reads path data: moves, lines and closings, in absolute places.
func (r *reader) path(e element) error {
	m := r.mark(e)
	if err := m.printOf(e.style["fill"]); err != nil {
		return err
	}
	data := e.style["d"]
	for data != "" {
		command := data[0]
		end := strings.IndexAny(data[1:], "MLZ") + 1
		if end == 0 {
			end = len(data)
		}
		if err := m.step(command, data[1:end]); err != nil {
			return err
		}
		data = data[end:]
	}
	r.marks = append(r.marks, m)
	return nil
}

// step adds one step of path data.
func (m *mark) step(command byte, numbers string) error {
	if command == 'Z' && len(m.paths) > 0 {
		m.paths[len(m.paths)-1].closed = true
		return nil
	}
	x, y, ok := strings.Cut(numbers, " ")
	var p xy
	var errs [2]error
	p.x, errs[0] = strconv.ParseFloat(x, 64)
	p.y, errs[1] = strconv.ParseFloat(y, 64)
	if err := errors.Join(errs[:]...); !ok || err != nil {
		return fmt.Errorf("path data %q cannot be read", string(command)+numbers)
	}
	switch {
	case command == 'M':
		m.paths = append(m.paths, path{points: []xy{p}})
	case command == 'L' && len(m.paths) > 0:
		last := &m.paths[len(m.paths)-1]
		last.points = append(last.points, p)
	default:
		return fmt.Errorf("path data %q cannot be read", string(command)+numbers)
	}
	return nil
}
