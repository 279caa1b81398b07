package readback

import (
	"os"
	"os/exec"
	"testing"
)

// require is the value of RODSHEET_READERS under which a missing reader is a
// failure and not a test left out.
const require = "require"

// Tool returns the path of an outside program that reads written files. Where it is
// not installed the test ends as Missing says.
func Tool(t testing.TB, name string) string {
	t.Helper()
	path, err := exec.LookPath(name)
	if err != nil {
		Missing(t, name)
	}
	return path
}

// Missing ends a test whose reader is not there: it is skipped, or fails where the
// environment has RODSHEET_READERS=require.
func Missing(t testing.TB, name string) {
	t.Helper()
	if os.Getenv("RODSHEET_READERS") == require {
		t.Fatalf("%s is not installed and RODSHEET_READERS=%s", name, require)
	}
	t.Skipf("%s is not installed: its reading of the file is not compared", name)
}

// Run runs an outside reader on data, put in a file with the given name, and
// returns what it prints. args holds "FILE" where the path belongs. A reader
// that fails or warns by its exit status fails the test.
func Run(t testing.TB, data []byte, name, tool string, args ...string) string {
	t.Helper()
	program := Tool(t, tool)
	file := t.TempDir() + "/" + name
	if err := os.WriteFile(file, data, 0o600); err != nil {
		t.Fatal(err)
	}
	args = append([]string(nil), args...)
	for i, a := range args {
		if a == "FILE" {
			args[i] = file
		}
	}
	out, err := exec.Command(program, args...).CombinedOutput()
	if err != nil {
		t.Fatalf("%s %v: %v\n%s", tool, args, err, out)
	}
	return string(out)
}
