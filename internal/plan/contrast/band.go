package contrast

import "fmt"

// Band is how well the two sides of a seam part by their values.
type Band uint8

const (
	Vanishes Band = iota // below what half of all viewers notice from that distance
	Soft
	Clear
	Strong
)

// bandNames stand in the order of the bands.
var bandNames = [...]string{"vanishes", "soft", "clear", "strong"}

// Bands is every band, the weakest first.
func Bands() []Band { return []Band{Vanishes, Soft, Clear, Strong} }

// String is "vanishes", "soft", "clear" or "strong".
func (b Band) String() string { return bandNames[b] }

// MarshalText writes the band's name.
func (b Band) MarshalText() ([]byte, error) { return []byte(b.String()), nil }

// UnmarshalText reads what MarshalText writes.
func (b *Band) UnmarshalText(text []byte) error {
	for i, name := range bandNames {
		if name == string(text) {
			*b = Band(i)
			return nil
		}
	}
	return fmt.Errorf("no band is called %q", text)
}

// band sorts a step by the thresholds; soft is the step below which the seam vanishes.
func (o *Options) band(step, soft float64) Band {
	switch {
	case step < soft:
		return Vanishes
	case step < o.clear():
		return Soft
	case step < o.strong():
		return Clear
	}
	return Strong
}

// weight is how much a seam holds, from 0 where it vanishes to 1 where it is clear.
func (o *Options) weight(step, soft float64) float64 {
	if step < soft {
		return 0
	}
	if step >= o.clear() {
		return 1
	}
	return (step - soft) / (o.clear() - soft)
}
