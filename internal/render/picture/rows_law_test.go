package picture

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"eighthturn/internal/diagram"
	"eighthturn/internal/quilttest/lay"
	"eighthturn/palettes"
	"eighthturn/svgout"
)

// posterOf is a poster of some groups, each of one picture, on white.
func posterOf(scene *svgout.Scene, width, height, groups int) *Poster {
	p := &Poster{Width: width, Height: height, PerInch: 100, Margin: -1, Ground: palettes.Colour{R: 255, G: 255, B: 255}}
	for range groups {
		p.Groups = append(p.Groups, Group{Parts: []Part{{Scene: scene}}})
	}
	return p
}

// rowsOf are a canvas's pictures row by row.
func rowsOf(c *Canvas) (rows [][]Panel) {
	for _, p := range c.Panels {
		if n := len(rows); n == 0 || rows[n-1][0].At.Min.Y != p.At.Min.Y {
			rows = append(rows, nil)
		}
		rows[len(rows)-1] = append(rows[len(rows)-1], p)
	}
	return rows
}

func alikeTo(a, b int, by float64) bool { return math.Abs(float64(a-b)) <= by }

// TestRowsOfPosters: pictures without words stand in the middle of the canvas, as large as its margins let them; a last row of fewer stands in the middle, too, but where something is said of pictures, which are to be compared from above
// to below: then it begins where the others do.
func TestRowsOfPosters(t *testing.T) {
	scene := plainScene(t, lay.Top(t, smallQuilt), svgout.Colour, "")
	short := 0
	for groups := 1; groups < 8; groups++ {
		for _, size := range [][2]int{{900, 900}, {1400, 700}, {600, 1200}} {
			for _, says := range []string{"", "by hand"} {
				p := posterOf(scene, size[0], size[1], groups)
				if says != "" {
					p.Groups[groups-1].Says = []string{says}
				}
				c, err := p.Arrange()
				if err != nil {
					t.Fatal(err)
				}
				rows := rowsOf(c)
				first, last := rows[0], rows[len(rows)-1]
				left, right := first[0].At.Min.X, first[len(first)-1].At.Max.X
				if !alikeTo(left, size[0]-right, 1) || says == "" && !alikeTo(first[0].At.Min.Y, size[1]-last[0].At.Max.Y, 1) {
					t.Errorf("%d on %v: from %d to %d, %d to %d", groups, size, left, right, first[0].At.Min.Y, last[0].At.Max.Y)
				}
				edge := int(math.Round(0.06 * float64(min(size[0], size[1]))))
				if says == "" && !alikeTo(left, edge, 1) && !alikeTo(first[0].At.Min.Y, edge, 1) {
					t.Errorf("%d on %v: the pictures begin at %v, the margin is %d", groups, size, first[0].At.Min, edge)
				}
				if len(last) < len(first) {
					short++
					begins, ends := last[0].At.Min.X, last[len(last)-1].At.Max.X
					if says != "" && begins != left || says == "" && !alikeTo(begins-left, right-ends, 2) {
						t.Errorf("%d on %v, %q: the last row goes from %d to %d, the first from %d to %d", groups, size, says, begins, ends, left, right)
					}
				}
			}
		}
	}
	if short < 8 {
		t.Errorf("only %d last rows were shorter", short)
	}
}

// TestTitlesBeside: where the title stands beside the pictures, these are in the middle between head and foot, and so is the title; both together are in the middle between the sides, 0.054 of the canvas apart.
func TestTitlesBeside(t *testing.T) {
	p := posterOf(plainScene(t, lay.Top(t, smallQuilt), svgout.Colour, ""), 1600, 500, 1)
	p.Title, p.Lines = "Tide", []string{"by hand", "by the sea"}
	c, err := p.Arrange()
	if err != nil {
		t.Fatal(err)
	}
	first, last, right := c.Words[0].Box, c.Words[len(c.Words)-1].Box, 0.0
	for _, w := range c.Words {
		right = max(right, w.Box.X+w.Box.Width)
	}
	if at := c.Panels[0].At; math.Abs(float64(at.Min.X)-(1600-right)) > 1 || math.Abs(first.X-float64(at.Max.X)-0.054*math.Sqrt(1600*500)) > 1 {
		t.Errorf("the picture goes from %d to %d, the words from %g to %g", at.Min.X, at.Max.X, first.X, right)
	}
	if low, high := c.Panels[0].At.Min.Y, c.Panels[len(c.Panels)-1].At.Max.Y; first.X < float64(c.Panels[0].At.Max.X) || !alikeTo(low, 500-high, 1) || math.Abs(first.Y-(500-last.Y-last.Height)) > 1 {
		t.Errorf("pictures from %d to %d, words from %g to %g, beginning at %g", low, high, first.Y, last.Y+last.Height, first.X)
	}
}

