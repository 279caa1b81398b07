package main

import (
	"context"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"rodsheet/render"
	"rodsheet/render/atomicfile"
	"rodsheet/render/page"
	"rodsheet/render/pdf"
	"rodsheet/render/svg"
	"rodsheet/templates"
	"rodsheet/templates/wording"
)

// A file is one sheet to write, or a whole job, and then its number is 0.
type file struct {
	atomicfile.File
	sheet int
}

// A destination is where a job goes. An empty name stands for the job's own.
type destination struct {
	name    string
	svg     bool
	stdout  bool
	replace bool        // what an earlier job left
	source  fs.FileInfo // of the design, which is not to be written over; may be nil
}

// save writes the files whole or not at all, but none in the place of the
// design that they are made from, under whatever name that stands.
func (d destination) save(ctx context.Context, files []file) error {
	plain := make([]atomicfile.File, len(files))
	for i, f := range files {
		info, err := os.Stat(f.Name)
		if err == nil && d.source != nil && d.source.Mode().IsRegular() && os.SameFile(info, d.source) {
			return refuse(wording.Shown(f.Name)+" is the design itself and is not written over", "name another file with --out")
		}
		plain[i] = f.File
	}
	return unwritten(ctx, files, atomicfile.Write(ctx, plain...))
}

// write writes the one file of a job, or to standard output.
func (d destination) write(ctx context.Context, stdout io.Writer, content func(io.Writer) error, remark string) error {
	if d.stdout {
		return unwritten(ctx, nil, content(atomicfile.Watched(ctx, stdout)))
	}
	files := []file{{atomicfile.File{Name: d.name, Write: content}, 0}}
	if err := d.save(ctx, files); err != nil {
		return err
	}
	return afterWriting(emit(stdout, "wrote "+span(files)+remark+"\n"), files)
}

// destination reads --out, a file of one of the kinds.
func (v *values) destination(stdout io.Writer, json bool, kinds ...string) destination {
	if !v.given("out") {
		return destination{source: v.source}
	}
	name := v.text("out")
	info, err := os.Stat(name)
	known := err == nil
	device := known && !info.IsDir() && !info.Mode().IsRegular()
	d := destination{name: name, replace: v.on("replace"), source: v.source}
	sample := v.command + kinds[0]
	if v.file != nil {
		sample = v.stem() + kinds[0]
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
	case !slices.Contains(kinds, extension) && !device:
		v.add("--out "+wording.Shown(name)+" does not say which kind of file", "end the name in "+strings.Join(kinds, " or "))
	default:
		d.svg = extension == ".svg"
	}
	return d
}

func same(stdout io.Writer, info os.FileInfo) bool {
	f, ok := stdout.(*os.File)
	if !ok {
		return false
	}
	own, err := f.Stat()
	return err == nil && os.SameFile(own, info)
}

func (o options) deliver(ctx context.Context, made pack, plan render.Plan, stdout, stderr io.Writer) error {
	doc := plan.Document()
	if o.out.stdout {
		err := pdf.Write(atomicfile.Watched(ctx, stdout), doc)
		return unwritten(ctx, nil, err)
	}
	files := o.out.files(made.job.Name, doc, plan.Count())
	if err := o.out.save(ctx, files); err != nil {
		return err
	}
	for _, w := range append(made.warnings, o.out.clear(plan.Count())...) {
		note(stderr, w)
	}
	var err error
	if o.json {
		err = writeJSON(stdout, made, plan.Placements(), plan.Bound())
	} else {
		err = emit(stdout, figureTable(made.job.Figures, o.layout.Unit)+o.summary(made, plan, doc, files))
	}
	return afterWriting(err, files)
}

func (o options) summary(made pack, plan render.Plan, doc page.Document, files []file) string {
	var b strings.Builder
	if o.verbose {
		fmt.Fprintf(&b, "bound  %s\n", plan.Bound())
	}
	fmt.Fprintf(&b, "wrote %s: %s, %s", span(files), sheets(len(doc.Pages), plan.Count()), o.paper(doc))
	if name := o.layout.Correct.Printer; name != "" {
		fmt.Fprintf(&b, ", corrected for %s", name)
	}
	fmt.Fprintf(&b, "; lengths in %s", o.layout.Unit)
	if w, h := largest(made.job.Drawings()); w > 0 {
		fmt.Fprintf(&b, ", largest drawing %s", render.SizeText(w, h, o.layout.Unit))
	}
	return b.String() + "\n"
}

// largest returns width and height of the drawing with the longest side.
func largest(drawings []templates.Drawing) (width, height float64) {
	for _, d := range drawings {
		if b := d.Bounds(); max(b.Width(), b.Height()) > max(width, height) {
			width, height = b.Width(), b.Height()
		}
	}
	return width, height
}

// files returns the one PDF, or an SVG for every sheet that is drawn.
func (d destination) files(job string, doc page.Document, sheets int) []file {
	name := d.name
	if name == "" {
		name = job + ".pdf"
	}
	if !d.svg {
		return []file{{atomicfile.File{Name: name, Write: func(w io.Writer) error { return pdf.Write(w, doc) }}, 0}}
	}
	var out []file
	for i, p := range doc.Pages {
		write := func(w io.Writer) error { return svg.Write(w, doc, i) }
		out = append(out, file{atomicfile.File{Name: d.sheetName(p.Number, sheets), Write: write}, p.Number})
	}
	return out
}

// sheetName returns the name of the SVG of a sheet: that of the job with the
// number of the sheet, name-1.svg, or plain name.svg where the job is of one.
func (d destination) sheetName(number, sheets int) string {
	if sheets == 1 {
		return d.name
	}
	extension := filepath.Ext(d.name)
	return fmt.Sprintf("%s-%d%s", strings.TrimSuffix(d.name, extension), number, extension)
}

// paper names the paper; a sheet that grew to hold the job is named by its size.
func (o options) paper(doc page.Document) string {
	if !o.layout.Paper.Whole || len(doc.Pages) == 0 {
		return o.layout.Paper.Name
	}
	return render.SizeText(doc.Pages[0].Width, doc.Pages[0].Height, o.layout.Unit)
}

// sheets writes how many sheets are drawn, and of how many where not all are.
func sheets(drawn, all int) string {
	if drawn == all {
		return count(all, "sheet")
	}
	return fmt.Sprintf("%d of %s", drawn, count(all, "sheet"))
}

func count(n int, thing string) string {
	if n == 1 {
		return "1 " + thing
	}
	return fmt.Sprintf("%d %ss", n, thing)
}
