package main

import (
	"bytes"
	"cmp"
	"context"
	"encoding/csv"

	"rodsheet/render/atomicfile"
)

func buyingCommand() command {
	return command{
		name:    "buying",
		words:   fileWord,
		summary: "what is to be bought for a piece, for a spreadsheet",
		about: `Writes the buying list of one piece of every size as CSV: wood board by board,
glass, sheet for the jigs, what is bought ready, with sums where the design file
gives prices. The first row names the columns with their units. A piece that
cannot be built is refused; rodsheet check says why.`,
		flags: []flag{
			{name: "out", short: "o", value: "FILE", usage: "write FILE, .csv; - is standard output"},
			sizeFlag(),
			unitsFlag("of the figures; the file's own if not given"),
		},
		examples: []example{
			{"rodsheet buying table.toml", "to table.csv"},
			{"rodsheet buying table.toml -o list.csv", "to list.csv"},
			{"rodsheet buying table.toml --size low -o -", "one size, to standard output"},
		},
		design: true,
		act:    writeBuying,
	}
}

func writeBuying(ctx context.Context, v *values, w world) error {
	out := v.destination(w.stdout, false, ".csv")
	if len(v.problems) > 0 {
		return v.problems
	}
	rows, err := awaited(ctx, func() ([][]string, error) {
		work, err := v.work()
		if err != nil {
			return nil, err
		}
		if verdict := (findings{work.Report()}).verdict(); verdict != nil {
			return nil, unbuildable(verdict.Error() + "; rodsheet check says what mends it")
		}
		return work.Buying(), nil
	})
	if err != nil {
		return err
	}
	var list bytes.Buffer
	if err := csv.NewWriter(&list).WriteAll(rows); err != nil {
		return err
	}
	out.name = cmp.Or(out.name, v.stem()+".csv")
	return out.write(ctx, w.stdout, atomicfile.Text(list.Bytes()), "")
}
