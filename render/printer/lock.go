package printer

import (
	"errors"
	"io/fs"
	"os"
	"time"
)

// A lock is a file that only one process can have made.
type lock struct {
	*os.File
	path string // empty once it has been renamed
}

// lock makes the lock file beside the target. It waits for another process to
// be done, and clears a lock that a crash left behind.
func (s Store) lock(target string) (*lock, error) {
	path := target + ".lock"
	for end := time.Now().Add(s.patience); ; {
		f, err := os.OpenFile(path, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o666)
		if err == nil {
			return &lock{f, path}, nil
		}
		if !errors.Is(err, fs.ErrExist) {
			return nil, s.cannot("be written", err)
		}
		if time.Now().After(end) {
			return nil, &FileError{s.path, "is being written by another rodsheet; if none is running, remove " + path}
		}
		s.clear(path)
		time.Sleep(2 * time.Millisecond)
	}
}

// clear removes a stale lock. A second lock lets one process at a time do so:
// otherwise two could find the same lock stale, and the slower one would
// remove the new lock of the faster.
func (s Store) clear(path string) {
	if !s.isStale(path) {
		return
	}
	guard := path + ".clear"
	f, err := os.OpenFile(guard, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o666)
	if err != nil {
		return
	}
	defer os.Remove(guard)
	f.Close()
	if s.isStale(path) {
		os.Remove(path)
	}
}

func (s Store) isStale(path string) bool {
	info, err := os.Lstat(path)
	return err == nil && time.Since(info.ModTime()) > s.stale
}

// fill writes the new file to the disk, with the mode of the one it replaces.
func (l *lock) fill(data []byte, old string) error {
	if info, err := os.Stat(old); err == nil {
		if err := l.Chmod(info.Mode().Perm()); err != nil {
			return err
		}
	}
	if _, err := l.Write(data); err != nil {
		return err
	}
	return l.Sync()
}

// held reports whether the file under the path is still the one that was made.
func (l *lock) held() bool {
	own, err := l.Stat()
	if err != nil {
		return false
	}
	there, err := os.Lstat(l.path)
	return err == nil && os.SameFile(own, there)
}

// release closes the lock and removes what is left of it.
func (l *lock) release() {
	if l.path != "" && l.held() {
		os.Remove(l.path)
	}
	l.Close()
}
