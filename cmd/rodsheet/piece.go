package main

import (
	"cmp"
	"slices"
	"strings"

	"rodsheet/templates"
	"rodsheet/templates/piece/kind"
	"rodsheet/templates/piece/kinds"
	"rodsheet/templates/wording"
)

func pieceCommand() command {
	return command{
		name:    "piece",
		words:   fileWord,
		summary: "the whole pack of a piece from its design file",
		about: `Prints everything needed at the bench for all sizes of a design, in one PDF: a
cover, wood and buying, then an envelope for each part of the work with all that
it takes: cards, full-size templates and their figures. --for chooses what is
printed: buying is what goes to the yard, bench what is worked by, record every
figure and check; buying and bench if not given. --only milled prints again what
hangs on the sizes as milled. A piece that cannot be built is refused; rodsheet
check says why, and --anyway prints it with that on every sheet.`,
		caution: sawCaution,
		flags: []flag{
			sizeFlag(),
			{name: "for", value: "LIST", choices: purposeNames(), usage: "buying, bench, record, or several of them: buying,record"},
			{name: "plan", usage: "with the full-size plan of the ring, to lay the parts on"},
			{name: "anyway", usage: "print it even if it cannot be built"},
			fullFlag(),
		},
		examples: []example{
			{"rodsheet piece table.toml", "all sizes, to table.pdf"},
			{"rodsheet piece table.toml --for bench --paper letter", "for the bench, on letter paper"},
			{"rodsheet piece table.toml --only milled", "again, once sizes as milled are written down"},
			{"rodsheet piece table.toml --size low --plan -o low.pdf", "one size, with the plan"},
		},
		design: true,
		read:   readPiece,
	}
}

func readPiece(v *values) maker {
	options := kind.Options{For: v.purposes(), Plan: v.on("plan")}
	if options.Plan && !kinds.HasPlan(v.file.Sizes[0]) {
		v.add("--plan: no full-size plan is drawn of this kind of piece", "leave it out; the templates are full size without it")
	}
	work, err := v.work()
	if err != nil {
		return func(templates.Setting) (pack, error) { return pack{}, err }
	}
	found := findings{work.Report()}
	verdict := found.verdict()
	if verdict != nil && !v.on("anyway") {
		return func(templates.Setting) (pack, error) {
			return pack{}, unbuildable(verdict.Error() + "; rodsheet check says what mends it, --anyway prints it all the same")
		}
	}
	return func(s templates.Setting) (pack, error) {
		job, err := work.Pack(options, s)
		milled := func(s templates.Section) bool { return s.Milled }
		if err == nil && v.text("only") == "milled" && !slices.ContainsFunc(job.Sections, milled) {
			err = refuse("--only milled: nothing of this pack hangs on the sizes as milled", "leave out --only")
		}
		job.Name = v.stem()
		p := pack{job: job, warnings: found.doubts()}
		if v.on("json") {
			p.members = found.members()
		}
		if verdict != nil {
			p.remark = verdict.Error()
		}
		return p, err
	}
}

// purposes reads --for. What is bought hangs on no size as milled.
func (v *values) purposes() kind.Purposes {
	if !v.given("for") {
		return 0
	}
	var out kind.Purposes
	words := strings.Split(v.text("for"), ",")
	for i, word := range words {
		if !slices.Contains(words[:i], word) {
			out |= v.purpose(strings.TrimSpace(word))
		}
	}
	if out == kind.Buying && v.text("only") == "milled" {
		v.add("--only milled: what is bought hangs on no size as milled", "leave out --for or --only")
	}
	return out
}

type purpose struct {
	word
	of kind.Purposes
}

var purposes = []purpose{{"buying", kind.Buying}, {"bench", kind.Bench}, {"record", kind.Record}}

func purposeNames() []string { return spelled(purposes) }

func (v *values) purpose(word string) kind.Purposes {
	for _, k := range purposes {
		if k.String() == word {
			return k.of
		}
	}
	known := purposeNames()
	v.add("--for "+wording.Shown(word)+" must be "+wording.Or(known...), cmp.Or(suggest("", word, known), "several go with commas: buying,record"))
	return 0
}

func (f findings) doubts() []string {
	return f.graded(kind.Warn, func(c kind.Check) string { return c.Name + ": " + c.Words })
}
