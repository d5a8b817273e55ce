package palettes

import (
	"cmp"
	"slices"

	"eighthturn/internal/stop"
)

// How a print is taken apart into colours; our choices.
const (
	mostParts   = 4      // colours of one print
	closeEnough = 8      // mean CIEDE2000 of the points from their colour at which there are enough of them
	leastShare  = 0.03   // of the cloth, below which a colour is left out
	partPoints  = 20_000 // points that are sorted
	judgePoints = 2_000  // points whose distance is measured
	mostRounds  = 40
)

// parts sorts points into at most so many colours: k-means in OKLab, begun with the point
// nearest to the mean and then always the one farthest from those begun with, so that it
// does the same every time. A colour is the mean of its points in linear light. Those of
// less than 3 of 100 are left out, unless nothing would be left.
func parts(sign *stop.Sign, points []Linear, most int) []Part {
	points = thinned(points, partPoints)
	at := make([]OKLab, len(points))
	for i, p := range points {
		at[i] = p.okLab()
	}
	centres := begun(at, meanOf(points).okLab(), most)
	of := make([]int, len(points))
	for range mostRounds {
		sign.Step(len(at))
		if !settle(of, at, centres) {
			break
		}
		recentre(centres, of, at)
	}
	return shares(points, of, len(centres))
}

// thinned is every so-manieth point.
func thinned(points []Linear, most int) []Linear {
	step := (len(points) + most - 1) / most
	if step <= 1 {
		return points
	}
	var some []Linear
	for i := step / 2; i < len(points); i += step {
		some = append(some, points[i])
	}
	return some
}

// begun is the points that the centres begin at; fewer than most where there are fewer
// different points.
func begun(at []OKLab, mean OKLab, most int) []OKLab {
	first := at[0]
	for _, p := range at {
		if apartSquared(p, mean) < apartSquared(first, mean) {
			first = p
		}
	}
	centres := []OKLab{first}
	nearest := make([]float64, len(at))
	for i, p := range at {
		nearest[i] = apartSquared(p, first)
	}
	for len(centres) < most {
		farthest := 0
		for i := range nearest {
			if nearest[i] > nearest[farthest] {
				farthest = i
			}
		}
		if nearest[farthest] == 0 {
			break
		}
		centres = append(centres, at[farthest])
		for i, p := range at {
			nearest[i] = min(nearest[i], apartSquared(p, at[farthest]))
		}
	}
	return centres
}

func apartSquared(a, b OKLab) float64 {
	l, x, y := a.L-b.L, a.A-b.A, a.B-b.B
	return float64(l*l) + float64(x*x) + float64(y*y)
}

// settle gives each point to the nearest centre and says whether any changed.
func settle(of []int, at []OKLab, centres []OKLab) bool {
	changed := false
	for i, p := range at {
		best := 0
		for c := range centres {
			if apartSquared(p, centres[c]) < apartSquared(p, centres[best]) {
				best = c
			}
		}
		changed = changed || of[i] != best
		of[i] = best
	}
	return changed
}

// recentre moves each centre that has points to their mean.
func recentre(centres []OKLab, of []int, at []OKLab) {
	sums := make([]OKLab, len(centres))
	count := make([]float64, len(centres))
	for i, p := range at {
		s := &sums[of[i]]
		s.L += p.L
		s.A += p.A
		s.B += p.B
		count[of[i]]++
	}
	for c := range centres {
		if count[c] > 0 {
			centres[c] = OKLab{sums[c].L / count[c], sums[c].A / count[c], sums[c].B / count[c]}
		}
	}
}

// shares are the colours of the groups, the largest first.
func shares(points []Linear, of []int, groups int) []Part {
	members := make([][]Linear, groups)
	for i, p := range points {
		members[of[i]] = append(members[of[i]], p)
	}
	var list []Part
	for _, m := range members {
		if len(m) > 0 {
			list = append(list, Part{meanOf(m).Colour(), float64(len(m)) / float64(len(points))})
		}
	}
	slices.SortStableFunc(list, func(a, b Part) int { return -cmp.Compare(a.Share, b.Share) })
	for len(list) > 1 && list[len(list)-1].Share < leastShare {
		list = list[:len(list)-1]
	}
	return list
}

// meanDistance is the mean CIEDE2000 of points from the nearest of the colours.
func meanDistance(points []Linear, list []Part) float64 {
	points = thinned(points, judgePoints)
	labs := make([]Lab, len(list))
	for i, p := range list {
		labs[i] = p.Colour.Lab()
	}
	sum := 0.0
	for _, p := range points {
		own := p.lab()
		best := own.difference(labs[0])
		for _, l := range labs[1:] {
			best = min(best, own.difference(l))
		}
		sum += best
	}
	return sum / float64(len(points))
}
