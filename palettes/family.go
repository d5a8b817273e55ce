package palettes

// Family is one of the three kinds of value in which quilters sort their fabrics.
type Family int

const (
	Dark Family = iota
	Medium
	Light
)

// The CIE L* at which medium and light begin: the borders of black with dark grey, medium grey, and light grey with white
// among the neutrals of the ISCC-NBS system (NBS Special Publication 440: Munsell values 4.5 and 6.5, that is L* 45.9 and
// 66.0). Drawing its five neutrals together to three is our choice.
const (
	MediumFrom = 46
	LightFrom  = 66
)

// FamilyOf sorts a CIE L* by itself, whatever lies beside it.
func FamilyOf(lightness float64) Family {
	switch {
	case lightness < MediumFrom:
		return Dark
	case lightness < LightFrom:
		return Medium
	}
	return Light
}

// String is "dark", "medium" or "light".
func (f Family) String() string {
	switch f {
	case Dark:
		return "dark"
	case Medium:
		return "medium"
	}
	return "light"
}

// familyStep is how far apart in L* the means of neighbouring families must lie: one Munsell step, our choice.
const familyStep = 10

// RelativeFamilies sorts fabrics by what each is among the others: one family for each area, in the order given. Where
// three families would lie closer than 10 L* there are two, dark and light; where two would, all are medium.
func RelativeFamilies(areas []Area) []Family {
	for k := 3; k > 1; k-- {
		if c := Classify(areas, k); len(c.Means) == k && c.apart(familyStep) {
			return c.families()
		}
	}
	all := make([]Family, len(areas))
	for i := range all {
		all[i] = Medium
	}
	return all
}

// apart reports whether the means of neighbouring classes all lie at least step apart.
func (c Classes) apart(step float64) bool {
	for i := 1; i < len(c.Means); i++ {
		if c.Means[i]-c.Means[i-1] < step {
			return false
		}
	}
	return true
}

// families turns classes, two or three, into families, the lightest class into light.
func (c Classes) families() []Family {
	families := make([]Family, len(c.Of))
	for i, class := range c.Of {
		families[i] = Family(class)
		if class == len(c.Means)-1 {
			families[i] = Light
		}
	}
	return families
}
