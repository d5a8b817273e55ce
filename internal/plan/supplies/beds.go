package supplies

import (
	"slices"
	"strings"

	"eighthturn/internal/measure"
)

// Bed is a size of bed with what published lists say of it.
type Bed struct {
	Name       string
	Also       []string    // other names
	Mattresses []Published // none for sizes that are no bed's
	Quilts     []Published
}

// Published is a size as a list has it. Where a list gives a range, both its ends stand.
type Published struct {
	Least  Size   `json:"least"`
	Most   Size   `json:"most"`
	Source string `json:"source"` // address of the list
}

// middle is the size half-way between the two ends.
func (p Published) middle() Size {
	return Size{(p.Least.Width + p.Most.Width) / 2, (p.Least.Height + p.Most.Height) / 2}
}

// FindBed is the bed of a name, whatever its capitals, blanks and hyphens.
func FindBed(name string) (*Bed, bool) {
	want := bedKey(name)
	beds := Beds()
	for i := range beds {
		for _, n := range append([]string{beds[i].Name}, beds[i].Also...) {
			if bedKey(n) == want {
				return &beds[i], true
			}
		}
	}
	return nil, false
}

// bedKey is a bed's name as it is compared.
func bedKey(name string) string {
	return strings.ToLower(strings.Join(strings.FieldsFunc(name, func(r rune) bool { return measure.IsSpace(r) || r == '-' || r == '_' }), " "))
}

// Spread is the smallest and the largest width and height that the lists give for quilts.
func (b *Bed) Spread() (least, most Size) { return spread(b.Quilts) }

// Quilt is the size between the lists' sizes: of the widths the middle one, and of the heights, each taken by itself; of an
// even number the smaller of the two in the middle.
func (b *Bed) Quilt() Size { return middle(b.Quilts) }

// Mattress is the mattress that most lists agree on, found in the same way as Quilt; the zero size where there is none.
func (b *Bed) Mattress() Size {
	if len(b.Mattresses) == 0 {
		return Size{}
	}
	return middle(b.Mattresses)
}

// Covered is the size of a quilt that hangs down by a drop at both sides and the foot of a mattress, with a tuck under the
// pillows at the head, 0 for none.
func (b *Bed) Covered(drop, tuck measure.NM) Size {
	m := b.Mattress()
	return Size{m.Width + 2*drop, m.Height + drop + tuck}
}

func spread(list []Published) (least, most Size) {
	least, most = list[0].Least, list[0].Most
	for _, p := range list[1:] {
		least = Size{min(least.Width, p.Least.Width), min(least.Height, p.Least.Height)}
		most = Size{max(most.Width, p.Most.Width), max(most.Height, p.Most.Height)}
	}
	return least, most
}

func middle(list []Published) Size {
	var widths, heights []measure.NM
	for _, p := range list {
		m := p.middle()
		widths, heights = append(widths, m.Width), append(heights, m.Height)
	}
	slices.Sort(widths)
	slices.Sort(heights)
	at := (len(list) - 1) / 2
	return Size{widths[at], heights[at]}
}
