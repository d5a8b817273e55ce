package pdf

import (
	"encoding/binary"
	"math"
	"testing"
)

// The primaries of sRGB under D50, as B. Lindbloom's table of RGB working spaces has them (brucelindbloom.com, "RGB/XYZ
// matrices", adapted by Bradford; from memory). His D50 is a little other than a profile's, hence the tolerance.
func TestPrimaries(t *testing.T) {
	list, _ := srgbPrimaries()
	for i, want := range [3]xyz{{0.4360747, 0.2225045, 0.0139322}, {0.3850649, 0.7168786, 0.0971045}, {0.1430804, 0.0606169, 0.7141733}} {
		for k := range want {
			if math.Abs(list[i][k]-want[k]) > 0.0003 {
				t.Errorf("primary %d is %v, want %v", i, list[i], want)
			}
		}
	}
	for k, want := range []float64{0.9642, 1, 0.8249} { // together they are the white
		if sum := list[0][k] + list[1][k] + list[2][k]; math.Abs(sum-want) > 1e-9 {
			t.Errorf("white is %v at %d, want %v", sum, k, want)
		}
	}
}

func TestProfileIsAsLongAsItSays(t *testing.T) {
	p := srgb()
	if n := int(binary.BigEndian.Uint32(p)); n != len(p) || n%4 != 0 || n > 1000 {
		t.Errorf("%d bytes, says %d", len(p), n)
	}
	for i := range int(binary.BigEndian.Uint32(p[128:])) {
		entry := p[132+12*i:]
		from, length := binary.BigEndian.Uint32(entry[4:]), binary.BigEndian.Uint32(entry[8:])
		if from%4 != 0 || int(from+length) > len(p) {
			t.Errorf("%s lies at %d, %d long", entry[:4], from, length)
		}
	}
}
