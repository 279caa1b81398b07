// Package atomicfile writes files so that each stands complete under its name
// or not at all.
package atomicfile

import (
	"context"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"sync"
	"time"
)

// A File is one thing to write: where, and what.
type File struct {
	Name  string
	Write func(io.Writer) error
	// New asks for a file where none is; otherwise the error is fs.ErrExist.
	New bool
}

// Text returns what writes a finished text.
func Text(text []byte) func(io.Writer) error {
	return func(w io.Writer) error {
		_, err := w.Write(text)
		return err
	}
}

// An Error says which file could not be written. Those before it are new
// already where Done is more than 0: then the renaming failed, the one step at
// which several files can end half old, half new.
type Error struct {
	Name string
	Done int
	Err  error
}

func (e *Error) Error() string { return "cannot write " + e.Name + ": " + Reason(e.Err) }
func (e *Error) Unwrap() error { return e.Err }

// Reason returns the bare cause of a failed system call: "permission denied".
func Reason(err error) string {
	var own *Error
	if errors.As(err, &own) {
		err = own.Err
	}
	var path *fs.PathError
	var link *os.LinkError
	switch {
	case errors.As(err, &path):
		err = path.Err
	case errors.As(err, &link):
		err = link.Err
	}
	return err.Error()
}

// Write writes the files. Everything is first written beside its place and
// then renamed: until all of it is on disk, what stood there before is
// untouched. It gives up when ctx is cancelled before the first renaming.
func Write(ctx context.Context, files ...File) error {
	var drafts []*draft
	defer func() {
		for _, d := range drafts {
			d.discard()
		}
	}()
	for _, f := range files {
		d, err := begin(f)
		if err == nil {
			drafts = append(drafts, d)
			err = d.fill(ctx, f.Write)
		}
		if err != nil {
			return &Error{Name: f.Name, Err: err}
		}
	}
	for i, d := range drafts {
		if err := d.keep(); err != nil {
			return &Error{files[i].Name, i, err}
		}
	}
	return nil
}

// A draft is a file being written. path is its place; temp is where it stands
// until it is kept, and empty where the place is a pipe or a device.
type draft struct {
	*os.File
	temp, path string
}

// begin opens a draft. Links are followed. A file that stands there must be
// writable and lends its mode; pipes and devices are written straight.
func begin(file File) (*draft, error) {
	if file.New { // no renaming is sure to spare a file that came meanwhile
		f, err := os.OpenFile(file.Name, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o666)
		return &draft{f, file.Name, file.Name}, err
	}
	old, err := os.Stat(file.Name)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		if _, err := os.Lstat(file.Name); err == nil {
			return nil, errors.New("it is a link to nothing")
		}
		return createBeside(file.Name, nil)
	case err != nil:
		return nil, err
	case old.IsDir():
		return nil, errors.New("it is a directory")
	}
	f, err := os.OpenFile(file.Name, os.O_WRONLY, 0)
	if err != nil {
		return nil, err
	}
	if !old.Mode().IsRegular() {
		return &draft{File: f, path: file.Name}, nil
	}
	f.Close()
	path, err := filepath.EvalSymlinks(file.Name)
	if err != nil {
		return nil, err
	}
	return createBeside(path, old)
}

// createBeside opens a new file in the directory of path. Without an old file
// to take its mode from it gets the mode of any new file.
func createBeside(path string, old fs.FileInfo) (*draft, error) {
	dir := filepath.Dir(path)
	sweep(dir)
	for i := 0; ; i++ {
		temp := filepath.Join(dir, fmt.Sprintf(".rodsheet-%d-%d.tmp", os.Getpid(), i))
		f, err := os.OpenFile(temp, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o666)
		if errors.Is(err, fs.ErrExist) {
			continue
		}
		if err != nil {
			return nil, err
		}
		d := &draft{f, temp, path}
		if old != nil {
			err = f.Chmod(old.Mode().Perm())
		}
		if err != nil {
			d.discard()
			return nil, err
		}
		return d, nil
	}
}

// draftName is what createBeside calls a draft.
var draftName = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`^\.rodsheet-\d+-\d+\.tmp$`) })

// sweep removes drafts that a killed run left in the directory. No run takes
// a day, so none loses the draft that it is writing.
func sweep(dir string) {
	entries, _ := os.ReadDir(dir)
	for _, e := range entries {
		if !e.Type().IsRegular() || !draftName().MatchString(e.Name()) {
			continue
		}
		if info, err := e.Info(); err == nil && time.Since(info.ModTime()) > 24*time.Hour {
			os.Remove(filepath.Join(dir, e.Name()))
		}
	}
}

// fill writes the draft and brings it to the disk.
func (d *draft) fill(ctx context.Context, write func(io.Writer) error) error {
	if err := write(Watched(ctx, d.File)); err != nil {
		return err
	}
	if err := ctx.Err(); err != nil {
		return err
	}
	if d.temp != "" {
		if err := d.Sync(); err != nil {
			return err
		}
	}
	return d.Close()
}

// keep puts the draft in its place.
func (d *draft) keep() error {
	if d.temp != d.path && d.temp != "" {
		if err := os.Rename(d.temp, d.path); err != nil {
			return err
		}
	}
	d.temp = ""
	return nil
}

// discard removes what is left of the draft; after keep that is nothing.
func (d *draft) discard() {
	d.Close()
	if d.temp != "" {
		os.Remove(d.temp)
	}
}

// Watched returns a writer that fails once ctx is cancelled.
func Watched(ctx context.Context, w io.Writer) io.Writer { return watched{ctx, w} }

type watched struct {
	ctx context.Context
	io.Writer
}

func (w watched) Write(p []byte) (int, error) {
	if err := w.ctx.Err(); err != nil {
		return 0, err
	}
	return w.Writer.Write(p)
}
