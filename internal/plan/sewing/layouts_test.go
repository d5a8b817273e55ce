package sewing_test

import (
	"sync"

	"eighthturn/internal/plan/sewing"
	"eighthturn/internal/quilt"
	"eighthturn/internal/quilttest/judges"
	"eighthturn/internal/quilttest/lay"
)

// planned is a top and how it is sewn, which tests share and nobody changes.
type planned struct {
	name string
	*quilt.Top
	plan *sewing.Plan
}

// planOptions are those of the shared plans.
var planOptions = sewing.Options{MaxOddCycles: 1000}

// everyPlan is the samples and many invented layouts, laid out and planned once.
var everyPlan = sync.OnceValue(func() (list []planned) {
	for _, top := range append(lay.Samples(), lay.Invented(0, judges.Of(60, 300), 1<<20)...) {
		list = append(list, planned{top.Name, top.Top, planOf(top.Top, planOptions)})
	}
	return list
})
