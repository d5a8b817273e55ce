package cutting

import (
	"errors"
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"eighthturn/internal/measure"
	"eighthturn/internal/plan/supplies"
	"eighthturn/internal/quilttest/judges"
	"eighthturn/internal/quilttest/lay"
	"eighthturn/samples"
)

// Fabrics that are cut from precuts before yardage: against a search of everything, against published yields, and by laws.

// smallMix is an invented fabric with a few pieces to be cut and some precuts.
func smallMix(r *rand.Rand) (*Fabric, []demand) {
	half := func(least, most int) measure.NM { return measure.NM(least+r.IntN(most-least+1)) * measure.Inch / 2 }
	f := &Fabric{UsableWidth: 40 * measure.Inch, From: &FromPrecuts{Have: 1 + r.IntN(2)}}
	f.From.Usable = supplies.Size{Width: half(20, 44), Height: half(10, 40)}
	var list []demand
	for left := 1 + r.IntN(5); left > 0; {
		d := demand{item: item{across: half(4, 24), along: half(4, 60), count: 1 + r.IntN(left), stacks: r.IntN(2) == 0}, set: -1}
		if r.IntN(4) == 0 {
			d.extra, d.nests, d.stacks = half(1, 6), true, false
		}
		left -= d.count
		list = append(list, d)
	}
	return f, list
}

// mixed is the least yardage, and with it the fewest precuts, of all ways to share pieces among precuts and yardage.
func mixed(f *Fabric, list []demand) (cloth measure.NM, used int) {
	var pieces []int
	for i := range list {
		for range list[i].count {
			pieces = append(pieces, i)
		}
	}
	known := map[string]measure.NM{}
	takes := func(some []int, length measure.NM) measure.NM {
		key := fmt.Sprint(some, length)
		if _, ok := known[key]; !ok {
			counts := make([]int, len(list))
			for _, i := range some {
				counts[i]++
			}
			var part []demand
			for i, n := range counts {
				if d := list[i]; n > 0 {
					if d.along+d.extra > length {
						known[key] = 1 << 60
						return 1 << 60
					}
					d.count = n
					part = append(part, d)
				}
			}
			known[key], _ = exhausted(&together(part, length).packing)
		}
		return known[key]
	}
	long, short := max(f.From.Usable.Width, f.From.Usable.Height), min(f.From.Usable.Width, f.From.Usable.Height)
	places := make([][]int, f.From.Have+1)
	cloth, used = 1<<62, 1<<30
	var put func(n int)
	put = func(n int) {
		if n == len(pieces) {
			sheets := 0
			for _, some := range places[1:] {
				if len(some) > 0 {
					sheets++
				}
				if takes(some, long) > short && takes(some, short) > long {
					return
				}
			}
			if c := takes(places[0], f.UsableWidth); c < cloth || c == cloth && sheets < used {
				cloth, used = c, sheets
			}
			return
		}
		for at := range places {
			places[at] = append(places[at], pieces[n])
			put(n + 1)
			places[at] = places[at][:len(places[at])-1]
		}
	}
	put(0)
	return cloth, used
}

func TestMixingAsGoodAsEverySearch(t *testing.T) {
	r := rand.New(rand.NewPCG(18, 22))
	mixes := 0
	for n := range judges.Of(1500, 6000) {
		f, list := smallMix(r)
		cloth, used := mixed(f, list)
		f.lay(slices.Clone(list))
		if f.LengthCut != cloth || f.From.Used != used {
			t.Fatalf("mix %d: %v of yardage and %d precuts, but %v and %d will do\n%v of %v", n, inches(f.LengthCut), f.From.Used, inches(cloth), used, list, f.From)
		}
		if err := wrongSheets(f, list); err != nil {
			t.Fatalf("mix %d: %v", n, err)
		}
		if cloth == 0 && f.From.Alone != used { // the fewest that do without yardage
			t.Fatalf("mix %d: %d precuts do without yardage, said are %d\n%v of %v", n, used, f.From.Alone, list, f.From)
		}
		if cloth > 0 && used > 0 {
			mixes++
		}
	}
	if mixes < 200 {
		t.Errorf("only %d cases are cut from both", mixes)
	}
}

