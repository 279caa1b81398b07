package main

import (
	"bytes"
	"context"
	"io"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"

	"github.com/rogpeppe/go-internal/testscript"
	"pgregory.net/rapid"
)

func TestMain(m *testing.M) {
	testscript.Main(sandbox{m}, map[string]func(){"rodsheet": main})
}

// A sandbox keeps the tests away from the printers of the user. It comes into
// play only where tests are run, not where a test program is the command.
type sandbox struct{ *testing.M }

func (s sandbox) Run() int {
	dir, err := os.MkdirTemp("", "rodsheet")
	if err != nil {
		panic(err)
	}
	defer os.RemoveAll(dir)
	os.Setenv("XDG_CONFIG_HOME", dir)
	return s.M.Run()
}

func TestScripts(t *testing.T) {
	t.Parallel()
	testscript.Run(t, testscript.Params{
		Dir:                 "testdata",
		RequireExplicitExec: true,
		Cmds: map[string]func(*testscript.TestScript, bool, []string){
			"refused": func(ts *testscript.TestScript, neg bool, args []string) { fails(ts, 2, args) },
			"broken":  func(ts *testscript.TestScript, neg bool, args []string) { fails(ts, 1, args) },
			"files":   files,
			"mode":    mode,
		},
	})
}

// fails runs rodsheet and wants the exit status, nothing on standard output,
// and no line on standard error that is not a message or its hint.
func fails(ts *testscript.TestScript, want int, args []string) {
	var status int
	err := ts.Exec("rodsheet", args...)
	if exit, ok := err.(interface{ ExitCode() int }); ok {
		status = exit.ExitCode()
	}
	if status != want {
		ts.Fatalf("rodsheet %q: exit status %d, want %d", args, status, want)
	}
	if out := ts.ReadFile("stdout"); out != "" {
		ts.Fatalf("rodsheet %q: standard output %q, want none", args, out)
	}
	lines := strings.Split(strings.TrimSuffix(ts.ReadFile("stderr"), "\n"), "\n")
	for i, l := range lines {
		if message := strings.HasPrefix(l, "rodsheet: "); !message && (i == 0 || !strings.HasPrefix(l, "  hint: ")) {
			ts.Fatalf("rodsheet %q: line %q is neither message nor hint", args, l)
		}
		if len([]rune(l)) > 240 {
			ts.Fatalf("rodsheet %q: line of %d characters", args, len([]rune(l)))
		}
	}
}

// files wants the directory to hold just the files named.
func files(ts *testscript.TestScript, neg bool, args []string) {
	entries, err := os.ReadDir(ts.MkAbs(args[0]))
	ts.Check(err)
	var got []string
	for _, e := range entries {
		got = append(got, e.Name())
	}
	if want := args[1:]; strings.Join(got, " ") != strings.Join(want, " ") {
		ts.Fatalf("files %v, want %v", got, want)
	}
}

// mode wants a file to have the permissions given.
func mode(ts *testscript.TestScript, neg bool, args []string) {
	info, err := os.Stat(ts.MkAbs(args[1]))
	ts.Check(err)
	if got := info.Mode().Perm().String(); got != args[0] {
		ts.Fatalf("%s: mode %s, want %s", args[1], got, args[0])
	}
}

// start runs one command line in-process, without an environment.
func start(ctx context.Context, args ...string) (status int, stdout, stderr string) {
	var out, errs bytes.Buffer
	status = world{getenv: func(string) string { return "" }, read: readSome, stdout: &out, stderr: &errs}.run(ctx, args)
	return status, out.String(), errs.String()
}

// TestInterruptedRun cancels before anything is written, to a file and to
// standard output.
func TestInterruptedRun(t *testing.T) {
	t.Parallel()
	dir := t.TempDir()
	ctx, cancel := context.WithCancel(t.Context())
	cancel()
	for _, out := range []string{"-", filepath.Join(dir, "a.pdf"), filepath.Join(dir, "a.svg")} {
		status, stdout, stderr := start(ctx, "scale", "-o", out)
		if want := "rodsheet: interrupted; nothing written\n"; status != 1 || stdout != "" || stderr != want {
			t.Errorf("-o %s: status %d, %q, %q; want 1, none, %q", out, status, stdout, stderr, want)
		}
	}
	if entries, err := os.ReadDir(dir); err != nil || len(entries) != 0 {
		t.Errorf("files %v, want none", entries)
	}
}

// Who writes a file has its end asked for; a command that only prints is ended.
func TestStops(t *testing.T) {
	t.Parallel()
	for line, want := range map[string]bool{"check " + anExample: false, "completion bash": false, "scale -o -": true, "buying -o - " + anExample: true} {
		asked := false
		w := world{getenv: func(string) string { return "" }, read: readSome, stdout: io.Discard, stderr: io.Discard, stops: func(ctx context.Context) context.Context {
			asked = true
			return ctx
		}}
		if status := w.run(t.Context(), strings.Fields(line)); status != 0 || asked != want {
			t.Errorf("%s: status %d, %v, want %v", line, status, asked, want)
		}
	}
}

