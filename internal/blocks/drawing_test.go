package blocks

import (
	"fmt"
	"strings"
	"testing"
)

// amiss is what in a kind's drawing differs from its pieces: one letter a piece, within that piece, and marks at the
// corners that belong to centres.
func amiss(k *Kind) []string {
	lines := k.Picture()
	wide, high := len(lines[0]), len(lines)
	var list []string
	for _, line := range lines {
		if len(line) != wide || strings.ContainsFunc(line, func(r rune) bool { return r < ' ' || r > '~' }) {
			list = append(list, fmt.Sprintf("the line %q does not fit", line))
		}
	}
	if list != nil || wide < 9 || high < 5 || wide > 21 {
		return append(list, fmt.Sprintf("%d by %d", wide, high))
	}
	if k.Column {
		return list
	}
	letters := make([]int, len(k.Pieces))
	for row, line := range lines {
		for column, r := range line {
			role := roleOf(k, r)
			if role < 0 {
				continue
			}
			at := [2]float64{float64(column) / float64(wide-1), float64(row) / float64(high-1)}
			in := pieceAt(k, at)
			if in < 0 || k.Pieces[in].Role != role {
				list = append(list, fmt.Sprintf("%c stands in row %d, column %d, in no piece of its role", r, row, column))
				continue
			}
			letters[in]++
		}
	}
	for i, n := range letters {
		if n != 1 {
			list = append(list, fmt.Sprintf("piece %d has %d letters", i, n))
		}
	}
	return append(list, marksAmiss(k, lines)...)
}

// roleOf is the role whose letter it is, -1 for none.
func roleOf(k *Kind, letter rune) int {
	for i := range k.Roles {
		if k.Roles[i].Letter == string(letter) {
			return i
		}
	}
	return -1
}

// pieceAt is the piece that has a point of the unit square inside, -1 for none.
func pieceAt(k *Kind, at [2]float64) int {
	for i, p := range k.Pieces {
		inside := true
		for j, a := range p.Outline {
			b := p.Outline[(j+1)%len(p.Outline)]
			ax, ay, bx, by := unit(a.X), unit(a.Y), unit(b.X), unit(b.Y)
			inside = inside && (bx-ax)*(at[1]-ay)-(by-ay)*(at[0]-ax) > 0
		}
		if inside {
			return i
		}
	}
	return -1
}

func unit(c Coord) float64 {
	const k = 0.70710678118654752440
	return [...]float64{Zero: 0, Short: 1 - k, Mid: 0.5, Long: k, Full: 1}[c]
}

func marksAmiss(k *Kind, lines []string) []string {
	top, bottom := lines[0], lines[len(lines)-1]
	found := [4]byte{NW: top[0], NE: top[len(top)-1], SE: bottom[len(bottom)-1], SW: bottom[0]}
	var list []string
	for c, mark := range found {
		wedges, kites := Tips(k.Pieces, Corner(c))
		want := byte('+')
		switch {
		case k.Turning.InLattice() && wedges > 0:
			want = WebMark
		case k.Turning.InLattice() && kites > 0:
			want = StarMark
		}
		if mark != want {
			list = append(list, fmt.Sprintf("at %s stands %c, want %c", Corner(c), mark, want))
		}
	}
	if n := strings.Count(strings.Join(lines, ""), string(WebMark)) + strings.Count(strings.Join(lines, ""), string(StarMark)); n > 4 {
		list = append(list, fmt.Sprintf("%d marks", n))
	}
	return list
}

func TestDrawings(t *testing.T) {
	for _, k := range Kinds() {
		for _, line := range amiss(k) {
			t.Errorf("%s: %s", k.Name, line)
		}
		for _, r := range k.Roles {
			if !r.Outer && !strings.Contains(k.Drawing, r.Letter) {
				t.Errorf("%s: nothing in the drawing is for %s", k.Name, r.Name)
			}
		}
	}
}

func TestDrawingsCatches(t *testing.T) {
	for name, change := range map[string][2]string{
		"a letter in the neighbour's place": {"W   /  K", "W  K/   "},
		"a letter too many":                 {"/    '.", "/ W  '."},
		"a letter too few":                  {"'X'   W", "'X'    "},
		"a letter on a seam":                {"+.'    /", "K.'    /"},
		"another role's letter":             {"/  K  |", "/  W  |"},
		"a line too long":                   {"'X' ", "'X'  "},
		"a mark of the other sort":          {"----*\n|'", "----o\n|'"},
		"a mark that is not there":          {"o------", "+------"},
	} {
		k := web()
		k.Drawing = strings.Replace(k.Drawing, change[0], change[1], 1)
		if k.Drawing == web().Drawing {
			t.Fatalf("%s: nothing was changed", name)
		}
		if len(amiss(k)) == 0 {
			t.Errorf("%s goes unseen", name)
		}
	}
}
