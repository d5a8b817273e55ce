package measure

// Point is a place in the plane, y downwards; whoever has it says what of.
type Point struct{ X, Y NM }
