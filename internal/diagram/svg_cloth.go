package diagram

import (
	"bytes"
	"crypto/sha256"
	"encoding/base64"
	"fmt"
	"io"
	"math"
	"slices"

	"eighthturn/internal/measure"
	"eighthturn/palettes"
)

// clothPattern is a print at a place of its repeat, as an SVG pattern.
type clothPattern struct {
	print *Print
	at    measure.Vec // where the first repeat begins
	turn  float64
	fill  palettes.Colour
	id    string
}

// first is where the first repeat of a cloth begins on a sheet, of one that is turned any of them.
func (c *Cloth) first() measure.Vec {
	if c.Turn != 0 {
		return measure.Vec{X: math.Round(c.At.X*1e4) / 1e4, Y: math.Round(c.At.Y*1e4) / 1e4}
	}
	within := func(v, size float64) float64 { return math.Round((v-float64(math.Floor(v/size)*size))*1e4) / 1e4 }
	return measure.Vec{X: within(c.At.X, c.Size.X), Y: within(c.At.Y, c.Size.Y)}
}

// cloths defines a pattern for each print of a sheet, its picture once, and one more for each other place of its repeat. Names are the
// sheet's own, since pages hold many. The fill lies beneath, for viewers that show no pictures.
func (d *drawing) cloths(s *Sheet, out io.Writer) {
	for i := range s.Items {
		shape := s.Items[i].Shape
		if shape == nil || shape.Cloth == nil || d.pattern(shape) != nil {
			continue
		}
		if d.prints == nil {
			fmt.Fprintln(out, "<defs>")
		}
		c, at := shape.Cloth, shape.Cloth.first()
		p := clothPattern{c.Print, at, c.Turn, shape.Fill, fmt.Sprintf("print-%x-%d", sum(s.Title, c.File), len(d.prints)+1)}
		move := `patternTransform="translate(` + number(at.X) + " " + number(at.Y) + `)` + rotated(c.Turn) + `"`
		if of := slices.IndexFunc(d.prints, func(q clothPattern) bool { return q.print == c.Print && q.fill == shape.Fill }); of >= 0 {
			fmt.Fprintf(out, `<pattern id="%s" xlink:href="#%s" %s/>`+"\n", p.id, d.prints[of].id, move)
		} else {
			fmt.Fprintf(out, `<pattern id="%s" patternUnits="userSpaceOnUse" width="%s" height="%s" %s>`+"\n", p.id, number(c.Size.X), number(c.Size.Y), move)
			fmt.Fprintf(out, `<rect width="%s" height="%s" fill="%s"/>`+"\n", number(c.Size.X), number(c.Size.Y), shape.Fill.Hex())
			fmt.Fprintf(out, `<image x="%s" y="%s" width="%s" height="%s" preserveAspectRatio="none" xlink:href="data:image/png;base64,%s"/>`+"\n</pattern>\n",
				number(-c.Margin.X), number(-c.Margin.Y), number(c.Size.X+2*c.Margin.X), number(c.Size.Y+2*c.Margin.Y), base64.StdEncoding.EncodeToString(c.File))
		}
		d.prints = append(d.prints, p)
	}
	if d.prints != nil {
		fmt.Fprintln(out, "</defs>")
	}
}

// rotated writes by how much a cloth is turned, nothing where it is not.
func rotated(degrees float64) string {
	if degrees == 0 {
		return ""
	}
	return " rotate(" + number(degrees) + ")"
}

// sum tells a picture of one figure from others on a page.
func sum(title string, file []byte) []byte {
	all := sha256.Sum256(bytes.Join([][]byte{[]byte(title), file}, []byte{0}))
	return all[:4]
}

// pattern is what a shape is filled with, nil where that is not there yet.
func (d *drawing) pattern(s *Shape) *clothPattern {
	at := s.Cloth.first()
	n := slices.IndexFunc(d.prints, func(p clothPattern) bool {
		return p.print == s.Cloth.Print && p.fill == s.Fill && p.at == at && p.turn == s.Cloth.Turn
	})
	if n < 0 {
		return nil
	}
	return &d.prints[n]
}

// paint are the attributes of a shape, filled with its cloth where it shows that.
func (d *drawing) paint(s *Shape) []string {
	list := s.paint()
	if s.Cloth != nil {
		list[0] = `fill="url(#` + d.pattern(s).id + `)"`
	}
	return list
}