// TestWaysOfPosters: pictures stand in every number of columns, those of a group also one below the other where some have several, and the title also beside them where there is one, or lines.
func TestWaysOfPosters(t *testing.T) {
	for _, c := range []struct {
		title  string
		lines  []string
		parts  []int // of each group
		want   string
		beside bool
	}{
		{"", nil, []int{1}, "1", false}, {"", nil, []int{1, 1}, "1 2", false}, {"", nil, []int{1, 2, 1}, "1 2 3 s1 s2 s3", false}, {"Tide", nil, []int{1, 1}, "1 2 b1 b2", true}, {"", []string{"by hand"}, []int{1}, "1 b1", true}, {"Tide", []string{"by hand"}, []int{2}, "1 s1 b1 bs1", true},
	} {
		p := &Poster{Title: c.title, Lines: c.lines}
		for _, n := range c.parts {
			p.Groups = append(p.Groups, Group{Parts: make([]Part, n)})
		}
		var got []string
		for _, w := range (&arranging{Poster: p}).ways() {
			got = append(got, map[bool]string{true: "b"}[w.beside]+map[bool]string{true: "s"}[w.stacked]+fmt.Sprint(w.columns))
		}
		if list := strings.Join(got, " "); list != c.want {
			t.Errorf("%+v: %s", c, list)
		}
	}
}

// TestTitlesHaveRoom: a title has the largest letters, of whole pixels, at which it takes two lines at the most and its first fits; none smaller than 0.6 of the usual ones, at which what is left over of it gives way to an ellipsis. Lines below it take two lines
// at the most, too.
func TestTitlesHaveRoom(t *testing.T) {
	text := "Lanterns along the quay at the turn of the tide for everyone"
	sizes := map[float64]bool{}
	for room := 60.0; room < 1500; room += 20 {
		a := &arranging{Poster: &Poster{Title: text, Lines: []string{text + ", and for those who come late"}}, letters: diagram.NewLettering()}
		a.set(1000, 1000)
		list, _, _ := a.heading(room)
		var title, line []Words
		for _, w := range list {
			if w.Bold {
				title = append(title, w)
			} else {
				line = append(line, w)
			}
		}
		want := 43.0 // 0.043 of the canvas
		fits := func(size float64) bool {
			lines := a.broken(text, size, true, room)
			return len(lines) <= 2 && a.letters.Width(lines[0], size, true) <= room
		}
		for want > 26 && !fits(want) { // 0.6 of it
			want--
		}
		sizes[want] = true
		whole := strings.Join([]string{title[0].Text.Text, title[len(title)-1].Text.Text}[:len(title)], " ")
		if title[0].Size != want || len(title) > 2 || (whole == text) != fits(want) && title[len(title)-1].Text.Text[len(title[len(title)-1].Text.Text)-3:] != "…" {
			t.Errorf("room of %g: %d lines in %g, expected %g: %q", room, len(title), title[0].Size, want, whole)
		}
		if len(line) > 2 || slices.ContainsFunc(line, func(w Words) bool { return w.Box.Width > room && w.Text.Text != "…" }) || len(a.broken(a.Lines[0], line[0].Size, false, room)) > 2 != strings.HasSuffix(line[len(line)-1].Text.Text, "…") {
			t.Errorf("room of %g: %d lines below the title, %+v", room, len(line), line)
		}
	}
	if len(sizes) < 6 {
		t.Errorf("only the sizes %v were taken", sizes)
	}
}

// TestCanvasesShowPrints: pictures on a canvas show their prints, as pictures by themselves do.
func TestCanvasesShowPrints(t *testing.T) {
	scene := scened(t, printedBy(t, gardens, 40, 30), svgout.Options{Prints: true})
	c, err := posterOf(scene, 300, 300, 1).Arrange()
	if err != nil {
		t.Fatal(err)
	}
	job, err := c.panel(&c.Panels[0])
	if err != nil || job.Tiles == nil || len(job.Places) != len(scene.Top.Faces) || job.Size.Width != c.Panels[0].At.Dx() || job.Size.Height != c.Panels[0].At.Dy() {
		t.Errorf("%v, tiles %v, %d places, %v", err, job.Tiles, len(job.Places), job.Size)
	}
}
