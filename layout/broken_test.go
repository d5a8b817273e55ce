package layout_test

import (
	"math/rand/v2"
	"strings"
	"testing"

	"eighthturn/internal/quilttest/judges"
	"eighthturn/layout"
)

// sound wants a text to be read without a panic, and every place that comes out of it to
// lie in the text.
func sound(t *testing.T, text string) {
	t.Helper()
	_, source, list := layout.Read(text)
	for _, wrong := range strayPlaces(source, list) {
		t.Errorf("%q: %s", text, wrong)
	}
	tree, _ := layout.Parse(source)
	for _, wrong := range strayNodes(text, tree) {
		t.Errorf("%q: %s", text, wrong)
	}
}

// cuts is where a text is cut: behind every byte of its own lines, and behind those lines
// that many cases share. Long texts are cut at steps.
func cuts(text string) []int {
	most := judges.Of(15, 150)
	step := len(text)/most | 1 // odd, so that all bytes of longer letters are met
	var list []int
	at := 0
	for line := range strings.SplitAfterSeq(text, "\n") {
		if strings.Contains(small, line) || strings.Contains(banded, line) {
			list = append(list, at)
		} else {
			for i := 0; i < len(line); i += step {
				list = append(list, at+i)
			}
		}
		at += len(line)
	}
	return list
}

// TestPrefixes reads every case and sample as far as each of its bytes.
func TestPrefixes(t *testing.T) {
	eachCase(t, func(t *testing.T, c testCase) {
		for _, i := range cuts(c.text()) {
			sound(t, c.text()[:i])
		}
	})
	for _, text := range []string{small, banded} {
		for i := range len(text) {
			sound(t, text[:i])
		}
	}
}

// TestBytesLeftOutAndDoubled reads some layouts with one byte left out, and with one twice.
func TestBytesLeftOutAndDoubled(t *testing.T) {
	var texts []string
	for _, c := range filesAsCases(t, "../testdata/layout/*.quilt") {
		texts = append(texts, c.text())
	}
	for _, c := range lookAlikeCases() {
		texts = append(texts, c.text())
	}
	for i := range len(banded) {
		sound(t, banded[:i]+banded[i+1:])
		sound(t, banded[:i+1]+banded[i:])
	}
	for _, text := range texts {
		for _, i := range cuts(text) {
			if i == len(text) {
				break
			}
			sound(t, text[:i]+text[i+1:])
			sound(t, text[:i+1]+text[i:])
		}
	}
}

// TestLinesLeftOutAndMoved reads every case without each of its lines.
func TestLinesLeftOutAndMoved(t *testing.T) {
	eachCase(t, func(t *testing.T, c testCase) {
		for _, s := range judges.Some(statementsOf(c.text()), 4) {
			sound(t, s.text[:s.start]+s.text[s.end:])
			sound(t, s.toFront())
		}
	})
}

// TestMixedLines reads layouts put together from the lines of all cases, the same on every
// run, and tidies those that are drawn.
func TestMixedLines(t *testing.T) {
	var lines []string
	for _, c := range allCases(t) {
		if len(c.text()) < 2000 {
			lines = append(lines, strings.SplitAfter(c.text(), "\n")...)
		}
	}
	random := rand.New(rand.NewPCG(1, 2))
	drawn := 0
	for range judges.Of(1000, 3000) {
		text := mixed(random, lines)
		sound(t, text)
		design, _, _ := layout.Read(text)
		if design == nil || len(design.Cells) > 2000 {
			continue
		}
		drawn++
		tidy, _ := layout.Tidy(text)
		for _, wrong := range untidy(text, tidy) {
			t.Errorf("%s\n%s\n%s", wrong, text, tidy)
		}
	}
	if drawn < judges.Of(30, 100) {
		t.Errorf("only %d of the mixed layouts are drawn", drawn)
	}
}

// mixed is a layout of two with a few lines of others put in or in place of its own.
func mixed(random *rand.Rand, lines []string) string {
	own := strings.SplitAfter([]string{small, banded}[random.IntN(2)], "\n")
	for range 1 + random.IntN(3) {
		at, line := random.IntN(len(own)), lines[random.IntN(len(lines))]
		switch random.IntN(3) {
		case 0:
			own[at] = line
		case 1:
			own[at] += line
		default:
			words := strings.Fields(line)
			if len(words) > 0 {
				own[at] = strings.TrimSuffix(own[at], "\n") + " " + words[random.IntN(len(words))] + "\n"
			}
		}
	}
	return strings.Join(own, "")
}
