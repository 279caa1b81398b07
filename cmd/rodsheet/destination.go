package main

import (
	"context"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"rodsheet/geometry/measure"
	"rodsheet/render"
	"rodsheet/render/page"
	"rodsheet/render/pdf"
	"rodsheet/render/svg"
	"rodsheet/templates/wording"
)

// A destination is where a job goes. An empty name stands for the job's own.
type destination struct {
	name   string
	svg    bool
	stdout bool
	source fs.FileInfo // of the design, which is not to be written over; may be nil
}

// spare refuses files that would stand in the place of the design they are
// made from, under whatever name.
func (d destination) spare(files []file) error {
	for _, f := range files {
		info, err := os.Stat(f.name)
		if err == nil && d.source != nil && d.source.Mode().IsRegular() && os.SameFile(info, d.source) {
			return refuse(wording.Shown(f.name)+" is the design itself and is not written over", "name another file with --out")
		}
	}
	return nil
}

// destination reads --out.
func (v *values) destination(stdout io.Writer, json bool) destination {
	if !v.given("out") {
		return destination{source: v.source}
	}
	name := v.text("out")
	info, err := os.Stat(name)
	known := err == nil
	device := known && !info.IsDir() && !info.Mode().IsRegular()
	d := destination{name: name, source: v.source}
	sample := "lap.pdf"
	if v.file != nil {
		sample = v.stem() + ".pdf"
	}
	switch extension := strings.ToLower(filepath.Ext(name)); {
	case name == "-" || known && same(stdout, info):
		d.stdout = true
		if json {
			v.add("--json and the PDF cannot both go to standard output", "name a file: --out "+sample)
		}
	case name == "":
		v.add("--out is empty", "name a file: --out "+sample)
	case known && info.IsDir():
		v.add("--out "+wording.Shown(name)+" is a directory", "name a file in it: "+filepath.Join(name, sample))
	case extension == ".svg":
		d.svg = true
	case extension != ".pdf" && !device:
		v.add("--out "+wording.Shown(name)+" does not say which kind of file", "end the name in .pdf or .svg")
	}
	return d
}

// same reports whether standard output is that file.
func same(stdout io.Writer, info os.FileInfo) bool {
	f, ok := stdout.(*os.File)
	if !ok {
		return false
	}
	own, err := f.Stat()
	return err == nil && os.SameFile(own, info)
}

// deliver writes the sheets, then says what was worked out and written.
func (o options) deliver(ctx context.Context, made pack, plan render.Plan, stdout, stderr io.Writer) error {
	doc := plan.Document()
	files, err := o.write(ctx, made, doc, plan.Count(), stdout)
	if err != nil {
		return err
	}
	for _, w := range made.warnings {
		note(stderr, w)
	}
	switch {
	case o.out.stdout:
		return nil
	case o.json:
		return writeJSON(stdout, made, plan.Placements())
	}
	last := fmt.Sprintf("wrote %s: %s, %s\n", span(files), sheets(len(doc.Pages), plan.Count()), o.paper(doc))
	if plan.Count() > 1 {
		last = "bound  " + plan.Bound().String() + "\n" + last
	}
	if name := o.layout.Correct.Printer; name != "" {
		last = strings.TrimSuffix(last, "\n") + ", corrected for " + name + "\n"
	}
	return emit(stdout, figureTable(made.figures, o.layout.Unit)+last)
}

// write sends the document to standard output or to files, which it returns.
func (o options) write(ctx context.Context, made pack, doc page.Document, sheets int, stdout io.Writer) ([]file, error) {
	if o.out.stdout {
		err := pdf.Write(watched{ctx, stdout}, doc)
		return nil, stopped(ctx, err, cannotPrint)
	}
	files := o.out.files(made.name, doc, sheets)
	if err := o.out.spare(files); err != nil {
		return nil, err
	}
	return files, save(ctx, files)
}

// files returns the one PDF, or an SVG for every sheet that is drawn, under its
// number in the job: name-1.svg, name-2.svg and so on, or plain name.svg where
// the job is of one sheet.
func (d destination) files(job string, doc page.Document, sheets int) []file {
	name := d.name
	if name == "" {
		name = job + ".pdf"
	}
	if !d.svg {
		return []file{{name, func(w io.Writer) error { return pdf.Write(w, doc) }}}
	}
	extension := filepath.Ext(name)
	var out []file
	for i, p := range doc.Pages {
		sheet := name
		if sheets > 1 {
			sheet = fmt.Sprintf("%s-%d%s", strings.TrimSuffix(name, extension), p.Number, extension)
		}
		out = append(out, file{sheet, func(w io.Writer) error { return svg.Write(w, doc, i) }})
	}
	return out
}

// paper names the paper; a sheet that grew to hold the job is named by its size.
func (o options) paper(doc page.Document) string {
	if !o.layout.Paper.Whole || len(doc.Pages) == 0 {
		return o.layout.Paper.Name
	}
	p := doc.Pages[0]
	return measure.Length(p.Width).Bare(o.layout.Unit) + " x " + measure.Length(p.Height).Text(o.layout.Unit)
}

// sheets writes how many sheets are drawn, and of how many where not all are.
func sheets(drawn, all int) string {
	if drawn == all {
		return count(all, "sheet")
	}
	return fmt.Sprintf("%d of %s", drawn, count(all, "sheet"))
}

// count writes a number of things.
func count(n int, thing string) string {
	if n == 1 {
		return "1 " + thing
	}
	return fmt.Sprintf("%d %ss", n, thing)
}
