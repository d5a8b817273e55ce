package preview

import (
	"cmp"
	"context"
	"fmt"
	"reflect"
	"runtime/debug"
	"slices"
	"strings"

	"eighthturn/internal/files"
	"eighthturn/internal/plan/contrast"
	"eighthturn/internal/quilt"
	"eighthturn/internal/stop"
	"eighthturn/layout"
	"eighthturn/palettes"
)

// drawing is what became of one text.
type drawing struct {
	design  *layout.Design // nil if the text has errors
	top     *quilt.Top     // nil if the text has errors
	like    *quilt.Top     // the same top in other colours, if it was made of that
	written *quilt.Top     // the quilt as it is written
	sized   *quilt.Top     // the same in the size that is shown
	tries   []contrast.Try // other colours that it is shown in
	source  *layout.Source
	faults  []layout.Fault
	photos  map[string]bool // those that the layout names, which decide its colours too
	broke   string          // what went wrong inside the program, "" if nothing did
}

// drawer makes a drawing of a text; the one before spares it work. The error is the context's, if it ends before.
type drawer func(ctx context.Context, text string, before drawing) (drawing, error)

// variant is the size and the colorway that quilts are shown in; "" for as they are written.
type variant struct{ size, colorway string }

// drawWith runs a text through the stream, with the photos that it names. A panic on the way
// is the program's own fault, and is told as that. What differs from the drawing before in
// colours alone is not laid again.
//
// It is shown in a size and a colorway where they are named, and the fabrics that other colors are tried for in those.
func drawWith(album *files.Album, in variant, tries ...string) drawer {
	return func(ctx context.Context, text string, before drawing) (d drawing, err error) {
		d = safely(text, func() (d drawing) {
			err = stop.Do(ctx, func(sign *stop.Sign) {
				d = drawText(sign, text, before, album)
				if d.top != nil {
					d.choose(sign, in)
				}
				if d.top != nil && len(tries) > 0 {
					d.try(tries)
				}
				d.sortFaults()
			})
			return d
		})
		return d, err
	}
}

// choose shows the top in a size and a colorway; where it has none of the name, it says so.
func (d *drawing) choose(sign *stop.Sign, in variant) {
	if in.size != "" {
		if size, err := d.top.SizeNamed(in.size); err != nil {
			d.unchosen(err)
		} else {
			d.top = size.Top(sign)
		}
	}
	d.sized = d.top
	if in.colorway != "" {
		if chosen, err := d.top.InNamed(in.colorway); err != nil {
			d.unchosen(err)
		} else {
			d.top = chosen
		}
	}
}

// unchosen says that a layout has no such colorway, or no such size.
func (d *drawing) unchosen(err error) {
	d.faults = append(slices.Clone(d.faults), layout.Fault{Severity: layout.Warning, Message: err.Error() + "; it is shown as written"})
}

// try shows fabrics in other colors and says so.
func (d *drawing) try(tries []string) {
	var list []contrast.Try
	for _, text := range tries {
		try, err := contrast.ParseTry(d.top, text)
		if err != nil {
			d.faults = append(slices.Clone(d.faults), layout.Fault{Severity: layout.Warning, Message: "tried color " + err.Error()})
			continue
		}
		f := &d.top.Fabrics[try.Fabric]
		list = append(list, try)
		d.faults = append(slices.Clone(d.faults), layout.Fault{Severity: layout.Warning, Span: f.Place,
			Message: fmt.Sprintf("%s is tried in %s; the layout is not changed", f.Name, try.Colour.Hex())})
	}
	d.tries, d.top = list, contrast.Tried(d.top, list)
}

// sortFaults puts the faults of the text and those of the top in one order.
func (d *drawing) sortFaults() {
	slices.SortStableFunc(d.faults, func(a, b layout.Fault) int { return cmp.Compare(a.Span.Start, b.Span.Start) })
}

// safely makes a drawing, or one that tells of the panic.
func safely(text string, make func() drawing) (d drawing) {
	defer func() {
		if r := recover(); r != nil {
			d = drawing{source: layout.NewSource(text), broke: fmt.Sprint(r) + "\n" + ownCalls(string(debug.Stack()))}
		}
	}()
	return make()
}

func drawText(sign *stop.Sign, text string, before drawing, album *files.Album) drawing {
	d := drawing{photos: map[string]bool{}}
	var look func(string) (palettes.PhotoSample, error)
	if album != nil {
		look = func(name string) (palettes.PhotoSample, error) {
			d.photos[name] = true
			return album.ClothUntil(sign, name)
		}
	}
	design, source, faults := layout.ReadWith(text, look)
	sign.Look()
	d.design, d.source, d.faults = design, source, faults
	switch {
	case design == nil:
	case before.written != nil && onlyRecoloured(before.design, design):
		d.top, d.like = before.written.Recolored(design), before.top
	default:
		d.top = quilt.LayUntil(sign, design)
	}
	d.written = d.top
	if d.top != nil && len(d.top.Warnings) > 0 {
		d.faults = slices.Concat(d.faults, d.top.Warnings)
	}
	return d
}

// onlyRecoloured says whether two designs are the same, with every place in the source, but
// for the colours, photos and print names of fabrics.
func onlyRecoloured(before, now *layout.Design) bool {
	if len(before.Fabrics) != len(now.Fabrics) || len(before.Sizes) != len(now.Sizes) || !slices.Equal(before.Cells, now.Cells) {
		return false
	}
	for i := range before.Sizes {
		a, b := before.Sizes[i], now.Sizes[i]
		if !onlyRecoloured(a.Design, b.Design) {
			return false
		}
		if a.Design, b.Design = nil, nil; a != b {
			return false
		}
	}
	a, b := *before, *now
	a.Cells, b.Cells, a.Sizes, b.Sizes = nil, nil, nil, nil
	b.Fabrics = slices.Clone(b.Fabrics)
	for i := range b.Fabrics {
		b.Fabrics[i].Colour, b.Fabrics[i].Print, b.Fabrics[i].Photo = a.Fabrics[i].Colour, a.Fabrics[i].Print, a.Fabrics[i].Photo
	}
	return reflect.DeepEqual(&a, &b)
}

// ownCalls are the program's own functions on a stack, without the folders that they were
// built in.
func ownCalls(stack string) string {
	var calls []string
	for line := range strings.Lines(stack) {
		if end := strings.LastIndexByte(line, '('); end > 0 && strings.HasPrefix(line, "eighthturn/") && len(calls) < 8 {
			calls = append(calls, "in "+line[:end])
		}
	}
	return strings.Join(calls, "\n")
}
