package main

import (
	"bytes"
	"context"
	"io"
	"strings"

	"rodsheet/cmd/internal/live"
	"rodsheet/render/page"
	"rodsheet/render/printer"
)

// desk lends the page what the commands do.
func (w world) desk() *live.Desk {
	on := func(text []byte) world {
		w.read = func(string) (designText, error) { return designText{data: text}, nil }
		w.stdout, w.stderr = io.Discard, io.Discard
		return w
	}
	return &live.Desk{
		Sheets: func(ctx context.Context, args []string, text []byte) (page.Document, error) {
			own, c := on(text), pieceCommand()
			v, err := c.figures(ctx, args[1:], own)
			if err != nil {
				return page.Document{}, err
			}
			l, _, err := c.laid(ctx, v, own)
			if err != nil {
				return page.Document{}, err
			}
			return l.plan.Document(), nil
		},
		Run: func(ctx context.Context, args []string, text []byte) ([]byte, string) {
			var out, errs bytes.Buffer
			own := on(text)
			own.stdout, own.stderr = &out, &errs
			if own.run(ctx, args) != 0 {
				return nil, strings.TrimSpace(strings.ReplaceAll(errs.String(), "rodsheet: ", ""))
			}
			return out.Bytes(), ""
		},
	}
}

// printerNames lists the printers that were measured; none where that cannot be known.
func printerNames() []string {
	store, err := printers()
	if err != nil {
		return nil
	}
	records, err := store.Records()
	if err != nil {
		return nil
	}
	return printer.Names(records)
}
