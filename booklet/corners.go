package booklet

import (
	"fmt"
	"strings"

	"eighthturn/sewing"
)

// offset is how the unfinished corners of one seam lie.
func (b *book) offset(k *sewing.Block, j *sewing.Join) string {
	names := [2]string{b.joined(k, j.A, j.MadeA), b.joined(k, j.B, j.MadeB)}
	text := b.cutFlat(j, names) + b.sticksOut(j, names) + b.larger(j, names)
	partial := 0
	for i := range j.Ends {
		if j.Ends[i].Partial {
			partial++
		}
	}
	if partial > 0 {
		text += " Sew this seam in part: stop a seam allowance before the cut edge at " + verb(partial, "one end", "both ends") + ", and sew a stitch back."
	}
	return text
}

// cutFlat says which sharp corners are cut off before sewing.
func (b *book) cutFlat(j *sewing.Join, names [2]string) string {
	at := map[string]int{}
	for i := range j.Ends {
		for part, blunt := range j.Ends[i].Blunted {
			if blunt {
				at[names[part]]++
			}
		}
	}
	text := ""
	for part, name := range names {
		if n := at[name]; n > 0 && (part == 0 || name != names[0]) {
			text += fmt.Sprintf("first cut the sharp %s of the %s off flat, %s beyond %s. Then ", verb(n, "corner", "corners"), name, b.length(b.Sewing.Seam), verb(n, "its finished point", "their finished points"))
		}
	}
	return text
}

// sticksOut says by how much corners stick out at the two ends of a seam.
func (b *book) sticksOut(j *sewing.Join, names [2]string) string {
	parts := [2]string{b.leads(j.Ends[0].LeadBlunt, names), b.leads(j.Ends[1].LeadBlunt, names)}
	switch {
	case parts[0] == "" && parts[1] == "":
		return "the corners lie on each other at both ends; no offset."
	case parts[0] == parts[1]:
		return "at both ends " + parts[0] + "."
	case parts[0] == "" || parts[1] == "":
		return "at one end " + strings.Join(parts[:], "") + "; at the other the corners lie on each other."
	}
	return "at one end " + parts[0] + ", at the other " + parts[1] + "."
}

// leads says which corner sticks out at an end of a seam, "" for neither.
func (b *book) leads(lead sewing.Length, names [2]string) string {
	who, beyond := names[1], names[0]
	if lead.NM < 0 {
		who, beyond = beyond, who
		lead = sewing.Length{NM: -lead.NM, Nearest: -lead.Nearest}
	}
	switch {
	case lead.Nearest == 0:
		return ""
	case who == beyond:
		return "one " + who + " sticks out by " + b.mark(lead)
	}
	return "the " + who + " sticks out beyond the " + beyond + " by " + b.mark(lead)
}

// larger says where a piece stands out further since it is cut larger and trimmed later.
func (b *book) larger(j *sewing.Join, names [2]string) string {
	for i := range j.Ends {
		for part, spare := range j.Ends[i].Spare {
			other := &j.Ends[1-i]
			if spare.Nearest > 0 && other.Spare[part].NM == 0 && other.Spare[1-part].NM == 0 {
				return fmt.Sprintf(" The %s is cut larger than it need be: match the end where it is exact, and let it stand out at the other by up to %s more.", names[part], b.mark(spare))
			}
		}
	}
	return ""
}

// joined is what one side of a seam is called: a piece by its shape, or a unit.
func (b *book) joined(k *sewing.Block, pieces []int, made int) string {
	if made >= 0 && !k.Column {
		return "unit"
	}
	return b.Sewing.ShapeName(k, pieces[len(pieces)-1])
}
