package render

import (
	"fmt"
	"math/rand/v2"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

// Pages of 100 points, from 10 to 110, filled with slices that are written as a name, a height and what else is to be known of them:
// +5 above, ~ kept, = bound, ! on a new page, ^ opens a chapter, /40 an illustration that may be as low as that, w20 of it words, [20 under a
// head of that height, f in a frame, v as far down as the page goes, and ' of the next chapter.
var sliceShape = regexp.MustCompile(`^([a-z])([\d.]+)|([+/w[])([\d.]+)|[~=!^fv']`)

func slicesOf(words string) (list []slice) {
	part := 0
	for n, word := range strings.Fields(words) {
		s := slice{order: n}
		for _, m := range sliceShape.FindAllStringSubmatch(word, -1) {
			number, _ := strconv.ParseFloat(m[2]+m[4], 64)
			switch {
			case m[1] != "":
				s.height, s.mark = number, &bookmark{text: m[1]}
			case m[3] == "+":
				s.above = number
			case m[3] == "/":
				s.flex = &flex{least: number, at: func(height float64) []mark { return []mark{panel{rect: rect{h: height}}} }}
			case m[3] == "w":
				s.flex.words = number
			case m[3] == "[":
				s.heads = []slice{{height: number, mark: &bookmark{text: "H"}}}
			}
			switch m[0] {
			case "~":
				s.tie = kept
			case "=":
				s.tie = bound
			case "!":
				s.newPage = true
			case "^":
				s.opens = true
			case "f":
				s.frames = []*frame{{}}
			case "v":
				s.fill = func(height float64) []mark { return []mark{panel{rect: rect{h: height}}} }
			case "'":
				part++
			}
		}
		s.part = part
		list = append(list, s)
	}
	return list
}

// placedText is pages in words: names at their places, with the height where that is not the one asked for.
func placedText(pages []page, asked []slice) string {
	var all []string
	for _, p := range pages {
		var words []string
		for _, s := range p.placed {
			word := fmt.Sprintf("%s%.6g", s.mark.text, s.y-10)
			if !s.again && s.height != asked[s.order].height {
				word += fmt.Sprintf("(%.6g)", s.height)
				if drawn := s.marks[0].(panel).h; drawn != s.height {
					word += fmt.Sprintf("?%.6g", drawn)
				}
			}
			words = append(words, word)
		}
		all = append(all, strings.Join(words, " "))
	}
	return strings.Join(all, " | ")
}

// TestSlicesOnPages: small cases, reckoned by hand, of every rule by which a page ends, each just within its bound and just beyond.
func TestSlicesOnPages(t *testing.T) {
	for words, want := range map[string]string{
		"a100": "a0", "a60 b40": "a0 b60", "a60 b40.1": "a0 | b0", "a60+9 b35+5": "a0 b65", "a60 b36+5": "a0 | b0",
		// what is bound is never parted but where it is higher than a page, what is kept where it has to be
		"a60 b20 c30=": "a0 | b0 c20", "a60 b20 c20=": "a0 b60 c80", "a60 b20 c30~": "a0 | b0 c20", "a50 b30 c40~": "a0 | b0 c30",
		"a49 b30 c40~": "a0 b49 | c0", "a49 b30 c40=": "a0 | b0 c30", "a49 b60 c40~": "a0 | b0 c60", "a49 b51 c40~": "a0 b49 | c0", "a60 b60 c60~": "a0 | b0 | c0", "a40 b60 c60~": "a0 b40 | c0",
		"a60 b60 c60=": "a0 | b0 | c0", "a10 b60 c60=": "a0 b10 | c0", "a60 b40 c50+10=": "a0 | b0 c50", "a60 b40 c50+11=": "a0 b60 | c0", "a20 b30 c40~ d50~": "a0 b20 c50 | d0", "a20 b30 c40= d50~": "a0 b20 c50 | d0",
		"a10 b30 c60= d40~": "a0 b10 c40 | d0", "a20 b30 c60= d40~": "a0 | b0 c30 | d0", "a130 b10": "a0 | b0", "a10 b130": "a0 | b0",
		// new pages and chapters
		"a20 b20!": "a0 | b0", "a20! b20": "a0 b20", "a50 b20^": "a0 | b0", "a49.9 b20+5^": "a0 b54.9", "a49.9 b60^": "a0 | b0", "a49.9 b20+5^!": "a0 | b0",
		// heads are printed again at the head of a page, those above a third of it never
		"a90 b20[20": "a0 | H0 b20", "a90 b20+7[20 c10[20": "a0 | H0 b20 c40", "a90 b80[20 c10[20": "a0 | H0 b20 | H0 c20", "a90 b81[20": "a0 | H0 b20",
		"a90 b20[33": "a0 | H0 b33", "a90 b20[34": "a0 | b0", "a60 b41 c39=[20": "a0 | b0 c41",
		// as far down as the page goes
		"a30 b20v": "a0 b30(70)", "a90 b20v": "a0 | b0(100)", "a30 b20+10v c5": "a0 b40(60) | c0",
		// illustrations are lower where they must and may
		"a40 b80/60": "a0 b40(60)", "a40 b80/60.1": "a0 b40(60)", "a60 b80/60": "a0 | b0", "a60 b80/40 c1": "a0 b60(40) | c0",
		"a60/40 b60/50": "a0(46.6667) b46.6667(53.3333)", "a50 b60/50 c1": "a0 b50(50) | c0",
		// and wait where the page would be nearly empty, the text behind them going on before them
		"a40 b80/70 c30 d30": "a0 c40 d70 | b0", "a40 b80/70 c10= d30": "a0 d40 | b0 c80", "a40 b80/70 c20= d30": "a0 d40 | b0 c80", "a40 b80/70 c21= d30": "a0 | b0(79) c79 | d0",
		"a40 b80/70f d30": "a0 | b0 | d0", "a50 b80/70 d30": "a0 | b0 | d0", "a49 b80/70 d30": "a0 d49 | b0", "a40 b80/70 c10~ d30": "a0 | b0 c80 | d0",
		"a40 b80/70 c30 d80/70 e30": "a0 c40 e70 | b0 | d0", "a40 b80/70 c30!": "a0 b40(60) | c0", "a40 b80/70 c30^": "a0 b40(60) | c0", "a40 b80/70w50": "a0 b40(60)", "a40 b80/70w56": "a0 | b0",
		"a40 b80/70 c10 d10 e60": "a0 c40 d50 | b0 | e0", "a40 b40/30 c80/70": "a0 b40 | c0", "a40 b80/70 c60 d10[10": "a0 c40 | b0 H80 d90",
		"a40 b80/70 c60 d11[10": "a0 c40 | b0 | H0 d10",
		// what waits keeps its order among illustrations, but for those that are bound to text
		"a20 b90/85 c10 d60/50~": "a0 c20 b30(70) | d0", "a20 b90/85 c10 d60/50=": "a0 c20 d30 | b0", "a20 b30 c30~ d30=": "a0 b20 | c0 d30", "a20 b90/85 c85": "a0 b20(80) | c0", "a20 b90/85w84 c85": "a0 | b0 | c0",
		"a40 b30 c40= d35/20~ e5~": "a0 | b0 c30 d70(25) e95", "a60 b95+10/85": "a0 | b0", "a90 b50[20 c40=[20": "a0 | H0 b20 | H0 c20", "a60 b20/30 c30/20": "a0 b60 c80(20)",
		"a40 b80/70 c60 d5+5[10": "a0 c40 | b0 H85 d95", "a40 b80/70 c60 d15+5": "a0 c40 | b0 d85", "a60 b130": "a0 | b0",
	} {
		list := slicesOf(words)
		if got := placedText(paginate(list, look{top: 10, bottom: 110}), list); got != want {
			t.Errorf("%q: %s, expected %s", words, got, want)
		}
	}
	third := slicesOf("a85 b20[30") // of 90 points
	if got := placedText(paginate(third, look{top: 10, bottom: 100}), third); got != "a0 | H0 b30" {
		t.Errorf("heads of a third of a page: %s", got)
	}
}

// filledPlainly is where slices that are free or bound come to stand, by the one rule that a group goes on the page where it fits.
func filledPlainly(list []slice, room float64) string {
	var pages []string
	now, y := "", 0.0
	turn := func() {
		if now != "" {
			pages = append(pages, strings.TrimSpace(now))
		}
		now, y = "", 0
	}
	put := func(group []slice) bool {
		height := 0.0
		for i, s := range group {
			if height += s.height; i > 0 || now != "" {
				height += s.above
			}
		}
		if y+height > room {
			return false
		}
		for _, s := range group {
			if now != "" {
				y += s.above
			}
			now += fmt.Sprintf(" %s%.6g", s.mark.text, y)
			y += s.height
		}
		return true
	}
	for len(list) > 0 {
		n := 1
		for n < len(list) && list[n].tie == bound {
			n++
		}
		if list[0].newPage || list[0].opens && y >= room/2 {
			turn()
		}
		if !put(list[:n]) {
			turn()
			put(list[:n])
		}
		list = list[n:]
	}
	turn()
	return strings.Join(pages, " | ")
}

// TestPagesFillPlainly: text of groups that are held together and fit on a page stands as the plain rule has it. All numbers are whole, so
// that groups which fill a page exactly are among them.
func TestPagesFillPlainly(t *testing.T) {
	v := rand.New(rand.NewPCG(3, 9))
	exact := 0
	for range 3000 {
		var words []string
		group := 0
		for range 1 + v.IntN(12) {
			high, above, tie := 5*(1+v.IntN(7)), 5*v.IntN(3), ""
			if group += high + above; group <= 100 && v.IntN(3) == 0 {
				tie = "="
			} else {
				group = high + above
			}
			if tie == "" && v.IntN(8) == 0 {
				tie = []string{"!", "^"}[v.IntN(2)]
			}
			words = append(words, fmt.Sprintf("%c%d+%d%s", 'a'+len(words), high, above, tie))
		}
		list := slicesOf(strings.Join(words, " "))
		pages := paginate(list, look{top: 10, bottom: 110})
		if got, want := placedText(pages, list), filledPlainly(list, 100); got != want {
			t.Fatalf("%s: %s, expected %s", words, got, want)
		}
		for _, p := range pages {
			if last := p.placed[len(p.placed)-1]; last.y+last.height == 110 {
				exact++
			}
		}
	}
	if exact < 100 {
		t.Errorf("only %d pages are filled exactly", exact)
	}
}

// TestShortPagesAreTold: a page that is less than half full is told of where the text goes on behind it, and not where a chapter ends.
func TestShortPagesAreTold(t *testing.T) {
	l := look{top: 10, bottom: 110}
	for words, want := range map[string]string{
		"a49 b60": "1: 49 %", "a50 b60": "", "a49 b60!": "", "a49 b60^": "", "a49 b60'": "", "a49": "", "a10 b20+19 c60": "1: 49 %", "a10 b20+20 c60": "", "a60 b49 c60": "2: 49 %", "a100 b1 c100 d2": "2: 1 %",
	} {
		var told []string
		for _, w := range shortPages(paginate(slicesOf(words), l), l) {
			told = append(told, fmt.Sprintf("%d: %s", w.Page, strings.TrimPrefix(w.Message, "the page is filled to ")))
		}
		if got := strings.Join(told, ", "); got != want {
			t.Errorf("%q: %s, expected %s", words, got, want)
		}
	}
}
