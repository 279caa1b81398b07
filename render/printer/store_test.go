package printer

import (
	"bytes"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/gofrs/flock"
)

// storeIn returns a store in a new directory.
func storeIn(t *testing.T) Store {
	t.Helper()
	return In(t.TempDir())
}

func bench() Record { return Record{Across: 149.2, Along: 200.9, Diagonals: [2]float64{250.4, 250}} }

func put(t *testing.T, s Store, name string, r Record) {
	t.Helper()
	if _, _, err := s.Put(name, r); err != nil {
		t.Fatal(err)
	}
}

// holds wants the store to know just these printers, and to leave nothing but
// its file.
func holds(t *testing.T, s Store, want ...string) {
	t.Helper()
	records, err := s.Records()
	if err != nil {
		t.Fatal(err)
	}
	if got := Names(records); strings.Join(got, " ") != strings.Join(want, " ") {
		t.Errorf("printers %v, want %v", got, want)
	}
	left, err := filepath.Glob(s.path + "?*")
	if err != nil || len(left) > 0 {
		t.Errorf("left behind: %v, %v", left, err)
	}
}

func TestPutFindForget(t *testing.T) {
	s := storeIn(t)
	holds(t, s)
	if _, err := os.Stat(filepath.Dir(s.path)); err == nil {
		t.Error("reading made a directory")
	}
	put(t, s, "bench", bench())
	office := Record{Unit: 1, Across: 6.03 * 25.4, Along: 7.97 * 25.4}
	put(t, s, "office_2", office)
	holds(t, s, "bench", "office_2")
	if got, err := s.Find("bench"); err != nil || got != bench() {
		t.Errorf("bench is %+v, %v; want %+v", got, err, bench())
	}
	better := Record{Across: 149.3, Along: 200.8}
	if old, replaced, err := s.Put("bench", better); err != nil || !replaced || old != bench() {
		t.Errorf("replaced %+v, %v, %v; want %+v", old, replaced, err, bench())
	}
	if got, err := s.Find("bench"); err != nil || got != better {
		t.Errorf("bench is %+v, %v; want %+v", got, err, better)
	}
	var unknown *UnknownError
	if _, err := s.Find("bnch"); !errors.As(err, &unknown) || strings.Join(unknown.Known, " ") != "bench office_2" {
		t.Errorf("bnch: %v, want an UnknownError with both names", err)
	}
	if err := s.Forget("bnch"); !errors.As(err, &unknown) {
		t.Errorf("forget bnch: %v, want an UnknownError", err)
	}
	if err := s.Forget("bench"); err != nil {
		t.Error(err)
	}
	holds(t, s, "office_2")
}

func TestNothingBadIsKept(t *testing.T) {
	s := storeIn(t)
	for _, name := range []string{"", "a b", "ä", "a.b", "a/b", "-a", "none", strings.Repeat("a", 41), "a\n"} {
		var bad *NameError
		if _, _, err := s.Put(name, bench()); !errors.As(err, &bad) {
			t.Errorf("name %q: %v, want a NameError", name, err)
		}
	}
	if _, _, err := s.Put("bench", Record{Across: 100, Along: 200}); err == nil {
		t.Error("a printer at 67 % is kept")
	}
	if _, err := os.Stat(s.path); err == nil {
		t.Error("a file was made")
	}
	put(t, s, strings.Repeat("a", 40), bench())
	// Six decimals are kept, and it is what is kept that must be within limits.
	put(t, s, "limit", Record{Across: 150, Along: 206.0000004})
	if got, err := s.Find("limit"); err != nil || got.Along != 206 {
		t.Errorf("at the limit: %+v, %v", got, err)
	}
}

