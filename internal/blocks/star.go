package blocks

// star: the pieces of a web, meant to show its kites.
func star() *Kind {
	k := web()
	k.Name = "star"
	k.Summary = "a web's pieces with the kites in the value that stands out; four blocks make a four-pointed star"
	k.Turning = OnStarCentres
	k.Points = NE
	return k
}
