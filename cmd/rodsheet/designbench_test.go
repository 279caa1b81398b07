package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"os/exec"
	"runtime/debug"
	"strings"
	"testing"
	"time"

	"rodsheet/geometry/measure"
	"rodsheet/render/page"
	"rodsheet/render/pdf"
	"rodsheet/render/pdf/bare"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/kind"
	"rodsheet/templates/piece/kinds"
)

// anExample is the design over which the commands are timed: two sizes.
const anExample = "../../examples/window-seat.toml"

// BenchmarkDesign times the commands from their words to what they print.
func BenchmarkDesign(b *testing.B) {
	for _, line := range []string{"check", "piece -o -", "picture -o -"} {
		name, flags, _ := strings.Cut(line, " ")
		b.Run(name, func(b *testing.B) { timed(b, append([]string{name, anExample}, strings.Fields(flags)...)) })
	}
}

func timed(b *testing.B, args []string) {
	b.Helper()
	b.ReportAllocs()
	for b.Loop() {
		if status, _, errs := start(b.Context(), args...); status != 0 {
			b.Fatal(errs)
		}
	}
}

// BenchmarkDesignProcess reports the time that a process takes of the machine
// from its start to its end, and how many times that is what a program takes
// that does nothing: the least of all runs, since other work slows it.
func BenchmarkDesignProcess(b *testing.B) {
	data := must(os.ReadFile(anExample))(b)
	dir := b.TempDir()
	build(b, dir+"/rodsheet", ".")
	b.Chdir(dir)
	for name, text := range map[string]string{
		"table.toml": string(data), "empty.go": "package main\n\nfunc main() {}\n",
	} {
		done(b, os.WriteFile(name, []byte(text), 0o600))
	}
	build(b, "empty", "empty.go")
	for _, args := range [][]string{{"--version"}, {"check", "table.toml"}, {"piece", "table.toml"}} {
		b.Run(args[0], func(b *testing.B) {
			least, empty := time.Hour, time.Hour
			for b.Loop() {
				least = min(least, processTime(b, append([]string{"./rodsheet"}, args...)...))
				empty = min(empty, processTime(b, "./empty"))
			}
			b.ReportMetric(least.Seconds()*1000, "least-cpu-ms")
			b.ReportMetric(float64(least)/float64(empty), "of-empty")
		})
	}
}

func build(b *testing.B, program, source string) {
	b.Helper()
	c := exec.Command("go", "build", "-o", program, source)
	c.Env = append(os.Environ(), "CGO_ENABLED=0") // as it is released
	if out, err := c.CombinedOutput(); err != nil {
		b.Fatalf("%v: %s", err, out)
	}
}

func processTime(b *testing.B, words ...string) time.Duration {
	b.Helper()
	c := exec.Command(words[0], words[1:]...)
	if out, err := c.CombinedOutput(); err != nil {
		b.Fatalf("%v: %s", err, out)
	}
	return c.ProcessState.UserTime() + c.ProcessState.SystemTime()
}

// BenchmarkDesignGrows times check and piece over the sides of a ring, and
// over the sizes of a design that differ in splay and height.
func BenchmarkDesignGrows(b *testing.B) {
	b.Chdir(b.TempDir())
	for sides := 3; sides <= 8; sides++ {
		bothTimed(b, fmt.Sprintf("sides-%d", sides), startWith(b, sides, 1))
	}
	for sizes := 1; sizes <= 4; sizes++ {
		bothTimed(b, fmt.Sprintf("sizes-%d", sizes), startWith(b, 3, sizes))
	}
}

func bothTimed(b *testing.B, name, text string) {
	b.Helper()
	done(b, os.WriteFile(name+".toml", []byte(text), 0o600))
	b.Run(name+"/check", func(b *testing.B) { timed(b, []string{"check", name + ".toml"}) })
	b.Run(name+"/piece", func(b *testing.B) { timed(b, []string{"piece", name + ".toml", "-o", "-"}) })
}

