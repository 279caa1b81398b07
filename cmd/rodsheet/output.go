package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"

	"rodsheet/templates/wording"
)

// A file is one thing to write: where, and what.
type file struct {
	name  string
	write func(io.Writer) error
}

// written returns what writes a finished text.
func written(text []byte) func(io.Writer) error {
	return func(w io.Writer) error {
		_, err := w.Write(text)
		return err
	}
}

// save writes files so that each stands complete under its name or not at
// all. Everything is first written beside its place and then renamed: until
// all of it is on disk, what stood there before is untouched. It gives up
// when ctx is cancelled before the first renaming.
func save(ctx context.Context, files []file) error {
	var drafts []*draft
	defer func() {
		for _, d := range drafts {
			d.discard()
		}
	}()
	for _, f := range files {
		d, err := begin(f.name)
		if err != nil {
			return cannot(f.name, err)
		}
		drafts = append(drafts, d)
		if err := d.fill(ctx, f.write); err != nil {
			return stopped(ctx, err, func(err error) error { return cannot(f.name, err) })
		}
	}
	for i, d := range drafts {
		if err := d.keep(); err != nil {
			return partly(files[:i], cannot(files[i].name, err))
		}
	}
	return nil
}

// stopped returns interrupted where the user caused err, and otherwise says
// what could not be written.
func stopped(ctx context.Context, err error, cannot func(error) error) error {
	switch {
	case err == nil:
		return nil
	case ctx.Err() != nil:
		return interrupted{}
	}
	return cannot(err)
}

func cannot(name string, err error) error {
	return fmt.Errorf("cannot write %s: %s", wording.Shown(name), reason(err))
}

func cannotPrint(err error) error {
	return fmt.Errorf("cannot write standard output: %s", reason(err))
}

// partly adds what already stands to the error of a renaming, the one step
// at which several files can end half old, half new.
func partly(done []file, err error) error {
	if len(done) == 0 {
		return err
	}
	return fmt.Errorf("%w; new until then: %s", err, span(done))
}

// span names a run of files.
func span(files []file) string {
	if len(files) == 1 {
		return files[0].name
	}
	return files[0].name + " to " + files[len(files)-1].name
}

// A draft is a file being written. path is its place; temp, beside it, is
// empty where the place is written straight, and after the renaming.
type draft struct {
	*os.File
	temp, path string
}

// begin opens a draft for name. Links are followed. A file that stands there
// must be writable and lends its mode; pipes and devices are written straight.
func begin(name string) (*draft, error) {
	old, err := os.Stat(name)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		if _, err := os.Lstat(name); err == nil {
			return nil, errors.New("it is a link to nothing")
		}
		return createBeside(name, nil)
	case err != nil:
		return nil, err
	case old.IsDir():
		return nil, errors.New("it is a directory")
	}
	f, err := os.OpenFile(name, os.O_WRONLY, 0)
	if err != nil {
		return nil, err
	}
	if !old.Mode().IsRegular() {
		return &draft{File: f, path: name}, nil
	}
	f.Close()
	path, err := filepath.EvalSymlinks(name)
	if err != nil {
		return nil, err
	}
	return createBeside(path, old)
}

// createBeside opens a new file in the directory of path. Without an old file
// to take its mode from it gets the mode of any new file.
func createBeside(path string, old fs.FileInfo) (*draft, error) {
	for i := 0; ; i++ {
		temp := filepath.Join(filepath.Dir(path), fmt.Sprintf(".rodsheet-%d-%d.tmp", os.Getpid(), i))
		f, err := os.OpenFile(temp, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o666)
		if errors.Is(err, fs.ErrExist) {
			continue
		}
		if err != nil {
			return nil, err
		}
		d := &draft{f, temp, path}
		if old == nil {
			return d, nil
		}
		if err := f.Chmod(old.Mode().Perm()); err != nil {
			d.discard()
			return nil, err
		}
		return d, nil
	}
}

// fill writes the draft and brings it to the disk.
func (d *draft) fill(ctx context.Context, write func(io.Writer) error) error {
	if err := write(watched{ctx, d.File}); err != nil {
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
	if d.temp == "" {
		return nil
	}
	if err := os.Rename(d.temp, d.path); err != nil {
		return err
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

// watched is a writer that fails once ctx is cancelled.
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
