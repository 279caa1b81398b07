package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"strings"
	"text/tabwriter"

	"rodsheet/geometry/measure"
	"rodsheet/render"
	"rodsheet/render/printer"
	"rodsheet/templates/wording"
)

// printerVariable names the environment variable that holds a standing choice
// of printer.
const printerVariable = "RODSHEET_PRINTER"

func printerCommand() command {
	return command{
		name:    "printer",
		words:   "[NAME]",
		summary: "measure a printer once, and print true on it",
		about: `Keeps what you measured on a printer, so that --printer NAME (or the
environment variable RODSHEET_PRINTER) makes up for it: both scales and the
skew. Without NAME it lists the printers; with NAME alone it shows that one.

  1. rodsheet scale, printed at 100 %, actual size, with no --printer
  2. measure the large rectangle: one side across the feed, one along it, and
     both diagonals, the one from the lower left to the upper right first
  3. rodsheet printer NAME with those figures, as below
  4. rodsheet scale --printer NAME proves it: all sides must now be true

Read the rule finely. In 250 mm, readings good to 0.25 mm leave an error of
0.3 mm as a rule and 0.6 mm at worst; readings good to 0.1 mm leave 0.12 mm
and 0.25 mm. Figures in millimetres are of the rectangle of 150 x 200 mm,
figures in inches of that of 6 x 8 in, from rodsheet scale --units in.
Measure again for other paper, and when the printer has been serviced.
--printer none prints without correction. A sheet wider than high is taken to
be fed short edge first.`,
		flags: []flag{
			{name: "across", value: "LENGTH", usage: "of the rectangle, across the feed"},
			{name: "along", value: "LENGTH", usage: "of the rectangle, along the feed"},
			{name: "diagonals", value: "LENGTH,LENGTH", usage: "first and second; none is no skew"},
			{name: "forget", usage: "drop what is known of NAME"},
			unitsFlag("of lengths given without a unit"),
		},
		examples: []example{
			{"rodsheet printer bench --across 149.2 --along 200.9 --diagonals 250.4,250.0", "after measuring"},
			{"rodsheet angle 12 --printer bench", "and print through it"},
			{"rodsheet printer office --across 6.03in --along 7.97in", "in inches, the skew left out"},
			{"rodsheet printer", "list what is known"},
			{"rodsheet printer office --forget", "sold"},
		},
		act: tendPrinters,
	}
}

func tendPrinters(_ context.Context, v *values, w world) error {
	measured := v.given("across") || v.given("along") || v.given("diagonals")
	forget := v.on("forget")
	switch {
	case len(v.words) > 1:
		v.add("printer takes one name, found "+wording.Shown(v.words[1])+" as well", "")
	case len(v.words) == 0 && (measured || forget):
		v.add("printer needs a name for that", "rodsheet printer NAME --across LENGTH --along LENGTH")
	case measured && forget:
		v.add("--forget goes with no measurement", "forget, or measure again: the new figures take the place of the old")
	case measured && !(v.given("across") && v.given("along")):
		v.add("printer needs both --across and --along", "they are the sides of the large rectangle of rodsheet scale")
	}
	var record printer.Record
	if measured {
		record = v.record()
	}
	if len(v.problems) > 0 {
		return v.problems
	}
	store, err := printers()
	switch {
	case err != nil:
		return err
	case measured:
		return keepPrinter(store, v.words[0], record, w.stdout)
	case forget:
		if err := store.Forget(v.words[0]); err != nil {
			return explainPrinter(err)
		}
		return emit(w.stdout, "forgot "+v.words[0]+"\n")
	}
	return listPrinters(store, v.words, w.stdout)
}

func printers() (printer.Store, error) {
	dir, err := os.UserConfigDir()
	if err != nil {
		return printer.Store{}, fmt.Errorf("no directory to keep printers in: %w", err)
	}
	return printer.In(dir), nil
}

func keepPrinter(store printer.Store, name string, r printer.Record, stdout io.Writer) error {
	old, replaced, err := store.Put(name, r)
	if err != nil {
		return explainPrinter(err)
	}
	text := r.Text(name)
	if replaced {
		text += "\nin place of: " + strings.TrimPrefix(old.Text(name), "corrected for "+name+": ")
	}
	return emit(stdout, "sheets will say: "+text+"\n")
}

