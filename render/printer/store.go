package printer

import (
	"context"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"time"

	"rodsheet/render/atomicfile"
)

// A Store is the file that keeps the records. It is made when the first one
// is put in.
type Store struct {
	path     string
	patience time.Duration // how long to wait for a lock
}

// In returns the store in the user's configuration directory dir.
func In(dir string) Store {
	return Store{filepath.Join(dir, "rodsheet", "printers.toml"), 10 * time.Second}
}

// A FileError says that the file of the store cannot be used. The file is as
// it was before.
type FileError struct {
	Path   string
	Reason string // continues a sentence that begins with the path
}

func (e *FileError) Error() string { return e.Path + " " + e.Reason }

// An UnknownError says that there is no record of a printer.
type UnknownError struct {
	Name  string
	Known []string
}

func (e *UnknownError) Error() string { return fmt.Sprintf("no printer %.40q is known", e.Name) }

// Names returns the printers there are, in order.
func Names(records map[string]Record) []string { return slices.Sorted(maps.Keys(records)) }

// Records reads all records; a file that is not there holds none. A file that
// is not wholly understood is a *FileError.
func (s Store) Records() (map[string]Record, error) {
	const most = 1 << 20 // bytes: some ten thousand printers
	info, err := os.Stat(s.path)
	if errors.Is(err, fs.ErrNotExist) {
		if _, err := os.Lstat(s.path); err == nil {
			return nil, &FileError{s.path, "is a link to nothing"}
		}
		return map[string]Record{}, nil
	}
	if err == nil && !info.Mode().IsRegular() { // asked before: to open a pipe waits for its other end
		return nil, &FileError{s.path, "is no regular file"}
	}
	f, err := os.Open(s.path)
	if err != nil {
		return nil, s.cannot("be opened", err)
	}
	defer f.Close()
	data, err := io.ReadAll(io.LimitReader(f, most+1))
	if err != nil {
		return nil, s.cannot("be read", err)
	}
	if len(data) > most {
		return nil, &FileError{s.path, "is over 1 MB and is not a file of rodsheet"}
	}
	records, err := decode(data)
	if err != nil {
		return nil, &FileError{s.path, err.Error()}
	}
	return records, nil
}

// Find returns the record of a printer, or an *UnknownError.
func (s Store) Find(name string) (Record, error) {
	records, err := s.Records()
	if err != nil {
		return Record{}, err
	}
	r, ok := records[name]
	if !ok {
		return Record{}, &UnknownError{name, Names(records)}
	}
	return r, nil
}

// Put keeps the record of a printer in place of an older one, and returns the
// older one where there was one.
func (s Store) Put(name string, r Record) (old Record, replaced bool, err error) {
	if err := CheckName(name); err != nil {
		return Record{}, false, err
	}
	r = r.rounded()
	if err := r.Check(); err != nil {
		return Record{}, false, err
	}
	err = s.update(func(records map[string]Record) error {
		old, replaced = records[name]
		records[name] = r
		return nil
	})
	return old, replaced, err
}

// Forget drops the record of a printer. An *UnknownError says that there was
// none.
func (s Store) Forget(name string) error {
	return s.update(func(records map[string]Record) error {
		if _, ok := records[name]; !ok {
			return &UnknownError{name, Names(records)}
		}
		delete(records, name)
		return nil
	})
}

// update reads the file, changes the records and writes them, alone. Should
// the file of the lock be removed meanwhile, it begins again: change works on
// what is there then.
func (s Store) update(change func(map[string]Record) error) error {
	if err := os.MkdirAll(filepath.Dir(s.path), 0o755); err != nil {
		return s.cannot("be written", err)
	}
	for {
		done, err := s.attempt(change)
		if done || err != nil {
			return err
		}
	}
}

// attempt is one try of update.
func (s Store) attempt(change func(map[string]Record) error) (done bool, err error) {
	target := s.path
	if real, err := filepath.EvalSymlinks(s.path); err == nil {
		target = real // whichever link led there
	}
	l, err := s.lock(target)
	if err != nil {
		return false, err
	}
	defer release(l)
	records, err := s.Records()
	if err == nil {
		err = change(records)
	}
	if err != nil || !held(l) {
		return false, err
	}
	text := atomicfile.File{Name: target, Write: atomicfile.Text(encode(records))}
	if err := atomicfile.Write(context.Background(), text); err != nil {
		return false, s.cannot("be written", err)
	}
	return true, nil
}

// cannot returns a FileError with the bare cause of a failed system call.
func (s Store) cannot(do string, err error) error {
	return &FileError{s.path, "cannot " + do + ": " + atomicfile.Reason(err)}
}