// wrongSheets says where a fabric's precuts hold more than they can, or its strips do not give what is wanted.
func wrongSheets(f *Fabric, list []demand) error {
	across := make([]measure.NM, len(f.From.Sheets))
	for _, s := range f.Strips {
		used := s.EndLeftCut
		for _, c := range s.Cuts {
			used += c.Length()
		}
		if used != s.LengthCut || s.EndLeftCut < 0 {
			return fmt.Errorf("a strip of %v is cut into %v", inches(s.LengthCut), inches(used))
		}
		if s.OnSheet < 0 {
			continue
		}
		sheet := &f.From.Sheets[s.OnSheet]
		if s.LengthCut != sheet.LengthCut || s.Times%sheet.Times != 0 {
			return fmt.Errorf("%d strips of %v on %d precuts of %v", s.Times, inches(s.LengthCut), sheet.Times, inches(sheet.LengthCut))
		}
		across[s.OnSheet] += measure.NM(s.Times/sheet.Times) * s.WidthCut
	}
	used := 0
	for i, sheet := range f.From.Sheets {
		used += sheet.Times
		long, short := max(sheet.LengthCut, sheet.WidthCut), min(sheet.LengthCut, sheet.WidthCut)
		if long != max(f.From.Usable.Width, f.From.Usable.Height) || short != min(f.From.Usable.Width, f.From.Usable.Height) || across[i]+sheet.LeftWidthCut != sheet.WidthCut || sheet.LeftWidthCut < 0 {
			return fmt.Errorf("precut %d: strips of %v on %v by %v", i, inches(across[i]), inches(sheet.LengthCut), inches(sheet.WidthCut))
		}
	}
	if used != f.From.Used || used > f.From.Have {
		return fmt.Errorf("%d precuts are cut, said are %d of %d", used, f.From.Used, f.From.Have)
	}
	wanted, given := map[[3]measure.NM]int{}, map[[3]measure.NM]int{}
	for _, d := range list {
		wanted[[3]measure.NM{d.across, d.along, d.extra}] += d.count
	}
	for _, s := range f.Strips {
		for _, c := range s.Cuts {
			key := [3]measure.NM{c.AcrossCut, c.AlongCut, 0}
			if c.Nests {
				for k := range wanted {
					if k[2] > 0 && k[0] == c.AcrossCut && measure.NM(c.Units)*k[1]+k[2] == c.AlongCut {
						key = k
					}
				}
			}
			given[key] += c.Units * s.Times
		}
	}
	for key, n := range wanted {
		if given[key] != n {
			return fmt.Errorf("%d of %v are wanted, %d given", n, key, given[key])
		}
	}
	return nil
}

// fromText is a layout whose fabrics are cut from precuts.
func fromText(text, from string) string {
	lines := strings.Split(text, "\n")
	for i, line := range lines {
		if words := strings.Fields(line); len(words) > 2 && words[0] == "fabric" {
			lines[i] = strings.TrimRight(line, " ") + " " + from
			if at := strings.Index(line, " # "); at > 0 {
				lines[i] = line[:at] + " " + from + line[at:]
			}
		}
	}
	return strings.Join(lines, "\n")
}

// TestPrecutsSupply: samples cut from precuts get every piece from one place, no precut holds more than it can, and none takes more
// yardage than without precuts. With as many as would do alone no yardage is left.
func TestPrecutsSupply(t *testing.T) {
	cut, alone := 0, 0
	for _, s := range samples.All() {
		without := Build(nil, lay.Top(t, s.Text), Options{})
		for _, from := range []string{"from 2 fat-quarters", "from 500 fat-quarters", "from 3 squares 10", "from 30 strips 2 1/2", "from 7 fat-eighths"} {
			top := lay.Top(t, fromText(s.Text, from))
			p := Build(nil, top, Options{})
			if err := errors.Join(unsupplied(top, p), misreckoned(top, p, &Options{})); err != nil {
				t.Fatalf("%s, %s: %v", s.Name, from, err)
			}
			for i := range p.Sets { // some were tried shorter, and are as long as before
				if err := ofAnotherSet(p, &p.Sets[i]); err != nil {
					t.Fatalf("%s, %s, strip set %d: %v", s.Name, from, i, err)
				}
			}
			var with, plain measure.NM
			for i := range p.Fabrics {
				f := &p.Fabrics[i]
				with, plain = with+f.LengthCut, plain+without.Fabrics[i].LengthCut
				if f.From == nil {
					continue
				}
				cut += f.From.Used
				if err := wrongSheets(f, nil); err != nil {
					t.Fatalf("%s, %s, %s: %v", s.Name, from, f.Name, err)
				}
				if f.From.Alone > 0 && f.From.Alone <= f.From.Have {
					alone++
					if f.LengthCut > 0 {
						t.Errorf("%s, %s, %s: %d would do alone, and %v is cut from yardage", s.Name, from, f.Name, f.From.Alone, inches(f.LengthCut))
					}
				}
			}
			if with > plain {
				t.Errorf("%s, %s: %v with precuts, %v without", s.Name, from, inches(with), inches(plain))
			}
		}
	}
	if cut < 100 || alone < 10 {
		t.Errorf("%d precuts cut, %d fabrics from precuts alone: too few to judge by", cut, alone)
	}
}