// TestInterruptedPlanning cancels while a job is laid out that takes long, and
// wants an end long before that is done.
func TestInterruptedPlanning(t *testing.T) {
	t.Parallel()
	ctx, cancel := context.WithTimeout(t.Context(), 20*time.Millisecond)
	defer cancel()
	begun := time.Now()
	status, _, stderr := start(ctx, "top", "--length", "9000", "--width", "9000", "--round", "900", "--max-sheets", "5000", "-o", "-")
	if took := time.Since(begun); status != 1 || stderr != "rodsheet: interrupted; nothing written\n" || took > time.Second {
		t.Errorf("status %d after %v, %q", status, took, stderr)
	}
}

// TestCrash wants a panic, wherever it happens, to be one line on the terminal
// that names a file with all that is known of it.
func TestCrash(t *testing.T) {
	broken := func(string) string { panic("two\nlines") }
	for name, do := range map[string]func(stderr io.Writer) int{
		"of a command": func(stderr io.Writer) int {
			return world{getenv: broken, stdout: io.Discard, stderr: stderr}.run(t.Context(), []string{"scale", "-o", "-"})
		},
		"of what is waited for": func(stderr io.Writer) int {
			_, err := awaited(t.Context(), func() (string, error) { return broken(""), nil })
			return report(stderr, err)
		},
	} {
		t.Setenv("TMPDIR", t.TempDir())
		var errs bytes.Buffer
		status := do(&errs)
		file, ok := strings.CutPrefix(errs.String(), "rodsheet: internal error: two; a report is in ")
		text, err := os.ReadFile(strings.TrimSuffix(file, "\n"))
		if status != 1 || !ok || err != nil {
			t.Errorf("%s: status %d, %q, %v", name, status, errs.String(), err)
		}
		for _, want := range []string{"two\nlines", "main_test.go:", "rodsheet "} {
			if !strings.Contains(string(text), want) {
				t.Errorf("%s: the report lacks %q:\n%s", name, want, text)
			}
		}
		t.Setenv("TMPDIR", filepath.Join(t.TempDir(), "nowhere"))
		errs.Reset()
		if do(&errs); errs.String() != "rodsheet: internal error: two; no report could be written\n" {
			t.Errorf("%s, without a place for files: %q", name, errs.String())
		}
	}
}

// TestBrokenOutput wants every command that prints to notice that it cannot.
func TestBrokenOutput(t *testing.T) {
	t.Chdir(t.TempDir())
	for _, line := range []string{"help", "help lap", "help json", "lap --help", "--version", "scale", "scale --json", "scale -o -"} {
		var errs bytes.Buffer
		status := world{getenv: func(string) string { return "" }, read: readSome, stdout: full{}, stderr: &errs}.run(t.Context(), strings.Fields(line))
		want := "rodsheet: cannot write standard output: no space left on device\n"
		if line == "scale" || line == "scale --json" {
			want = "rodsheet: cannot write standard output: no space left on device; scale.pdf written all the same\n"
		}
		if status != 1 || errs.String() != want {
			t.Errorf("%s: status %d, %q; want 1, %q", line, status, errs.String(), want)
		}
	}
}

// full is a writer on a full disk.
type full struct{}

func (full) Write([]byte) (int, error) {
	return 0, &os.PathError{Op: "write", Path: "stdout", Err: syscall.ENOSPC}
}

// BenchmarkAngle times a command line from its words to a PDF in memory.
func BenchmarkAngle(b *testing.B) {
	for b.Loop() {
		if status, _, errs := start(b.Context(), "angle", "14.5", "-o", "-"); status != 0 {
			b.Fatal(errs)
		}
	}
}

// BenchmarkProcess times the same from the start of a process to a file.
func BenchmarkProcess(b *testing.B) {
	b.Chdir(b.TempDir())
	program := linkSelf(b)
	for b.Loop() {
		p := must(os.StartProcess(program, []string{"rodsheet", "angle", "14.5"}, &os.ProcAttr{}))(b)
		if state, err := p.Wait(); err != nil || !state.Success() {
			b.Fatal(state, err)
		}
	}
}

// linkSelf names this test program rodsheet, under which it is the command.
func linkSelf(b *testing.B) string {
	self := must(os.Executable())(b)
	done(b, os.Symlink(self, "rodsheet"))
	return "./rodsheet"
}

// done wants a call to have succeeded.
func done(t rapid.TB, err error) {
	t.Helper()
	must(struct{}{}, err)(t)
}

// must returns what a call gives that has to succeed.
func must[T any](v T, err error) func(rapid.TB) T {
	return func(t rapid.TB) T {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		return v
	}
}
