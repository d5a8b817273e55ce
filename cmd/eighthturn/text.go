package main

// mapped is a list with each entry put into another form; without entries it is empty, never nil.
func mapped[A, B any](list []A, form func(A) B) []B {
	out := make([]B, len(list))
	for i, a := range list {
		out[i] = form(a)
	}
	return out
}