// TestBadFiles wants a file that is not wholly understood to be refused in
// words, for reading and for writing, and left as it is.
func TestBadFiles(t *testing.T) {
	good := string(encode(map[string]Record{"bench": bench()}))
	in := func(old, now string) string {
		if !strings.Contains(good, old) {
			t.Fatalf("no %q in %q", old, good)
		}
		return strings.Replace(good, old, now, 1)
	}
	for _, c := range []struct{ name, data, want string }{
		{"empty", "", "names no version"},
		{"foreign", "[server]\nport = 80\n", "names no version"},
		{"no TOML", "<xml/>\n", "cannot be read at line 1"},
		{"zeros", strings.Repeat("\x00", 300), "cannot be read"},
		{"newer", in("version = 1", "version = 2\nshape = \"new\""), "is of version 2, from a newer rodsheet; this one knows version 1"},
		{"version in words", in("version = 1", `version = "1"`), "cannot be read"},
		{"version 0", in("version = 1", "version = 0"), "is of version 0"},
		{"unknown key", in("across", "acros"), `holds an unknown key, "printers.bench.acros", on line 9`},
		{"missing key", in("across = 149.2\n", ""), "across or along is missing"},
		{"twice", in("across = 149.2\n", "across = 149.2\nacross = 149.2\n"), "cannot be read at line 10"},
		{"unit", in(`"mm"`, `"ell"`), `unit "ell" is not a unit`},
		{"no unit", in("unit = \"mm\"\n", ""), `unit "" is not a unit`},
		{"absurd", in("149.2", "14.92"), "across 14.92 mm must be at least"},
		{"not a number", in("149.2", "nan"), "across must be a finite number"},
		{"three diagonals", in("250.4, ", "250.4, 250.2, "), "3 diagonals, not 2"},
		{"name", in("printers.bench", `printers."a b"`), `"a b" cannot name a printer`},
		{"no end", strings.TrimSuffix(good, ending+"\n"), "is cut short"},
		{"huge", good + strings.Repeat("#\n", 1<<19) + ending, "is over 1 MB"},
	} {
		s := storeIn(t)
		write(t, s, c.data)
		_, readErr := s.Records()
		_, _, putErr := s.Put("other", bench())
		for _, err := range []error{readErr, putErr, s.Forget("bench")} {
			var bad *FileError
			if !errors.As(err, &bad) || !strings.HasPrefix(err.Error(), s.path+" ") || !strings.Contains(err.Error(), c.want) {
				t.Errorf("%s: %v; want a FileError with %q", c.name, err, c.want)
			}
		}
		if got, err := os.ReadFile(s.path); err != nil || string(got) != c.data {
			t.Errorf("%s: the file was changed: %v", c.name, err)
		}
		if left, _ := filepath.Glob(s.path + "?*"); len(left) > 0 {
			t.Errorf("%s: left behind: %v", c.name, left)
		}
	}
}

func write(t *testing.T, s Store, data string) {
	t.Helper()
	if err := os.MkdirAll(filepath.Dir(s.path), 0o755); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(s.path, []byte(data), 0o644); err != nil {
		t.Fatal(err)
	}
}

// Wherever a file is cut, it is noticed, but for its last line end.
func TestEveryCutIsNoticed(t *testing.T) {
	records := map[string]Record{"a": bench(), "b": {Across: 150, Along: 200}, "c": bench()}
	whole := encode(records)
	for n := range len(whole) - 1 {
		if got, err := decode(whole[:n]); err == nil {
			t.Fatalf("cut after %d bytes, %q, it reads as %v", n, whole[max(0, n-20):n], got)
		}
	}
	if got, err := decode(whole); err != nil || fmt.Sprint(got) != fmt.Sprint(records) {
		t.Errorf("whole, it reads as %v, %v; want %v", got, err, records)
	}
	if got, err := decode(append([]byte("\ufeff"), whole...)); err != nil || fmt.Sprint(got) != fmt.Sprint(records) {
		t.Errorf("behind a byte order mark it reads as %v, %v; want %v", got, err, records)
	}
}

func TestUnreadable(t *testing.T) {
	s := storeIn(t)
	if err := os.MkdirAll(s.path, 0o755); err != nil {
		t.Fatal(err)
	}
	var bad *FileError
	if _, err := s.Records(); !errors.As(err, &bad) || !strings.Contains(err.Error(), "is no regular file") {
		t.Errorf("a directory: %v", err)
	}
	if os.Getuid() == 0 {
		t.Skip("root may read everything")
	}
	s = storeIn(t)
	put(t, s, "bench", bench())
	if err := os.Chmod(s.path, 0); err != nil {
		t.Fatal(err)
	}
	if _, err := s.Records(); !errors.As(err, &bad) || !strings.Contains(err.Error(), "cannot be opened: permission denied") {
		t.Errorf("without permission: %v", err)
	}
}

func TestLinkAndModeStay(t *testing.T) {
	s, dir := storeIn(t), t.TempDir()
	put(t, s, "bench", bench())
	real := filepath.Join(dir, "real.toml")
	if err := errors.Join(os.Rename(s.path, real), os.Chmod(real, 0o600), os.Symlink(real, s.path)); err != nil {
		t.Fatal(err)
	}
	put(t, s, "office", bench())
	holds(t, s, "bench", "office")
	info, err := os.Lstat(real)
	if err != nil || info.Mode() != 0o600 {
		t.Errorf("mode %v, %v; want a plain file of mode 600", info.Mode(), err)
	}
	if link, err := os.Lstat(s.path); err != nil || link.Mode().Type() != os.ModeSymlink {
		t.Errorf("the link is gone: %v", err)
	}
}

func TestManyGoroutinesLoseNothing(t *testing.T) {
	s := storeIn(t)
	var names []string
	var all sync.WaitGroup
	for i := range 40 {
		name := fmt.Sprintf("p%02d", i)
		names = append(names, name)
		all.Go(func() {
			if _, _, err := s.Put(name, bench()); err != nil {
				t.Error(err)
			}
		})
	}
	all.Wait()
	holds(t, s, names...)
}

// writerVariable makes TestWriter, in a process of its own, put printers into
// the store of that directory.
const writerVariable = "PRINTER_TEST_WRITER"

