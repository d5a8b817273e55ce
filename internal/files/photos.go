// Package files turns the name of a photo in a layout into what the photo tells of a cloth.
// It reads nothing but files in the layout's own folder and below it.
package files

import (
	"context"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"sync"
	"syscall"
	"time"

	"eighthturn/internal/stop"
	"eighthturn/palettes"
)

// Album reads the photos of one folder and remembers them for as long as their files stand
// still. It may be used by several at once.
type Album struct {
	open  func(name string) (fs.File, error)
	mutex sync.Mutex
	pages map[string]page
}

// page is a photo that was read; its file had that size and date.
type page struct {
	stamp stamp
	cloth palettes.PhotoSample
	fault error
}

type stamp struct {
	size    int64
	changed time.Time
	missing bool
}

// maxPages is how many photos are remembered.
const maxPages = 500

// In is the album of a folder.
func In(folder string) *Album { return &Album{open: inFolder(folder).open, pages: map[string]page{}} }

// Of is the album of a file system, which has nothing but photos that a layout may name.
func Of(photos fs.FS) *Album { return &Album{open: photos.Open, pages: map[string]page{}} }

// Beside is the album of the folder that holds a layout.
func Beside(layoutFile string) *Album { return In(filepath.Dir(layoutFile)) }

// photoTime is how long reading one photo may take: the largest that are taken need a small part of it.
const photoTime = 8 * time.Second

// Cloth reads a photo by its name in the layout, folders parted by /. A fault is one sentence.
func (a *Album) Cloth(name string) (palettes.PhotoSample, error) {
	return a.clothWithin(photoTime, name)
}

// clothWithin is Cloth within some time.
func (a *Album) clothWithin(most time.Duration, name string) (cloth palettes.PhotoSample, err error) {
	ctx, release := context.WithTimeout(context.Background(), most)
	defer release()
	if stop.Do(ctx, func(sign *stop.Sign) { cloth, err = a.ClothUntil(sign, name) }) != nil {
		return a.tooLong(name)
	}
	return cloth, err
}

// tooLong remembers of a photo that it takes too long, so that the next fabric that names it does not wait again. It counts
// as one of the largest.
func (a *Album) tooLong(name string) (palettes.PhotoSample, error) {
	p := page{cloth: palettes.PhotoSample{Pixels: palettes.MaxPhotoPixels}, fault: errors.New("this photo takes too long to read: save it again, smaller")}
	if file, now, err := a.opened(name); err == nil {
		file.Close()
		p.stamp = now
		a.keep(name, p)
	}
	return p.cloth, p.fault
}

// ClothUntil is Cloth until a sign ends it.
func (a *Album) ClothUntil(sign *stop.Sign, name string) (palettes.PhotoSample, error) {
	file, now, err := a.opened(name)
	if err != nil {
		a.keep(name, page{stamp: now, fault: err})
		return palettes.PhotoSample{}, err
	}
	defer file.Close()
	if p, ok := a.page(name); ok && p.stamp == now {
		return p.cloth, p.fault
	}
	p := page{stamp: now}
	p.cloth, p.fault = read(sign, file)
	a.keep(name, p)
	return p.cloth, p.fault
}

// page is what is remembered of a photo.
func (a *Album) page(name string) (page, bool) {
	a.mutex.Lock()
	defer a.mutex.Unlock()
	p, ok := a.pages[name]
	return p, ok
}

// Kept is what was read of a photo before, whatever its file says now; known is false for one that was not read, or was forgotten.
func (a *Album) Kept(name string) (cloth palettes.PhotoSample, known bool, fault error) {
	p, known := a.page(name)
	return p.cloth, known, p.fault
}

// Changed says whether a photo that was asked for is no longer as it was read.
func (a *Album) Changed() bool {
	a.mutex.Lock()
	defer a.mutex.Unlock()
	for name, p := range a.pages {
		file, now, err := a.opened(name)
		if err == nil {
			file.Close()
		}
		if now != p.stamp {
			return true
		}
	}
	return false
}

// Forget drops what is remembered of all photos but those named.
func (a *Album) Forget(but map[string]bool) {
	a.mutex.Lock()
	defer a.mutex.Unlock()
	for name := range a.pages {
		if !but[name] {
			delete(a.pages, name)
		}
	}
}

func (a *Album) keep(name string, p page) {
	a.mutex.Lock()
	defer a.mutex.Unlock()
	if len(a.pages) >= maxPages {
		clear(a.pages)
	}
	a.pages[name] = p
}

// opened is a photo that may be read, and its stamp.
func (a *Album) opened(name string) (fs.File, stamp, error) {
	if !filepath.IsLocal(filepath.FromSlash(name)) {
		return nil, stamp{missing: true}, errors.New("this leads out of the layout's folder, and photos are read from it alone; put the photo beside the layout")
	}
	file, err := a.open(name)
	var not *unfitError
	if errors.As(err, &not) {
		return nil, not.stamp, err
	}
	if err != nil {
		return nil, stamp{missing: true}, explained(err)
	}
	info, err := file.Stat()
	if err == nil {
		err = unfit(info)
	}
	if err != nil {
		file.Close()
		return nil, stamp{missing: true}, explained(err)
	}
	return file, stampOf(info), nil
}

// inFolder opens photos of a folder of the disk.
type inFolder string

// open opens a photo within the folder, whatever links lead where: nothing outside it, and
// nothing but an ordinary file, is ever opened.
func (folder inFolder) open(name string) (fs.File, error) {
	root, err := os.OpenRoot(string(folder))
	if err != nil {
		return nil, err
	}
	defer root.Close()
	local := filepath.FromSlash(name)
	if info, err := root.Stat(local); err != nil {
		return nil, err
	} else if err := unfit(info); err != nil {
		return nil, &unfitError{stampOf(info), err}
	}
	return root.OpenFile(local, os.O_RDONLY|Unblocked, 0)
}

// unfitError is why something that is there is not opened.
type unfitError struct {
	stamp stamp
	error
}

func stampOf(info fs.FileInfo) stamp {
	return stamp{size: info.Size(), changed: info.ModTime()}
}

// unfit says why something that is there is no photo, nil if it may be one.
func unfit(info fs.FileInfo) error {
	switch {
	case info.IsDir():
		return errors.New("this is a folder, expected a JPEG or PNG file")
	case !info.Mode().IsRegular():
		return errors.New("this is not an ordinary file, expected a JPEG or PNG file")
	case info.Size() > palettes.MaxPhotoBytes:
		return palettes.TooLarge(info.Size())
	}
	return nil
}

// explained is a fault of the file system as a sentence.
func explained(err error) error {
	var path *fs.PathError
	var number syscall.Errno // the system's own word: a disk that fails, a loop of links
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return errors.New("there is no such photo beside the layout")
	case errors.Is(err, fs.ErrPermission):
		return errors.New("you may not read this photo; its owner can allow it")
	case errors.As(err, &path) && errors.As(path.Err, &number):
		return fmt.Errorf("the photo cannot be read: %w", number)
	}
	return errors.New("the photo cannot be read; put it into the layout's folder, not a link that leads elsewhere")
}

func read(sign *stop.Sign, file fs.File) (palettes.PhotoSample, error) {
	bytes, err := io.ReadAll(io.LimitReader(file, palettes.MaxPhotoBytes+1))
	if err != nil {
		return palettes.PhotoSample{}, explained(err)
	}
	return palettes.ReadSwatch(sign, bytes)
}
