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

// at is the size that a list gives, in inches.
func at(source string, width, height int64) Published {
	size := namedSize{"", width, height}.size()
	return Published{size, size, source}
}

// between is what a list gives as a range, in inches.
func between(source string, width, height, mostWidth, mostHeight int64) Published {
	return Published{namedSize{"", width, height}.size(), namedSize{"", mostWidth, mostHeight}.size(), source}
}

// Beds is the sizes that lists have in common, the smallest first. The lists are American; those that are not about beds
// have no mattress.
func Beds() []Bed {
	list := []Bed{
		bed("baby", nil, nil, at(quiltersResources, 40, 40), at(embroideryPress, 30, 40), at(crazyMom, 42, 52)),
		bed("crib", []string{"toddler"},
			[]Published{at(mattressChart, 28, 52), at(primitiveQuilts, 27, 52), at(organicCloth, 28, 52)},
			at(quiltersResources, 36, 60), at(embroideryPress, 36, 52), at(crazyMom, 45, 60),
			at(organicCloth, 39, 54), at(primitiveQuilts, 27, 52)),
		bed("throw", []string{"lap"}, nil,
			at(quiltersResources, 50, 60), at(embroideryPress, 50, 65), at(crazyMom, 60, 72)),
	}
	list = append(list, narrowBeds()...)
	return append(list, wideBeds()...)
}

func narrowBeds() []Bed {
	return []Bed{
		bed("twin", []string{"single"},
			[]Published{at(mattressChart, 39, 75), at(embroideryPress, 39, 76), at(organicCloth, 39, 75)},
			at(quiltersResources, 70, 90), at(embroideryPress, 70, 90), at(crazyMom, 63, 88),
			at(organicCloth, 65, 88), between(primitiveQuilts, 59, 85, 72, 90)),
		bed("twin XL", []string{"long twin", "single XL", "twin extra long"},
			[]Published{at(mattressChart, 39, 80), at(organicCloth, 39, 80), at(olderChart, 36, 80)},
			at(quiltersResources, 70, 95), at(organicCloth, 65, 93)),
		bed("full", []string{"double"},
			[]Published{at(mattressChart, 54, 75), at(embroideryPress, 54, 75), at(organicCloth, 54, 75)},
			at(quiltersResources, 86, 90), at(embroideryPress, 85, 108), at(crazyMom, 78, 88),
			at(organicCloth, 80, 88), between(primitiveQuilts, 72, 85, 80, 90)),
	}
}

func wideBeds() []Bed {
	return []Bed{
		bed("queen", nil,
			[]Published{at(mattressChart, 60, 80), at(embroideryPress, 60, 80), at(organicCloth, 60, 80)},
			at(quiltersResources, 90, 95), at(embroideryPress, 90, 108), at(crazyMom, 84, 92),
			at(organicCloth, 86, 93), between(primitiveQuilts, 80, 90, 86, 98)),
		bed("king", nil,
			[]Published{at(mattressChart, 76, 80), at(embroideryPress, 78, 80), between(organicCloth, 76, 80, 78, 80), at(primitiveQuilts, 76, 80)},
			at(quiltersResources, 108, 95), at(embroideryPress, 110, 108), at(crazyMom, 100, 92),
			at(organicCloth, 104, 93), between(primitiveQuilts, 96, 90, 110, 108)),
		bed("California king", []string{"cal king"},
			[]Published{at(mattressChart, 72, 84), at(quiltersResources, 72, 84), at(organicCloth, 72, 84)},
			at(quiltersResources, 102, 100), at(organicCloth, 100, 97), between(primitiveQuilts, 92, 94, 106, 112)),
	}
}

func bed(name string, also []string, mattresses []Published, quilts ...Published) Bed {
	return Bed{name, also, mattresses, quilts}
}