func TestWriter(t *testing.T) {
	dir, name, ok := strings.Cut(os.Getenv(writerVariable), "|")
	if !ok {
		t.Skip("runs for TestManyProcessesLoseNothing only")
	}
	for i := range 10 {
		put(t, In(dir), fmt.Sprintf("%s%d", name, i), bench())
	}
}

func TestManyProcessesLoseNothing(t *testing.T) {
	dir := t.TempDir()
	var want []string
	var all sync.WaitGroup
	for _, name := range []string{"a", "b", "c", "d"} {
		for i := range 10 {
			want = append(want, fmt.Sprintf("%s%d", name, i))
		}
		all.Go(func() {
			c := exec.Command(os.Args[0], "-test.run=^TestWriter$")
			c.Env = append(os.Environ(), writerVariable+"="+dir+"|"+name)
			if out, err := c.CombinedOutput(); err != nil || bytes.Contains(out, []byte("SKIP")) {
				t.Errorf("writer %s: %v\n%s", name, err, out)
			}
		})
	}
	all.Wait()
	holds(t, In(dir), want...)
}

// A lock in use is waited for and left alone; the files of locks that a crash
// left behind, of this program or an older one, stop nothing and are cleared.
func TestLock(t *testing.T) {
	s := storeIn(t)
	put(t, s, "bench", bench())
	other := flock.New(s.path + ".lock")
	if ok, err := other.TryLock(); !ok || err != nil {
		t.Fatal(ok, err)
	}
	s.patience = 20 * time.Millisecond
	var bad *FileError
	if _, _, err := s.Put("office", bench()); !errors.As(err, &bad) || !strings.Contains(err.Error(), "another rodsheet") {
		t.Errorf("a lock in use: %v", err)
	}
	if !held(other) {
		t.Error("the lock of another was touched")
	}
	if err := other.Close(); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(s.path+".lock", []byte("half a fi"), 0o644); err != nil {
		t.Fatal(err)
	}
	put(t, s, "office", bench())
	holds(t, s, "bench", "office")
	if err := os.WriteFile(s.path+".lock.clear", nil, 0o644); err != nil {
		t.Fatal(err)
	}
	put(t, s, "home", bench())
}

// A link to nothing is said, read or written, and stays.
func TestDanglingLink(t *testing.T) {
	s := storeIn(t)
	if err := errors.Join(os.MkdirAll(filepath.Dir(s.path), 0o755), os.Symlink("nothing", s.path)); err != nil {
		t.Fatal(err)
	}
	_, readErr := s.Records()
	_, _, putErr := s.Put("bench", bench())
	for _, err := range []error{readErr, putErr} {
		var bad *FileError
		if !errors.As(err, &bad) || err.Error() != s.path+" is a link to nothing" {
			t.Errorf("%v, want a FileError of a link to nothing", err)
		}
	}
	if link, err := os.Readlink(s.path); err != nil || link != "nothing" {
		t.Errorf("the link is %q, %v", link, err)
	}
}

// A process that slept with its lock, so that another cleared it and wrote,
// loses nothing of either.
func TestLostLock(t *testing.T) {
	s := storeIn(t)
	tries := 0
	err := s.update(func(records map[string]Record) error {
		if tries++; tries == 1 {
			if err := os.Remove(s.path + ".lock"); err != nil {
				return err
			}
			put(t, s, "faster", bench())
		}
		records["slower"] = bench()
		return nil
	})
	if err != nil || tries != 2 {
		t.Errorf("%d tries, %v; want 2", tries, err)
	}
	holds(t, s, "faster", "slower")
}

// What another process has half written under its lock is not published by
// one that woke up without its own.
func TestLockOfAnother(t *testing.T) {
	s := storeIn(t)
	tries := 0
	err := s.update(func(records map[string]Record) error {
		if tries++; tries == 1 {
			lock := s.path + ".lock"
			if err := errors.Join(os.Remove(lock), os.WriteFile(lock, []byte("half a fi"), 0o644)); err != nil {
				return err
			}
			time.AfterFunc(50*time.Millisecond, func() { os.Remove(lock) })
		}
		records["slower"] = bench()
		return nil
	})
	if err != nil || tries != 2 {
		t.Errorf("%d tries, %v; want 2", tries, err)
	}
	holds(t, s, "slower")
}

// FuzzDecode wants every file to be refused or to come back the same when it
// is written again.
func FuzzDecode(f *testing.F) {
	f.Add(encode(nil))
	f.Add(encode(map[string]Record{"a": bench(), "b": {Unit: 1, Across: 152.4, Along: 203.2}}))
	f.Add([]byte("version = 1\n[printers]\n" + ending))
	f.Fuzz(func(t *testing.T, data []byte) {
		records, err := decode(data)
		if err != nil {
			return
		}
		once := encode(records)
		again, err := decode(once)
		if err != nil {
			t.Fatalf("%q is written as %q: %v", data, once, err)
		}
		if twice := encode(again); !bytes.Equal(once, twice) {
			t.Errorf("%q, then %q", once, twice)
		}
	})
}
