module eighthturn

go 1.26.0

require (
	github.com/HugoSmits86/nativewebp v0.9.3
	github.com/agnivade/levenshtein v1.2.2
	github.com/ajstarks/svgo v0.0.0-20211024235047-1546f124cd8b
	github.com/aymanbagabas/go-udiff v0.4.1
	github.com/carlos7ags/folio v0.11.0
	github.com/chromedp/cdproto v0.159.0
	github.com/chromedp/chromedp v0.23.0
	github.com/creack/pty v1.1.24
	github.com/fsnotify/fsnotify v1.10.1
	github.com/inconshreveable/mousetrap v1.1.0
	github.com/kovidgoyal/imaging v1.9.0
	github.com/lucasb-eyer/go-colorful v1.4.1
	github.com/peterstace/simplefeatures v0.50.0
	github.com/rivo/uniseg v0.4.7
	github.com/rogpeppe/go-internal v1.16.0
	github.com/sourcegraph/jsonrpc2 v0.2.3
	github.com/spf13/cobra v1.10.2
	github.com/spf13/pflag v1.0.9
	golang.org/x/image v0.47.0
	golang.org/x/sys v0.49.0
	golang.org/x/text v0.44.0
	golang.org/x/tools v0.52.0
)

require (
	github.com/go-json-experiment/json v0.0.0-20260213210345-44df1a37e875 // indirect
	github.com/kovidgoyal/go-parallel v1.1.1 // indirect
	golang.org/x/mod v0.42.0 // indirect
	golang.org/x/sync v0.25.0 // indirect
)
