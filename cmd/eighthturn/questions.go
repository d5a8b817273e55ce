package main

import (
	"bufio"
	"cmp"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"

	"eighthturn/internal/measure"
	"eighthturn/internal/plan/fit"
	"eighthturn/internal/plan/supplies"
	"eighthturn/internal/quilt"
	"eighthturn/internal/render"
	"eighthturn/layout"
	"eighthturn/palettes"
	"eighthturn/samples/starters"
)

// errNoAnswer says that the input ended where an answer was expected.
var errNoAnswer = errors.New("no answer")

// inTerminal says whether somebody can be asked.
func (c *console) inTerminal() bool { return isDevice(c.in) && isDevice(c.out) }

// dialog asks questions, one line each.
type dialog struct {
	*console
	keys *bufio.Reader
}

func (c *console) dialog() *dialog { return &dialog{c, bufio.NewReader(c.in)} }

// ask shows a question and reads its answer, until take is content with it.
func (d *dialog) ask(question string, take func(answer string) error) error {
	for {
		if err := d.print(question); err != nil {
			return err
		}
		line, err := d.keys.ReadString('\n')
		if err != nil && (!errors.Is(err, io.EOF) || line == "") {
			return errNoAnswer
		}
		wrong := take(strings.TrimSpace(line))
		if wrong == nil {
			return nil
		}
		if err := d.print("  " + layout.Visible(wrong.Error()) + "\n"); err != nil {
			return err
		}
	}
}

// picked takes the number or the name of one of a list; nothing is an index below 0.
func picked(answer string, names []string, what string, to *int) error {
	if answer == "" {
		*to = -1
		return nil
	}
	if n, err := strconv.Atoi(answer); err == nil && n >= 1 && n <= len(names) {
		*to = n - 1
		return nil
	}
	if i := slices.IndexFunc(names, func(n string) bool { return strings.EqualFold(n, answer) }); i >= 0 {
		*to = i
		return nil
	}
	message := "no " + what + " is called " + quoted(answer)
	if near := nearest(answer, names); near != "" {
		message += "; " + didYouMean(near)
	}
	return errors.New(message)
}

// numbered is a list to choose from.
func numbered(names, about []string) string {
	var rows [][2]string
	for i, n := range names {
		rows = append(rows, [2]string{strconv.Itoa(i+1) + "  " + n, about[i]})
	}
	return render.Labeled(rows, "  ")
}

// compose asks what quilt it is to be, and gives its kind and its layout.
func (d *dialog) compose() (kind, text string, err error) {
	s, err := d.askKind()
	if err != nil {
		return "", "", err
	}
	text = s.Text
	if text, err = d.askSize(text); err != nil {
		return "", "", err
	}
	text, err = d.askPalette(text)
	return s.Name, text, err
}

func (d *dialog) askKind() (starters.Starter, error) {
	list := starters.All()
	at := 0
	err := d.ask("\nWhich kind of quilt?\n"+numbered(sortNames(), mapped(list, func(s starters.Starter) string { return s.About }))+
		"Its number or name, or Enter for "+list[0].Name+": ", func(answer string) error {
		return picked(answer, sortNames(), "kind of quilt", &at)
	})
	return list[max(at, 0)], err
}

// askSize asks for a bed or a size, and gives the layout with the blocks and borders that come nearest.
func (d *dialog) askSize(text string) (string, error) {
	design, _, _ := layout.Read(text)
	if design == nil {
		return text, nil // no starter has errors
	}
	outer := quilt.Lay(design).Outer
	question := "\nHow large?\n" + render.Wrapped("A bed ("+strings.Join(bedNames(), ", ")+"), or a width and a height such as 60 x 80.", "  ") +
		"Or Enter for " + design.Units.By(outer.Width(), outer.Height()) + ": "
	made := text
	err := d.ask(question, func(answer string) error {
		if answer == "" {
			return nil
		}
		wanted, err := wantedSize(answer, design.Units)
		if err != nil {
			return err
		}
		r, err := fit.Fit(text, fit.Options{Wanted: wanted})
		if err != nil || len(r.Suggestions) == 0 {
			return errors.New("this kind of quilt cannot have that size; try a larger one")
		}
		made = r.Suggestions[0].Text
		return nil
	})
	return made, err
}

// wantedSize reads a bed or two lengths.
func wantedSize(answer string, s measure.System) (fit.Wanted, error) {
	if bed, ok := supplies.FindBed(answer); ok {
		return fit.ForBed(bed), nil
	}
	wide, high, two := strings.Cut(strings.NewReplacer("×", "x", "X", "x", " by ", "x").Replace(answer), "x")
	w, h := measureOption{option: widthName, most: layout.MaxTop, example: "60"}, measureOption{option: heightName, most: layout.MaxTop, example: "80"}
	if !two || cmp.Or(w.Set(strings.TrimSpace(wide)), h.Set(strings.TrimSpace(high))) != nil || w.withinMost(s) != nil || h.withinMost(s) != nil {
		return fit.Wanted{}, errors.New(quoted(answer) + " is no bed and no width and height")
	}
	return fit.Wanted{Finished: supplies.Size{Width: w.in(s), Height: h.in(s)}}, nil
}

