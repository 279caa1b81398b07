package main

import (
	"context"
	"errors"
	"io"
	"os"
	"slices"
	"strings"
	"testing"
)

// text is a file of plain text.
func text(name, content string) file {
	return file{name, func(w io.Writer) error {
		_, err := io.WriteString(w, content)
		return err
	}}
}

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

func TestSave(t *testing.T) {
	t.Chdir(t.TempDir())
	put(t, "a", "a longer old text")
	put(t, ".rodsheet-lost.tmp", "not ours")
	if err := save(t.Context(), []file{text("a", "new"), text("b", "other")}); err != nil {
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
			last := file{"b", func(w io.Writer) error { return test.write(w, cancel) }}
			err := save(ctx, []file{text("a", "new"), last})
			if !errors.Is(err, interrupted{}) {
				t.Errorf("error %v, want %v", err, interrupted{})
			}
			if got, want := standing(t), []string{"a=old"}; !slices.Equal(got, want) {
				t.Errorf("files %q, want %q", got, want)
			}
		})
	}
}

// TestInterruptedRun cancels before anything is written, to a file and to
// standard output.
func TestInterruptedRun(t *testing.T) {
	t.Chdir(t.TempDir())
	ctx, cancel := context.WithCancel(t.Context())
	cancel()
	for _, out := range []string{"-", "a.pdf", "a.svg"} {
		status, stdout, stderr := start(ctx, "scale", "-o", out)
		if want := "rodsheet: interrupted; nothing written\n"; status != 1 || stdout != "" || stderr != want {
			t.Errorf("-o %s: status %d, %q, %q; want 1, none, %q", out, status, stdout, stderr, want)
		}
	}
	if got := standing(t); len(got) != 0 {
		t.Errorf("files %q, want none", got)
	}
}

// TestFailedSave fails and panics while writing, and wants the directory as
// it was.
func TestFailedSave(t *testing.T) {
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
				return save(t.Context(), []file{text("a", "new"), {"b", write}})
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
	blocker := file{"b", func(w io.Writer) error { return os.Mkdir("b", 0o755) }}
	err := save(t.Context(), []file{text("a", "new"), blocker})
	if err == nil || !strings.HasPrefix(err.Error(), "cannot write b: ") || !strings.HasSuffix(err.Error(), "; new until then: a") {
		t.Errorf("error %v, want one that names b and says that a is new", err)
	}
	if got, want := standing(t), []string{"a=new", "b="}; !slices.Equal(got, want) {
		t.Errorf("files %q, want %q", got, want)
	}
}
