package live

import (
	"bytes"
	"context"
	"errors"
	"slices"
	"strings"

	"rodsheet/render/page"
	"rodsheet/render/svg"
)

// Print are the options of printing, in the words of the command line.
type Print struct {
	Paper   string `json:"paper"`
	For     string `json:"for"`
	Units   string `json:"units"`
	Printer string `json:"printer"`
	Full    bool   `json:"full"`
	Plan    bool   `json:"plan"`
	Anyway  bool   `json:"anyway"`
}

func (p Print) flags() (out []string) {
	for _, f := range []struct {
		name, value string
		on          bool
	}{
		{"paper", p.Paper, p.Paper != ""}, {"for", p.For, p.For != ""}, {"units", p.Units, p.Units != ""}, {"printer", p.Printer, p.Printer != ""},
		{"full", "", p.Full}, {"plan", "", p.Plan}, {"anyway", "", p.Anyway},
	} {
		if f.on {
			out = append(out, "--"+f.name)
		}
		if f.value != "" {
			out = append(out, f.value)
		}
	}
	return out
}

func (r Request) file() string {
	if r.Name == "" {
		return "piece.toml"
	}
	return r.Name
}

// line returns the words of a command about the design, whose name is no flag however it
// begins.
func (r Request) line(command string, flags ...string) []string {
	return slices.Concat([]string{command}, flags, []string{"--", r.file()})
}

func (d *Desk) laid(ctx context.Context, r Request, text string) (page.Document, error) {
	args := r.line("piece", r.Print.flags()...)
	line := strings.Join(args, "\x00") + "\x00" + text
	d.memo.Lock()
	defer d.memo.Unlock()
	if d.memo.sheets != line {
		d.memo.doc, d.memo.problem = d.Sheets(ctx, args, []byte(text))
		d.memo.sheets = line
	}
	return d.memo.doc, d.memo.problem
}

// A Product is a file to keep or to look at.
type Product struct {
	Name, Type string
	Data       []byte
}

// An Order asks for a product: "pdf", "csv", "svg" (one sheet) or "scale" (the sheet that
// a printer is measured by).
type Order struct {
	Request
	Kind string `json:"kind"`
}

// errOrder is what an unknown kind is answered by.
var errOrder = errors.New("live: no such product")

// Make returns a product: the bytes that the command line would write. The error is
// what that would say.
func (d *Desk) Make(ctx context.Context, o Order) (Product, error) {
	stem := strings.TrimSuffix(o.file(), ".toml")
	stem = stem[strings.LastIndexAny(stem, `/\`)+1:]
	run := func(name, kind string, args ...string) (Product, error) {
		data, complaint := d.Run(ctx, args, []byte(o.Text))
		if complaint != "" {
			return Product{}, errors.New(complaint)
		}
		return Product{name, kind, data}, nil
	}
	switch o.Kind {
	case "pdf":
		return run(stem+".pdf", "application/pdf", o.line("piece", append(o.Print.flags(), "-o", "-")...)...)
	case "csv":
		return run(stem+".csv", "text/csv; charset=utf-8", o.line("buying", "-o", "-")...)
	case "scale":
		p := Print{Paper: o.Print.Paper, Units: o.Print.Units, Printer: o.Print.Printer}
		return run("scale.pdf", "application/pdf", append([]string{"scale", "-o", "-"}, p.flags()...)...)
	case "svg":
		doc, err := d.laid(ctx, o.Request, o.Text)
		if err != nil {
			return Product{}, err
		}
		var b bytes.Buffer
		for i, p := range doc.Pages {
			if p.Number == o.Sheet {
				err = svg.Write(&b, doc, i)
			}
		}
		return Product{stem + ".svg", "image/svg+xml", b.Bytes()}, err
	}
	return Product{}, errOrder
}