func (d *dialog) askPalette(text string) (string, error) {
	list, at := palettes.All(), -1
	names := mapped(list, func(p palettes.Palette) string { return p.Name })
	err := d.ask("\nWhich palette?\n"+numbered(names, mapped(list, func(p palettes.Palette) string { return p.About }))+
		"Its number or name, or Enter for the colors that it has: ", func(answer string) error {
		return picked(answer, names, "palette", &at)
	})
	if err != nil || at < 0 {
		return text, err
	}
	return recolored(text, list[at]), nil
}

// recolored is a layout with the colors of a palette, and their names where they are free: the darkest fabric gets the darkest color and
// so on, so that what was light and dark stays that.
func recolored(text string, p palettes.Palette) string {
	r := layout.Outline(text)
	mentions := r.Tree.Mentions()
	taken := map[string]bool{}
	for _, m := range mentions {
		if m.Scope == layout.Cloths && m.Defines != "" && m.Defines != "fabric" {
			taken[m.Key()] = true
		}
	}
	type fabric struct {
		name   string
		colour palettes.Colour
		at     layout.Span // of the color
	}
	var fabrics []fabric
	for _, f := range r.Tree.Fabrics {
		fabrics = append(fabrics, fabric{f.Name.Text, f.Colour, f.PlaceOfColor()})
	}
	slices.SortStableFunc(fabrics, func(a, b fabric) int { return cmp.Compare(a.colour.Lightness(), b.colour.Lightness()) })
	swatches := slices.Clone(p.Fabrics)
	slices.SortStableFunc(swatches, func(a, b palettes.Swatch) int { return cmp.Compare(a.Colour.Lightness(), b.Colour.Lightness()) })
	names := map[string]string{} // by what a fabric is called now
	var edits []layout.Edit
	for i, f := range fabrics {
		s := swatches[i*(len(swatches)-1)/max(1, len(fabrics)-1)]
		edits = append(edits, layout.Edit{Span: f.at, Text: s.Colour.Hex()})
		if len(fabrics) <= len(swatches) && !taken[layout.FoldName(s.Name)] && layout.IsFree(s.Name, layout.Cloths) {
			names[layout.FoldName(f.name)] = s.Name
		}
	}
	if len(names) == len(fabrics) { // else a new name might be another fabric's old one
		for _, m := range mentions {
			if name := names[m.Key()]; m.Scope == layout.Cloths && name != "" {
				edits = append(edits, layout.Edit{Span: m.Span, Text: name})
			}
		}
	}
	slices.SortFunc(edits, func(a, b layout.Edit) int { return cmp.Compare(a.Span.Start, b.Span.Start) })
	edits = slices.Compact(edits) // blocks like others name what these name
	tidy, _ := layout.Tidy(layout.Apply(text, edits))
	return tidy
}

// beginHere asks what quilt it is to be, writes its layout and shows it in the browser. Without a name the layout has that of its
// kind, with a number where that is taken.
func (d *dialog) beginHere(path string, open bool) error {
	kind, text, err := d.compose()
	if err != nil {
		return err
	}
	for n := 2; path == ""; n++ {
		path = kind + layoutEnding
		if _, err := os.Lstat(path); !errors.Is(err, fs.ErrNotExist) {
			path = fmt.Sprintf("%s-%d%s", kind, n, layoutEnding)
		}
		if _, err := os.Lstat(path); !errors.Is(err, fs.ErrNotExist) {
			path = ""
		}
	}
	if err := d.print("\n"); err != nil {
		return err
	}
	if err := d.writeNew(path, text); err != nil || !open || path == stdio {
		return err
	}
	if code := run([]string{"preview", path}, d.console); code != done {
		return &reported{code}
	}
	return nil
}

// offerFirst offers a first layout to one who typed the program's name alone in a folder without layouts; taken says whether it was
// taken, or the input ended.
func (c *console) offerFirst() (taken bool, err error) {
	there, err := filepath.Glob("*" + layoutEnding)
	if err != nil || len(there) > 0 {
		return false, nil
	}
	d := c.dialog()
	begin := true
	err = d.ask("There is no layout in this folder yet. Begin one now, and see it in your browser?\nEnter for yes, n for no: ", func(answer string) error {
		switch strings.ToLower(answer) {
		case "", "y", "yes":
		case "n", "no":
			begin = false
		default:
			return errors.New("press Enter, or type n")
		}
		return nil
	})
	if err == nil && begin {
		err = d.beginHere("", true)
	}
	if errors.Is(err, errNoAnswer) {
		return true, c.print("\n")
	}
	return begin, err
}