// listPrinters prints one line for each printer, or for the one named.
func listPrinters(store printer.Store, words []string, stdout io.Writer) error {
	records, err := store.Records()
	if err != nil {
		return explainPrinter(err)
	}
	names := printer.Names(records)
	if len(words) == 1 {
		if _, ok := records[words[0]]; !ok {
			return explainPrinter(&printer.UnknownError{Name: words[0], Known: names})
		}
		names = words
	}
	if len(names) == 0 {
		return emit(stdout, "no printer has been measured; rodsheet help printer says how\n")
	}
	var b strings.Builder
	w := tabwriter.NewWriter(&b, 0, 0, 2, ' ', 0)
	for _, name := range names {
		r := records[name]
		across, along := r.Stretch()
		fmt.Fprintf(w, "%s\tacross ×%.4f\talong ×%.4f\t%s\n", name, 1/across, 1/along, r.SkewText())
	}
	w.Flush()
	return emit(stdout, b.String())
}

// record reads the measurements. All are of one rectangle, so all are in
// inches or none.
func (v *values) record() printer.Record {
	r := printer.Record{Across: v.length("across", 0), Along: v.length("along", 0)}
	texts := []string{v.text("across"), v.text("along")}
	if v.given("diagonals") {
		parts := strings.Split(v.text("diagonals"), ",")
		if len(parts) != 2 {
			v.add("--diagonals "+wording.Shown(v.text("diagonals"))+" must be two lengths with a comma between",
				"like 250.4,250.0, with a point for decimals")
			return r
		}
		for i, text := range parts {
			mm, err := measure.ParseLength(text, v.unit)
			v.fail("--diagonals", err)
			if err == nil {
				v.fail("--diagonals", measure.Positive("print.diagonal", measure.Length(mm)))
			}
			r.Diagonals[i] = mm
		}
		texts = append(texts, parts...)
	}
	r.Unit = v.unitOf(texts[0])
	for _, text := range texts {
		if len(v.problems) == 0 && v.unitOf(text) != r.Unit {
			v.add("some lengths are in millimetres and some in inches", "measure one rectangle: 150 x 200 mm or 6 x 8 in")
		}
	}
	if len(v.problems) == 0 {
		v.unit = r.Unit
		v.fail("printer", r.Check())
	}
	return r
}

// unitOf returns the unit that a length was given in. No name of a metric unit
// holds an i or an f, and every name of one in inches or feet does, or is a
// sign.
func (v *values) unitOf(text string) measure.Unit {
	text = strings.ToLower(text)
	switch {
	case strings.ContainsAny(text, `if'"′″’”‘“`):
		return measure.Inch
	case strings.Contains(text, "m"):
		return measure.Millimetre
	}
	return v.unit
}

// correction reads --printer, or the standing choice. Of a bad one of these the
// message names the variable: nothing on the command line shows it.
func (v *values) correction(standing string) (render.Correction, error) {
	name, source := standing, printerVariable+": "
	if v.given("printer") {
		name, source = v.text("printer"), ""
	}
	if name == printer.None || name == "" && !v.given("printer") {
		return render.Correction{}, nil
	}
	store, err := printers()
	if err != nil {
		return render.Correction{}, err
	}
	r, err := store.Find(name)
	if bad := printer.CheckName(name); bad != nil {
		err = bad
	}
	var file *printer.FileError
	if errors.As(err, &file) {
		return render.Correction{}, fmt.Errorf("%s; --printer none prints without correction", file)
	}
	if err := explainPrinter(err); err != nil {
		var said refusal
		if errors.As(err, &said) {
			said[0].text = source + said[0].text
		}
		return render.Correction{}, err
	}
	return render.Correction{Printer: name, Upright: r.Correction(), Text: r.Text(name)}, nil
}

// explainPrinter makes refusals of what the user can change on the command
// line. A file that cannot be used is a failure of the system.
func explainPrinter(err error) error {
	var name *printer.NameError
	var unknown *printer.UnknownError
	switch {
	case errors.As(err, &name):
		return refuse(err.Error(), name.Hint())
	case errors.As(err, &unknown):
		return refuse(err.Error(), knownPrinters(unknown.Known))
	}
	return err
}

// knownPrinters lists as many names as fit on a line.
func knownPrinters(names []string) string {
	const most = 4
	switch {
	case len(names) == 0:
		return "none has been measured; rodsheet help printer says how"
	case len(names) > most:
		return fmt.Sprintf("known: %s and %d more; rodsheet printer lists them", strings.Join(names[:most], ", "), len(names)-most)
	}
	return "known: " + wording.And(names...)
}
