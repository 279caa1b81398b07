package main

import (
	"bytes"
	"context"
	"io"
	"os"
	"runtime/debug"
	"strings"
	"syscall"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"
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
	status = run(ctx, args, func(string) string { return "" }, &out, &errs)
	return status, out.String(), errs.String()
}

func TestPanicIsOneLine(t *testing.T) {
	var errs bytes.Buffer
	broken := func(string) string { panic("two\nlines") }
	status := run(t.Context(), []string{"scale", "-o", "-"}, broken, io.Discard, &errs)
	if got, want := errs.String(), "rodsheet: internal error: two?lines\n"; status != 1 || got != want {
		t.Errorf("status %d, %q; want 1, %q", status, got, want)
	}
}

// TestBrokenOutput wants every command that prints to notice that it cannot.
func TestBrokenOutput(t *testing.T) {
	t.Chdir(t.TempDir())
	for _, line := range []string{"help", "help lap", "help json", "lap --help", "--version", "scale", "scale --json", "scale -o -"} {
		var errs bytes.Buffer
		status := run(t.Context(), strings.Fields(line), func(string) string { return "" }, full{}, &errs)
		want := "rodsheet: cannot write standard output: no space left on device\n"
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

func TestVersion(t *testing.T) {
	for _, test := range []struct {
		info *debug.BuildInfo
		ok   bool
		want string
	}{
		{nil, false, "(version unknown)"},
		{&debug.BuildInfo{}, true, "(version unknown)"},
		{&debug.BuildInfo{Main: debug.Module{Version: "v1.2.3"}}, true, "v1.2.3"},
	} {
		if got := version(test.info, test.ok); got != test.want {
			t.Errorf("version(%v, %v) = %q, want %q", test.info, test.ok, got, test.want)
		}
	}
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
		p, err := os.StartProcess(program, []string{"rodsheet", "angle", "14.5"}, &os.ProcAttr{})
		if err != nil {
			b.Fatal(err)
		}
		if state, err := p.Wait(); err != nil || !state.Success() {
			b.Fatal(state, err)
		}
	}
}

// linkSelf names this test program rodsheet, under which it is the command.
func linkSelf(b *testing.B) string {
	self, err := os.Executable()
	if err != nil {
		b.Fatal(err)
	}
	if err := os.Symlink(self, "rodsheet"); err != nil {
		b.Fatal(err)
	}
	return "./rodsheet"
}
