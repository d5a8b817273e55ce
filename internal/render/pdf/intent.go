package pdf

import (
	"bytes"
	"encoding/binary"
	"math"
	"unicode/utf16"

	"github.com/carlos7ags/folio/core"
)

// intent says that colours are meant as sRGB (ISO 32000-1, 14.11.5), with its profile.
func (f *File) intent() *core.PdfArray {
	profile := core.NewPdfStreamCompressed(srgb())
	profile.SetCompressLevel(packedLevel)
	profile.Dict.Set("N", core.NewPdfInteger(3))
	profile.Dict.Set("Alternate", name("DeviceRGB"))
	return core.NewPdfArray(dictionary("Type", name("OutputIntent"), "S", name("GTS_PDFA1"),
		"OutputConditionIdentifier", core.NewPdfTextString(srgbName), "Info", core.NewPdfTextString(srgbName),
		"RegistryName", core.NewPdfTextString("http://www.color.org"), "DestOutputProfile", f.objects.add(profile)))
}

const srgbName = "sRGB IEC61966-2.1"

// xyz is a colour by CIE 15.
type xyz [3]float64

// srgbPrimaries are red, green and blue of sRGB for a profile's white, D50: the chromaticities and the white D65 of IEC
// 61966-2-1:1999, section 4.2, taken to D50 by the linear Bradford transform (ICC.1:2010, annex E). The second result is that
// transform.
func srgbPrimaries() (list [3]xyz, adapt [3]xyz) {
	of := func(x, y float64) xyz { return xyz{x / y, 1, (1 - x - y) / y} }
	white, d50 := of(0.3127, 0.3290), xyz{0.9642, 1, 0.8249} // ICC.1:2010, 7.2.16
	primaries := [3]xyz{of(0.64, 0.33), of(0.30, 0.60), of(0.15, 0.06)}
	bradford := [3]xyz{{0.8951, 0.2664, -0.1614}, {-0.7502, 1.7135, 0.0367}, {0.0389, -0.0685, 1.0296}}
	from, to := times(bradford, white), times(bradford, d50)
	back := inverse(bradford)
	for row := range adapt {
		for column := range adapt {
			for cone := range 3 {
				adapt[row][column] += back[row][cone] * (to[cone] / from[cone]) * bradford[cone][column]
			}
		}
	}
	parts := times(inverse(transposed(primaries)), white)
	for i, p := range primaries {
		for k := range p {
			p[k] *= parts[i]
		}
		list[i] = times(adapt, p)
	}
	return list, adapt
}

func times(m [3]xyz, v xyz) (out xyz) {
	for row := range m {
		for i := range v {
			out[row] += m[row][i] * v[i]
		}
	}
	return out
}

func transposed(m [3]xyz) (out [3]xyz) {
	for row := range m {
		for i := range m[row] {
			out[i][row] = m[row][i]
		}
	}
	return out
}

// inverse is by cofactors; the matrix must have one.
func inverse(m [3]xyz) (out [3]xyz) {
	cofactor := func(row, column int) float64 {
		a, b, c, d := (row+1)%3, (row+2)%3, (column+1)%3, (column+2)%3
		return m[a][c]*m[b][d] - m[a][d]*m[b][c]
	}
	whole := m[0][0]*cofactor(0, 0) + m[0][1]*cofactor(0, 1) + m[0][2]*cofactor(0, 2)
	for row := range out {
		for column := range out {
			out[row][column] = cofactor(column, row) / whole
		}
	}
	return out
}

// srgb is a profile of sRGB by three primaries and one curve (ICC.1:2010, 8.3.3 and 10.16; the curve is that of IEC
// 61966-2-1:1999, section 4.2).
func srgb() []byte {
	primaries, adapt := srgbPrimaries()
	fixed := func(kind string, values ...float64) []byte {
		b := append([]byte(kind), 0, 0, 0, 0)
		for _, v := range values {
			b = binary.BigEndian.AppendUint32(b, uint32(int32(math.Round(v*65536))))
		}
		return b
	}
	curve := fixed("para", 0, 2.4, 1/1.055, 0.055/1.055, 1/12.92, 0.04045)
	binary.BigEndian.PutUint16(curve[8:], 3)
	tags := []struct {
		name string
		body []byte
	}{
		{"desc", unicodeText(srgbName)}, {"cprt", unicodeText("No copyright")}, {"wtpt", fixed("XYZ ", 0.9642, 1, 0.8249)},
		{"chad", fixed("sf32", append(append(adapt[0][:], adapt[1][:]...), adapt[2][:]...)...)},
		{"rXYZ", fixed("XYZ ", primaries[0][:]...)}, {"gXYZ", fixed("XYZ ", primaries[1][:]...)}, {"bXYZ", fixed("XYZ ", primaries[2][:]...)},
		{"rTRC", curve}, {"gTRC", curve}, {"bTRC", curve},
	}
	const head = 128
	var table, bodies bytes.Buffer
	number := func(b *bytes.Buffer, v int) { b.Write(binary.BigEndian.AppendUint32(nil, uint32(v))) }
	number(&table, len(tags))
	place := 0
	for i, tag := range tags {
		if i == 0 || !bytes.Equal(tag.body, tags[i-1].body) { // one curve for all three
			place = head + 4 + 12*len(tags) + bodies.Len()
			bodies.Write(tag.body)
			bodies.Write(make([]byte, -len(tag.body)&3))
		}
		table.WriteString(tag.name)
		number(&table, place)
		number(&table, len(tag.body))
	}
	profile := make([]byte, head, head+table.Len()+bodies.Len())
	binary.BigEndian.PutUint32(profile, uint32(cap(profile)))
	copy(profile[8:], "\x04\x20\x00\x00mntrRGB XYZ ")
	copy(profile[24:], []byte{0x07, 0xcf, 0, 10, 0, 1}) // the standard's month, so that no clock is asked
	copy(profile[36:], "acsp")
	copy(profile[68:], fixed("", 0.9642, 1, 0.8249)[4:])
	return append(append(profile, table.Bytes()...), bodies.Bytes()...)
}

// unicodeText is a text in US English as a profile has it (ICC.1:2010, 10.13).
func unicodeText(text string) []byte {
	units := utf16.Encode([]rune(text))
	b := append([]byte("mluc"), 0, 0, 0, 0, 0, 0, 0, 1, 0, 0, 0, 12)
	b = append(b, "enUS"...)
	b = binary.BigEndian.AppendUint32(b, uint32(2*len(units)))
	b = binary.BigEndian.AppendUint32(b, 28)
	for _, u := range units {
		b = binary.BigEndian.AppendUint16(b, u)
	}
	return b
}
