package atomicfile

import (
	"context"
	"errors"
	"io"
	"io/fs"
	"os"
	"slices"
	"strings"
	"sync"
	"sync/atomic"
	"testing"
	"time"
)

// text is a file of plain text.
func text(name, content string) File { return File{Name: name, Write: Text([]byte(content))} }

// standing returns the directory as "name=content" lines.
func standing(t *testing.T) []string {
	t.Helper()
	entries, err := os.ReadDir(".")
	if err != nil {
		t.Fatal(err)
	}
	var out []string
	for _, e := range entries {
		data, _ := os.ReadFile(e.Name())
		out = append(out, e.Name()+"="+string(data))
	}
	return out
}

func put(t *testing.T, name, content string) {
	t.Helper()
	if err := os.WriteFile(name, []byte(content), 0o644); err != nil {
		t.Fatal(err)
	}
}

func TestWrite(t *testing.T) {
	t.Chdir(t.TempDir())
	put(t, "a", "a longer old text")
	put(t, ".rodsheet-lost.tmp", "not ours")
	if err := Write(t.Context(), text("a", "new"), text("b", "other")); err != nil {
		t.Fatal(err)
	}
	want := []string{".rodsheet-lost.tmp=not ours", "a=new", "b=other"}
	if got := standing(t); !slices.Equal(got, want) {
		t.Errorf("got %q, want %q", got, want)
	}
}

// TestInterrupted cancels at every moment of writing two files and wants the
// directory as it was.
func TestInterrupted(t *testing.T) {
	for _, test := range []struct {
		name  string
		write func(w io.Writer, cancel func()) error
	}{
		{"before the first byte", func(w io.Writer, cancel func()) error {
			cancel()
			_, err := io.WriteString(w, "new")
			return err
		}},
		{"between two writes", func(w io.Writer, cancel func()) error {
			if _, err := io.WriteString(w, "ne"); err != nil {
				return err
			}
			cancel()
			_, err := io.WriteString(w, "w")
			return err
		}},
		{"after the last byte", func(w io.Writer, cancel func()) error {
			_, err := io.WriteString(w, "new")
			cancel()
			return err
		}},
	} {
		t.Run(test.name, func(t *testing.T) {
			t.Chdir(t.TempDir())
			put(t, "a", "old")
			ctx, cancel := context.WithCancel(t.Context())
			last := File{Name: "b", Write: func(w io.Writer) error { return test.write(w, cancel) }}
			err := Write(ctx, text("a", "new"), last)
			if !errors.Is(err, context.Canceled) {
				t.Errorf("error %v, want %v", err, context.Canceled)
			}
			if got, want := standing(t), []string{"a=old"}; !slices.Equal(got, want) {
				t.Errorf("files %q, want %q", got, want)
			}
		})
	}
}

// TestFailedWrite fails and panics while writing, and wants the directory as
// it was.
func TestFailedWrite(t *testing.T) {
	for name, write := range map[string]func(io.Writer) error{
		"error": func(w io.Writer) error {
			io.WriteString(w, "ne")
			return errors.New("out of ink")
		},
		"panic": func(w io.Writer) error {
			io.WriteString(w, "ne")
			panic("out of ink")
		},
	} {
		t.Run(name, func(t *testing.T) {
			t.Chdir(t.TempDir())
			put(t, "a", "old")
			err := func() (err error) {
				defer func() {
					if p := recover(); p != nil {
						err = errors.New("cannot write b: panic")
					}
				}()
				return Write(t.Context(), text("a", "new"), File{Name: "b", Write: write})
			}()
			if err == nil || !strings.HasPrefix(err.Error(), "cannot write b: ") {
				t.Errorf("error %v, want one that names b", err)
			}
			if got, want := standing(t), []string{"a=old"}; !slices.Equal(got, want) {
				t.Errorf("files %q, want %q", got, want)
			}
		})
	}
}

// TestHalfRenamed makes the second renaming fail.
func TestHalfRenamed(t *testing.T) {
	t.Chdir(t.TempDir())
	blocker := File{Name: "b", Write: func(w io.Writer) error { return os.Mkdir("b", 0o755) }}
	err := Write(t.Context(), text("a", "new"), blocker)
	var failed *Error
	if !errors.As(err, &failed) || failed.Name != "b" || failed.Done != 1 || !strings.HasPrefix(err.Error(), "cannot write b: ") {
		t.Errorf("error %v, want one that names b and says that one is new", err)
	}
	if got, want := standing(t), []string{"a=new", "b="}; !slices.Equal(got, want) {
		t.Errorf("files %q, want %q", got, want)
	}
}

// TestNew wants a file only where none is, nor a link to nothing, and whole even
// where two ask for it at the same moment.
func TestNew(t *testing.T) {
	t.Chdir(t.TempDir())
	fresh := func(name, content string) error {
		f := text(name, content)
		f.New = true
		return Write(t.Context(), f)
	}
	put(t, "taken", "old")
	if err := os.Symlink("nothing", "dangling"); err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{"taken", "dangling"} {
		if err := fresh(name, "new"); !errors.Is(err, fs.ErrExist) {
			t.Errorf("%s: %v, want %v", name, err, fs.ErrExist)
		}
	}
	if err := fresh("taken/b", "new"); err == nil || errors.Is(err, fs.ErrExist) || err.Error() != "cannot write taken/b: not a directory" {
		t.Errorf("below a file: %v", err)
	}
	os.Remove("dangling")
	var all sync.WaitGroup
	var won atomic.Int32
	for range 20 {
		all.Go(func() {
			if fresh("race", "whole") == nil {
				won.Add(1)
			}
		})
	}
	all.Wait()
	if got, want := standing(t), []string{"race=whole", "taken=old"}; won.Load() != 1 || !slices.Equal(got, want) {
		t.Errorf("%d made it; files %q, want 1 and %q", won.Load(), got, want)
	}
	failing := File{Name: "half", New: true, Write: func(w io.Writer) error {
		io.WriteString(w, "ne")
		return errors.New("out of ink")
	}}
	if err := Write(t.Context(), failing); err == nil {
		t.Error("a failure of writing is lost")
	}
	if _, err := os.Lstat("half"); err == nil {
		t.Error("half a new file stands")
	}
}

// TestSweep wants the drafts of killed runs gone after a day, and nothing else.
func TestSweep(t *testing.T) {
	t.Chdir(t.TempDir())
	kept := []string{".rodsheet-12-x.tmp", ".rodsheet-lost.tmp", "rodsheet-1-0.tmp", ".rodsheet-12-3.tmp.pdf", ".rodsheet-8-0.tmp"}
	for _, name := range append(kept, ".rodsheet-7-0.tmp", ".rodsheet-123456-12.tmp") {
		put(t, name, "")
		age := 25 * time.Hour
		if name == ".rodsheet-8-0.tmp" {
			age = 23 * time.Hour
		}
		if err := os.Chtimes(name, time.Time{}, time.Now().Add(-age)); err != nil {
			t.Fatal(err)
		}
	}
	if err := Write(t.Context(), text("a", "new")); err != nil {
		t.Fatal(err)
	}
	want := []string{"a=new"}
	for _, name := range kept {
		want = append(want, name+"=")
	}
	slices.Sort(want)
	if got := standing(t); !slices.Equal(got, want) {
		t.Errorf("files %q, want %q", got, want)
	}
}
