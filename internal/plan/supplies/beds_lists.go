package supplies

// Addresses of lists that stand in several tables.
const (
	embroideryPress   = "https://embroiderypress.com/quilt-size-101/"
	primitiveQuilts   = "https://www.primitivequiltsandprojects.com/blog/quilt-size-measurements/"
	quiltersResources = "https://quiltersresources.com/measurements.html"
	crazyMom          = "http://crazymomquilts.blogspot.com/2009/12/how-to-calculate-quilt-measurements.html?m=1"
	organicCloth      = "http://www.honeybegood.com/blogs/resources/12653533-common-quilt-and-batting-sizes"
	mattressChart     = "https://www.thesprucecrafts.com/standard-mattress-sizes-4145709"
	olderChart        = "http://quilting.about.com/od/quiltsettings/a/mattress_sizes.htm"
)

// publishedList is what one list says of a name, in inches; the second pair of numbers is 0 where it gives no range.
type publishedList struct {
	source                string
	width, height         int64
	mostWidth, mostHeight int64
}

func (l publishedList) published() Published {
	least := namedSize{"", l.width, l.height}.size()
	p := Published{least, least, l.source}
	if l.mostWidth != 0 {
		p.Most = namedSize{"", l.mostWidth, l.mostHeight}.size()
	}
	return p
}

// Beds is the sizes that lists have in common, the smallest first. The lists are American; those that are not about beds
// have no mattress.
func Beds() []Bed {
	list := []Bed{
		bed("baby", nil, nil, publishedList{quiltersResources, 40, 40, 0, 0}, publishedList{embroideryPress, 30, 40, 0, 0}, publishedList{crazyMom, 42, 52, 0, 0}),
		bed("crib", []string{"toddler"},
			[]publishedList{{mattressChart, 28, 52, 0, 0}, {primitiveQuilts, 27, 52, 0, 0}, {organicCloth, 28, 52, 0, 0}},
			publishedList{quiltersResources, 36, 60, 0, 0}, publishedList{embroideryPress, 36, 52, 0, 0}, publishedList{crazyMom, 45, 60, 0, 0},
			publishedList{organicCloth, 39, 54, 0, 0}, publishedList{primitiveQuilts, 27, 52, 0, 0}),
		bed("throw", []string{"lap"}, nil,
			publishedList{quiltersResources, 50, 60, 0, 0}, publishedList{embroideryPress, 50, 65, 0, 0}, publishedList{crazyMom, 60, 72, 0, 0}),
	}
	list = append(list, narrowBeds()...)
	return append(list, wideBeds()...)
}

func narrowBeds() []Bed {
	return []Bed{
		bed("twin", []string{"single"},
			[]publishedList{{mattressChart, 39, 75, 0, 0}, {embroideryPress, 39, 76, 0, 0}, {organicCloth, 39, 75, 0, 0}},
			publishedList{quiltersResources, 70, 90, 0, 0}, publishedList{embroideryPress, 70, 90, 0, 0}, publishedList{crazyMom, 63, 88, 0, 0},
			publishedList{organicCloth, 65, 88, 0, 0}, publishedList{primitiveQuilts, 59, 85, 72, 90}),
		bed("twin XL", []string{"long twin", "single XL", "twin extra long"},
			[]publishedList{{mattressChart, 39, 80, 0, 0}, {organicCloth, 39, 80, 0, 0}, {olderChart, 36, 80, 0, 0}},
			publishedList{quiltersResources, 70, 95, 0, 0}, publishedList{organicCloth, 65, 93, 0, 0}),
		bed("full", []string{"double"},
			[]publishedList{{mattressChart, 54, 75, 0, 0}, {embroideryPress, 54, 75, 0, 0}, {organicCloth, 54, 75, 0, 0}},
			publishedList{quiltersResources, 86, 90, 0, 0}, publishedList{embroideryPress, 85, 108, 0, 0}, publishedList{crazyMom, 78, 88, 0, 0},
			publishedList{organicCloth, 80, 88, 0, 0}, publishedList{primitiveQuilts, 72, 85, 80, 90}),
	}
}

func wideBeds() []Bed {
	return []Bed{
		bed("queen", nil,
			[]publishedList{{mattressChart, 60, 80, 0, 0}, {embroideryPress, 60, 80, 0, 0}, {organicCloth, 60, 80, 0, 0}},
			publishedList{quiltersResources, 90, 95, 0, 0}, publishedList{embroideryPress, 90, 108, 0, 0}, publishedList{crazyMom, 84, 92, 0, 0},
			publishedList{organicCloth, 86, 93, 0, 0}, publishedList{primitiveQuilts, 80, 90, 86, 98}),
		bed("king", nil,
			[]publishedList{{mattressChart, 76, 80, 0, 0}, {embroideryPress, 78, 80, 0, 0}, {organicCloth, 76, 80, 78, 80}, {primitiveQuilts, 76, 80, 0, 0}},
			publishedList{quiltersResources, 108, 95, 0, 0}, publishedList{embroideryPress, 110, 108, 0, 0}, publishedList{crazyMom, 100, 92, 0, 0},
			publishedList{organicCloth, 104, 93, 0, 0}, publishedList{primitiveQuilts, 96, 90, 110, 108}),
		bed("California king", []string{"cal king"},
			[]publishedList{{mattressChart, 72, 84, 0, 0}, {quiltersResources, 72, 84, 0, 0}, {organicCloth, 72, 84, 0, 0}},
			publishedList{quiltersResources, 102, 100, 0, 0}, publishedList{organicCloth, 100, 97, 0, 0}, publishedList{primitiveQuilts, 92, 94, 106, 112}),
	}
}

func bed(name string, also []string, mattresses []publishedList, quilts ...publishedList) Bed {
	b := Bed{Name: name, Also: also}
	for _, l := range mattresses {
		b.Mattresses = append(b.Mattresses, l.published())
	}
	for _, l := range quilts {
		b.Quilts = append(b.Quilts, l.published())
	}
	return b
}
