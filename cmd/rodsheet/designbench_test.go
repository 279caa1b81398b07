package main

import (
	"fmt"
	"io"
	"os"
	"strings"
	"testing"
	"time"

	"rodsheet/geometry/measure"
	"rodsheet/render/page"
	"rodsheet/render/pdf"
	"rodsheet/render/pdf/bare"
	"rodsheet/templates/piece/design"
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
// from its start to its end, the least of all runs: other work slows it.
func BenchmarkDesignProcess(b *testing.B) {
	data, err := os.ReadFile(anExample)
	if err != nil {
		b.Fatal(err)
	}
	b.Chdir(b.TempDir())
	program := linkSelf(b)
	if err := os.WriteFile("table.toml", data, 0o600); err != nil {
		b.Fatal(err)
	}
	for _, args := range [][]string{{"--version"}, {"check", "table.toml"}, {"piece", "table.toml"}} {
		b.Run(args[0], func(b *testing.B) {
			least := time.Hour
			for b.Loop() {
				p, err := os.StartProcess(program, append([]string{"rodsheet"}, args...), &os.ProcAttr{})
				if err != nil {
					b.Fatal(err)
				}
				state, err := p.Wait()
				if err != nil || !state.Success() {
					b.Fatal(state, err)
				}
				least = min(least, state.UserTime()+state.SystemTime())
			}
			b.ReportMetric(float64(least.Microseconds())/1000, "least-cpu-ms")
		})
	}
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
	if err := os.WriteFile(name+".toml", []byte(text), 0o600); err != nil {
		b.Fatal(err)
	}
	b.Run(name+"/check", func(b *testing.B) { timed(b, []string{"check", name + ".toml"}) })
	b.Run(name+"/piece", func(b *testing.B) { timed(b, []string{"piece", name + ".toml", "-o", "-"}) })
}

// startWith returns the starting design in so many sizes.
func startWith(tb testing.TB, sides, sizes int) string {
	tb.Helper()
	text, err := design.Start(sides, measure.Millimetre)
	if err != nil {
		tb.Fatal(err)
	}
	out := string(text)
	for i := range sizes {
		if sizes > 1 {
			out += fmt.Sprintf("\n[[size]]\nname = \"size %d\"\n[size.legs]\nsplay = %d\nheight = %d\n", i+1, 16-i, 440+60*i)
		}
	}
	return out
}

// BenchmarkPieceAgainstBareWriter draws the pack of the example from its design
// to the compressed file, and the same strokes and words with bare calls of the
// PDF library, a Line each. ratio is the first time over the second.
func BenchmarkPieceAgainstBareWriter(b *testing.B) {
	doc := packDocument(b, anExample)
	var ours, plain time.Duration
	for b.Loop() {
		begun := time.Now()
		if status, _, errs := start(b.Context(), "piece", anExample, "-o", "-"); status != 0 {
			b.Fatal(errs)
		}
		ours += time.Since(begun)
		begun = time.Now()
		if err := bare.Write(io.Discard, doc); err != nil {
			b.Fatal(err)
		}
		plain += time.Since(begun)
	}
	b.ReportMetric(float64(ours)/float64(plain), "ratio")
	b.ReportMetric(float64(len(doc.Pages)), "pages")
	b.ReportMetric(plain.Seconds()*1000/float64(b.N), "bare-ms/op")
}

// packDocument returns the pages of the pack of a design.
func packDocument(tb testing.TB, name string) page.Document {
	tb.Helper()
	c := pieceCommand()
	v, err := c.parse([]string{name})
	if err == nil {
		err = v.design(tb.Context())
	}
	if err != nil {
		tb.Fatal(err)
	}
	o, err := v.options(func(string) string { return "" }, io.Discard)
	if err != nil {
		tb.Fatal(err)
	}
	plan, _, err := lay(c.read(v), o.layout)
	if err != nil {
		tb.Fatal(err)
	}
	doc := plan.Document()
	if err := pdf.Write(io.Discard, doc); err != nil {
		tb.Fatal(err)
	}
	return doc
}
