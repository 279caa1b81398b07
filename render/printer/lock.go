package printer

import (
	"context"
	"errors"
	"os"
	"time"

	"github.com/gofrs/flock"
)

// lock keeps other processes from changing the file at target until it is
// released. The system gives back the lock of a process that ends, however it
// does.
func (s Store) lock(target string) (*flock.Flock, error) {
	ctx, cancel := context.WithTimeout(context.Background(), s.patience)
	defer cancel()
	for {
		l := flock.New(target+".lock", flock.SetPermissions(0o666))
		_, err := l.TryLockContext(ctx, 2*time.Millisecond)
		switch {
		case errors.Is(err, context.DeadlineExceeded):
			return nil, &FileError{s.path, "is being written by another rodsheet; try again when that has ended"}
		case err != nil:
			return nil, s.cannot("be written", err)
		case held(l):
			return l, nil
		}
		l.Close() // of a file that its last holder removed
	}
}

// held reports whether the lock is still that of the file under its path.
func held(l *flock.Flock) bool {
	own, err := l.Stat()
	if err != nil {
		return false
	}
	there, err := os.Lstat(l.Path())
	return err == nil && os.SameFile(own, there)
}

// release removes the file of the lock, which one who waits for it will notice,
// and gives it back. Where an open file cannot be removed it stays, and is used
// again.
func release(l *flock.Flock) {
	if held(l) {
		os.Remove(l.Path())
	}
	l.Close()
}
