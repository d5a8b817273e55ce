package preview

import (
	"context"
	"net/http"
)

// Within serves the layouts of a shelf to pages that sit in the same process, until the context ends: all that a preview of a folder
// serves, which they may write, without a network.
func Within(ctx context.Context, shelf Shelf, beginnings []Beginning) http.Handler {
	return newFolder(ctx, ".", beginnings, Options{shelf: shelf, Edit: true, Quiet: true, NoEvents: true})
}

// AssetsKey tells versions of the page apart.
func AssetsKey() string { return assetsKey() }
