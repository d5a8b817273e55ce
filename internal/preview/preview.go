// Package preview turns a layout file that somebody is editing into a picture in the browser
// that follows it: it watches the file, runs it through the stream to a top, and serves a
// page which shows the newest top, or the last good one with the faults over it.
//
// The way of a save: hints (something may have changed) wake the follower, which reads the
// file and decides by its content alone; the drawing is made of what was read and published
// only if the file still says the same; a publication is a snapshot with a revision number;
// open pages are told the number and what is new since the last, and fetch what they lack beyond that.
//
// Resources of a picture (resources.go) come after it: a page that has shown one asks for the tabs and the squint of that very
// picture, if they are in sight. A tab (tab.go, tabs.go) is a document of package report as sections of rows; a row highlights
// patches or seams, and may have a diagram. Plans of cutting and sewing, the pattern's pages and files to save are made when
// somebody asks for them (study.go), each once; all work ends when it is overtaken, and no save waits for it.
package preview

import (
	"cmp"
	"context"
	"fmt"
	"io"
	"path/filepath"
	"runtime/debug"
	"time"

	"github.com/fsnotify/fsnotify"

	"eighthturn/internal/files"
	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/quilt"
	"eighthturn/layout"
)

// Options choose how a file is followed; the zero value is the normal case.
type Options struct {
	Port      int                               // 1 to 65535; 0 takes any free one
	Hosts     []string                          // further host names that a browser may ask for, besides this machine's own
	Colorway  string                            // the colorway that quilts are shown in; "" for as they are written
	Size      string                            // the size that quilts are shown in, likewise
	Tries     []string                          // "fabric=color": other colors that fabrics are shown in; nothing of it is saved
	Cutting   func(*quilt.Top) cutting.Options  // how quilts are cut and bought; nil for the usual way
	Editor    string                            // address that opens a file in an editor, with {file} and {line}; "" for none. See CheckEditor
	Edit      bool                              // let the page write the file
	Secret    bool                              // ask for a key that only the opened address holds
	Quiet     bool                              // no line a save
	NoOpen    bool                              // print the address without opening it
	NoEvents  bool                              // look at the file by the clock alone
	Output    io.Writer                         // where the lines go; nil for nowhere
	shelf     Shelf                             // where the layouts lie; nil for the disk
	opened    func(address string)              // tells tests the address
	published func(*snapshot, timings)          // tells tests what was shown
	draw      drawer                            // stands in for the stream in tests
	album     *files.Album                      // that pictures are drawn with; nil for none
	notify    func() (*fsnotify.Watcher, error) // stands in for the system's in tests
}

// garbage is how much more memory a preview takes than it needs, in percent, before it looks for what it no longer needs: each save
// leaves a whole picture behind, and looking less often has it drawn a fifth sooner.
const garbage = 200

// Run follows the file until the context ends, which is no error. A PortError says that the
// port cannot be had.
func Run(ctx context.Context, file string, o Options) error {
	path, err := filepath.Abs(file)
	if err != nil {
		return err
	}
	if o.Output == nil {
		o.Output = io.Discard
	}
	o.shelf = cmp.Or[Shelf](o.shelf, disk{})
	album := o.shelf.Album(path)
	if o.draw == nil {
		o.draw = drawWith(album, variant{o.Size, o.Colorway}, o.Tries...)
	}
	defer debug.SetGCPercent(debug.SetGCPercent(garbage))
	ctx, stop := context.WithCancel(ctx)
	defer stop()
	s, err := listen(o.Port)
	if err != nil {
		return err
	}
	o.album = album
	site := newSite(path, o)
	served := make(chan error, 1)
	go func() { served <- site.serve(ctx, s) }()
	site.announce(s.Addr().String(), o)
	followed := make(chan struct{})
	go func() {
		defer close(followed)
		f := &follower{shelf: o.shelf, path: path, draw: o.draw, album: album}
		f.follow(ctx, &o, site)
	}()
	err = <-served
	stop()
	select {
	case <-followed:
	case <-time.After(shutdownTimeout): // what it draws ends with the program
	}
	return err
}

// follow keeps the site's state up with the file until the context ends.
func (f *follower) follow(ctx context.Context, o *Options, site *site) {
	notify := o.notify
	if notify == nil && !o.NoEvents {
		notify = fsnotify.NewWatcher
	}
	h := newHints(notify)
	defer h.close()
	defer f.shelf.Follow(f.path, h.give)()
	if h.trouble != nil {
		fmt.Fprintf(o.Output, "this system does not report changes (%s): checking the file %d times a second\n", layout.Visible(h.trouble.Error()), time.Second/pollEvery)
	}
	f.hints, f.publish = h, func(r reading, d drawing, t timings) {
		snap := site.state.publish(r, d)
		if o.published != nil {
			o.published(snap, t)
		}
		if !o.Quiet {
			fmt.Fprintln(o.Output, snap.line(t))
		}
	}
	f.run(ctx)
}
