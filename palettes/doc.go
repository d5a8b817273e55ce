// Package palettes turns the words and files in which a fabric's colour is given into colours, and tells how light each
// one is, how far two lie apart and which fabrics go together.
package palettes