// BenchmarkKinds times check and piece of the starting design of every kind, of a seat with
// every number of legs and one with the outline of a shield, and reports how many times as
// long check takes for each of its parts as it takes for one of the ring.
func BenchmarkKinds(b *testing.B) {
	defer debug.SetGCPercent(debug.SetGCPercent(garbage))
	b.Chdir(b.TempDir())
	type start struct {
		of    design.Kind
		sides int
		name  string
	}
	shield := strings.NewReplacer(`shape = "oval"`, `shape = "shield"`, "# back-width", "back-width", "# corner", "corner", "\napart = 200", "\napart = 160")
	perPart := func(s start) (line []string, parts int) {
		text := must(design.Start(s.of, s.sides, measure.Millimetre))(b)
		if s.name == "shield" {
			text = []byte(shield.Replace(string(text)))
		}
		done(b, os.WriteFile(s.name+".toml", text, 0o600))
		file := must(design.Read(text, new(kinds.Sizes).Add))(b)
		work := must(kinds.Solve(file.Sizes))(b)
		return []string{"check", s.name + ".toml"}, len(work.Stand(0).Show(kind.FromAbove).Parts)
	}
	var starts []start
	for i, name := range design.Kinds() {
		of := design.Kind(i)
		fewest, most, sides := of.Sides()
		if of != design.SeatKind {
			starts = append(starts, start{of, sides, name})
			continue
		}
		for n := fewest; n <= most; n++ {
			starts = append(starts, start{of, n, fmt.Sprint(name, n)})
		}
	}
	starts = append(starts, start{design.SeatKind, 4, "shield"})
	ring, ofRing := perPart(starts[design.RingKind])
	for _, s := range starts {
		line, parts := perPart(s)
		b.Run(s.name+"/check", func(b *testing.B) {
			least, usual := time.Hour, time.Hour
			for b.Loop() {
				least = min(least, lasted(b, line))
				usual = min(usual, lasted(b, ring))
			}
			b.ReportMetric(float64(least)/float64(parts)/(float64(usual)/float64(ofRing)), "of-ring-a-part")
		})
		b.Run(s.name+"/piece", func(b *testing.B) { timed(b, []string{"piece", s.name + ".toml", "-o", "-"}) })
	}
}

// lasted returns how long a command took.
func lasted(b *testing.B, line []string) time.Duration {
	b.Helper()
	begun := time.Now()
	if status, _, errs := start(context.Background(), line...); status != 0 { // no signal ends it
		b.Fatal(errs)
	}
	return time.Since(begun)
}

// startWith returns the starting design in so many sizes.
func startWith(tb testing.TB, sides, sizes int) string {
	tb.Helper()
	text := must(design.Start(design.RingKind, sides, measure.Millimetre))(tb)
	out := string(text)
	for i := range sizes {
		if sizes > 1 {
			out += fmt.Sprintf("\n[[size]]\nname = \"size %d\"\n[size.legs]\nsplay = %d\nheight = %d\n", i+1, 16-i, 440+60*i)
		}
	}
	return out
}

// BenchmarkPieceAgainstBareWriter draws the pack of the example from its design
// to the compressed file; the same strokes and words with bare calls of the PDF
// library, a Line each; and the same by hand without the library, the floor.
// The metrics are the first time over the others, the least of all runs each.
func BenchmarkPieceAgainstBareWriter(b *testing.B) {
	defer debug.SetGCPercent(debug.SetGCPercent(garbage))
	doc := packDocument(b, anExample)
	runs := []func() error{
		func() error {
			if status, _, errs := start(b.Context(), "piece", anExample, "-o", "-"); status != 0 {
				return errors.New(errs)
			}
			return nil
		},
		func() error { return bare.Write(io.Discard, doc) },
		func() error { return writeByHand(io.Discard, doc) },
	}
	least := []time.Duration{time.Hour, time.Hour, time.Hour}
	for b.Loop() {
		for i, run := range runs {
			begun := time.Now()
			done(b, run())
			least[i] = min(least[i], time.Since(begun))
		}
	}
	b.ReportMetric(float64(least[0])/float64(least[1]), "of-bare")
	b.ReportMetric(float64(least[0])/float64(least[2]), "of-floor")
	b.ReportMetric(least[2].Seconds()*1000, "floor-ms")
	b.ReportMetric(float64(len(doc.Pages)), "pages")
}

// packDocument returns the pages of the pack of a design.
func packDocument(tb testing.TB, name string) page.Document {
	tb.Helper()
	c := pieceCommand()
	v, err := c.parse([]string{name})
	if err == nil {
		err = v.design(tb.Context(), readSome)
	}
	if err != nil {
		tb.Fatal(err)
	}
	o := must(v.options(func(string) string { return "" }, io.Discard))(tb)
	l, err := lay(c.read(v), o.layout, false)
	if err != nil {
		tb.Fatal(err)
	}
	doc := l.plan.Document()
	done(tb, pdf.Write(io.Discard, doc))
	return doc
}
