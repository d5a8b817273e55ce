package costs

import (
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"eighthturn/internal/quilttest/judges"
)

// TestStepsOfFamilies: however a layout grows, its plans cost no more than the curve; what has no searches in it grows in
// line with the pieces; and each budget ends the search of a family that grows for long enough.
func TestStepsOfFamilies(t *testing.T) {
	for _, f := range Families() {
		t.Run(f.Name, func(t *testing.T) {
			reached := 0
			sizes := []int{3, 9}
			if judges.On {
				sizes = []int{4, 12, 36}
			}
			for _, n := range sizes {
				s, ok := Of(f.Text(n), f.Copies, 400_000)
				if !ok {
					t.Fatalf("%d: the layout is refused", n)
				}
				t.Logf("%3d: size %6d, laid %8d, study %8d, cutting %9d, sewing %8d", n, s.Size, s.Lay, s.Study, s.Cutting, s.Sewing)
				for plan, steps := range map[string]int{laying: s.Lay, study: s.Study, planCutting: s.Cutting, planSewing: s.Sewing} {
					if most := Line(s.Size); !slices.Contains(f.Searches, plan) && steps > most {
						t.Errorf("%d: %s takes more than %d steps: %+v", n, plan, most, s)
					}
					if f.Most > 0 && plan == f.Searches[0] {
						reached = steps
					}
				}
				if plan := s.Over(); plan != "" {
					t.Errorf("%d: %s takes more than its budget: %+v", n, plan, s)
				}
			}
			if reached > f.Most || judges.On && reached < f.Most*4/5 {
				t.Errorf("in the end %s takes %d steps, wanted about %d: its budget ends it", f.Searches[0], reached, f.Most)
			}
		})
	}
}

// TestCurveCatches: work that grows with the square of the pieces is above the curve before a quilt is as large as it may be.
func TestCurveCatches(t *testing.T) {
	const n = 150_000
	for _, s := range []Steps{{Size: n, Lay: n * n}, {Size: n, Study: n * n / 400}, {Size: n, Cutting: n * n}, {Size: n, Sewing: n * n}} {
		if s.Over() == "" {
			t.Errorf("%+v is within the curve", s)
		}
	}
	if s := (Steps{Size: n, Lay: Line(n), Study: Line(n), Cutting: Line(n), Sewing: Line(n)}); s.Over() != "" {
		t.Errorf("%+v is above the curve", s)
	}
}

// kept are the layouts that cost most for their length, as a search found them.
func kept(t testing.TB) []string {
	names, err := filepath.Glob("testdata/*.quilt")
	if err != nil || len(names) == 0 {
		t.Fatal("no layouts are kept", err)
	}
	var list []string
	for _, name := range names {
		b, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		list = append(list, string(b))
	}
	return list
}

// FuzzSteps: no layout costs more than the curve. It begins with the families and with what a search found to cost most.
func FuzzSteps(f *testing.F) {
	for _, family := range Families() {
		f.Add(family.Text(judges.Of(2, 6)))
	}
	for _, text := range kept(f) {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		if s, ok := Of(text, 1, 20_000); ok && s.Over() != "" {
			t.Errorf("%s takes more than its budget: %+v for %d bytes", s.Over(), s, len(text))
		}
	})
}

// TestClimb looks for the layouts that cost most for their length by changing those that cost much, for as long as
// EIGHTHTURN_CLIMB says, a moment otherwise, and keeps what it found in testdata if it was told how long.
func TestClimb(t *testing.T) {
	long, err := time.ParseDuration(os.Getenv("EIGHTHTURN_CLIMB"))
	tries := 10
	if err == nil {
		tries = 1 << 30
	}
	c := &climb{Rand: rand.New(rand.NewPCG(uint64(long), 1))}
	for _, f := range Families() {
		c.try(t, f.Text(judges.Of(2, 3)))
	}
	for end := time.Now().Add(long); tries > 0 && (err != nil || time.Now().Before(end)); tries-- {
		c.try(t, c.changed(c.best[c.IntN(len(c.best))].text))
	}
	if len(c.best) < 5 {
		t.Errorf("only %d layouts were planned", len(c.best))
	}
	for i := range c.best {
		if err == nil {
			name := filepath.Join("testdata", "climb-"+strconv.Itoa(i)+".quilt")
			if err := os.WriteFile(name, []byte(c.best[i].text), 0o644); err != nil {
				t.Fatal(err)
			}
			t.Logf("%s: %d bytes, %d steps", name, len(c.best[i].text), c.best[i].steps)
		}
	}
}

// found is a layout and what it costs.
type found struct {
	text  string
	steps int
}

// cost is steps by bytes.
func (f *found) cost() float64 { return float64(f.steps) / float64(len(f.text)+100) }

// climb is a search for what costs most.
type climb struct {
	*rand.Rand
	best []found // at the most 20, the dearest first
}

// try plans a layout and keeps it if it is among the dearest.
func (c *climb) try(t *testing.T, text string) {
	s, ok := Of(text, 1, 20_000)
	if !ok || slices.ContainsFunc(c.best, func(f found) bool { return f.text == text }) {
		return
	}
	if plan := s.Over(); plan != "" {
		t.Errorf("%s takes more than its budget, %+v:\n%s", plan, s, text)
	}
	c.best = append(c.best, found{text, s.All()})
	slices.SortStableFunc(c.best, func(a, b found) int {
		if a.cost() > b.cost() {
			return -1
		}
		return 1
	})
	c.best = c.best[:min(20, len(c.best))]
}

// changed is a layout with a few lines or numbers changed.
func (c *climb) changed(text string) string {
	lines := strings.Split(text, "\n")
	for range 1 + c.IntN(4) {
		at := c.IntN(len(lines))
		switch c.IntN(4) {
		case 0:
			lines = slices.Insert(lines, at, c.numbers(lines[at]))
		case 1:
			lines = slices.Delete(lines, at, at+1)
			lines = append(lines, "")
		default:
			lines[at] = c.numbers(lines[at])
		}
	}
	return strings.Join(lines, "\n")
}

// numbers changes the numbers that are words of a line.
func (c *climb) numbers(line string) string {
	words := strings.Split(line, " ")
	for i, w := range words {
		if x, err := strconv.ParseFloat(w, 64); err == nil && c.IntN(2) == 0 {
			if x == float64(int(x)) {
				words[i] = strconv.Itoa(max(1, int(x)+c.IntN(7)-3))
			} else {
				words[i] = strconv.FormatFloat(max(0.05, x+0.37*(c.Float64()-0.5)), 'f', 3, 64)
			}
		}
	}
	return strings.Join(words, " ")
}
