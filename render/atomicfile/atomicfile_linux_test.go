package atomicfile

import (
	"os"
	"runtime"
	"slices"
	"syscall"
	"testing"
)

// TestUnwritable saves where the user may not write. Root may write anywhere,
// so that a thread of its own takes the rights of a user without any.
func TestUnwritable(t *testing.T) {
	t.Chdir(t.TempDir())
	put(t, "locked.pdf", "old")
	for _, err := range []error{
		os.Chmod("locked.pdf", 0o444),
		os.Mkdir("locked", 0o555),
		os.Chmod(".", 0o777),
	} {
		if err != nil {
			t.Fatal(err)
		}
	}
	before := standing(t)
	for name, want := range map[string]string{
		"locked.pdf":   "cannot write locked.pdf: permission denied",
		"locked/a.pdf": "cannot write locked/a.pdf: permission denied",
	} {
		if err := unprivileged(func() error { return Write(t.Context(), text(name, "new")) }); err == nil || err.Error() != want {
			t.Errorf("%s: error %v, want %s", name, err, want)
		}
	}
	if got := standing(t); !slices.Equal(got, before) {
		t.Errorf("files %q, want %q", got, before)
	}
	if err := unprivileged(func() error { return Write(t.Context(), text("free.pdf", "new")) }); err != nil {
		t.Error(err)
	}
}

// unprivileged calls f on a thread without rights of its own, which ends with
// it.
func unprivileged(f func() error) error {
	done := make(chan error)
	go func() {
		runtime.LockOSThread()
		if os.Geteuid() == 0 {
			syscall.Setfsuid(65534)
		}
		done <- f()
	}()
	return <-done
}