// Squares from a fat quarter of 18 by 22 as a fabric is cut from it (quiltersresources.com, measurements; its 55 of 2 1/2 and 15 of 5
// are slips): as many as are published come from one, and one more is cut from yardage or from a second.
func TestPublishedFatQuartersBesideYardage(t *testing.T) {
	for _, row := range []struct {
		side  float64
		holds int
	}{{2, 99}, {2.5, 56}, {3, 42}, {3.5, 30}, {4, 20}, {4.5, 16}, {5, 12}, {5.5, 12}, {6, 9}, {6.5, 6}} {
		for more := range 2 {
			for have := 1; have <= 2; have++ {
				f := &Fabric{UsableWidth: 40 * measure.Inch, From: &FromPrecuts{Have: have}}
				f.From.Usable = supplies.Size{Width: inch(18), Height: inch(22)}
				f.lay([]demand{{item: item{across: inch(row.side), along: inch(row.side), count: row.holds + more}, set: -1}})
				want := measure.NM(0)
				if more == 1 && have == 1 {
					want = inch(row.side) // a strip
				}
				if f.LengthCut != want || f.From.Used != min(have, 1+more) || f.From.Alone != 1+more {
					t.Errorf("%d squares of %g and %d fat quarters: %d used, %v of yardage, %d alone", row.holds+more, row.side, have, f.From.Used, inches(f.LengthCut), f.From.Alone)
				}
			}
		}
	}
	// quiltingboard.com, t222332: 80 strips of 2 1/2, half the cloth's width, take 12 fat quarters; 7 come from each.
	f := &Fabric{UsableWidth: 40 * measure.Inch, From: &FromPrecuts{Have: 12}}
	f.From.Usable = supplies.Size{Width: inch(20), Height: inch(18)}
	f.lay([]demand{{item: item{across: inch(2.5), along: inch(20), count: 80}, set: -1}})
	if f.LengthCut != 0 || f.From.Used != 12 || f.From.Alone != 12 {
		t.Errorf("80 strips: %d of 12 fat quarters, %v of yardage", f.From.Used, inches(f.LengthCut))
	}
}

// The words of the language name the precuts that they are for, in inches and in centimeters.
func TestPrecutsByName(t *testing.T) {
	const grid = "block A plain piece a\ngrid\n A\nrepeat across 4 down 4\n"
	for words, want := range map[string]string{
		"side 4\nfabric a #111 from 3 fat-quarters":            "fat quarter 18 by 20 in",
		"side 4\nfabric a #111 from 1 fat-eighth":              "fat eighth 9 by 20 in",
		"side 4\nfabric a #111 from 3 squares 10":              "10 in square 10 by 10 in",
		"side 2\nfabric a #111 from 3 strips 2 1/2":            "2 1/2 in strip 2 1/2 by 40 in",
		"units cm\nside 10\nfabric a #111 from 3 fat-quarters": "fat quarter 50 by 50 cm",
		"units cm\nside 10\nfabric a #111 from 3 fat-eighths":  "fat eighth 25 by 50 cm",
	} {
		p := Build(nil, lay.Top(t, words+"\n"+grid), Options{})
		from := p.Fabrics[0].From
		if got := from.Name + " " + p.Units.By(from.Usable.Height, from.Usable.Width); got != want {
			t.Errorf("%s: %s, want %s", words, got, want)
		}
		if len(p.Warnings) > 0 || from.Used == 0 {
			t.Errorf("%s: %d used, warnings %v", words, from.Used, p.Warnings)
		}
	}
	text := "side 4\nfabric a #111 from 3 squares 4\n" + grid
	w := Build(nil, lay.Top(t, text), Options{}).Warnings
	if len(w) != 1 || w[0].Message != "nothing of a can be cut from a 4 in square" || w[0].Hint != "leave from out, or write larger precuts: the smallest piece takes 4 1/2 by 4 1/2 in" || text[w[0].Place.Start:w[0].Place.End] != "from 3 squares 4" {
		t.Errorf("precuts too small: %v", w)
	}
}

// TestShortLeftoversTakeNoSets: strip sets stay as long as the fabric is wide where what lies beside lengthwise borders, or a precut, is too
// short for their wedges; such quilts are planned like any other.
func TestShortLeftoversTakeNoSets(t *testing.T) {
	text := "strip 8\nfabric navy #1f3350 FROM\nfabric rust #b5532a\nfabric cream #f4ead7\nstrip-set shore navy 4 rust rest\nblock V web wedges shore reversed shore kites cream\ngrid\n" + strings.Repeat(" V V\n", 4)
	for _, from := range []string{"from 20 squares 5", "from 2 squares 10", "from 4 fat-eighths", ""} {
		for width := range 32 {
			if from != "" && width > 0 {
				break
			}
			layout := strings.Replace(text, "FROM", from, 1)
			if from == "" {
				layout += fmt.Sprintf("border %g navy lengthwise\nborder 6 navy lengthwise\n", 6+float64(width)/4)
			}
			p := Build(nil, lay.Top(t, layout), Options{})
			if len(p.Faults) > 0 {
				t.Fatalf("%q, width %d: %v", from, width, p.Faults[0].Message)
			}
			for i := range p.Sets {
				if s := &p.Sets[i]; s.PerSet < minWedges || ofAnotherSet(p, s) != nil {
					t.Errorf("%q, width %d: sets of %d wedges: %v", from, width, s.PerSet, ofAnotherSet(p, s))
				}
			}
		}
	}
}
