package design

import (
	_ "embed"
	"encoding/csv"
	"slices"
	"strconv"
	"strings"
	"sync"

	"rodsheet/geometry/lists"
	"rodsheet/templates/wording"
)

// A WoodSpecies is one wood of the table; species.csv names its sources.
type WoodSpecies struct {
	Name    string  // "Ash, white"
	Density float64 // at 12 per cent of moisture, kg/m³
	// Radial and Tangential are the change of a width along and across the
	// rays, as a share of it, for each per cent of moisture.
	Radial, Tangential float64
	Recalled           bool // shrinkage and movement from memory, not read in the source
	Also               []string
}

//go:embed species.csv
var speciesTable string

// Species returns the woods of the table by name.
func Species() []WoodSpecies { return slices.Clone(species()) }

// The table is read when a wood is first asked for, and once.
var species = sync.OnceValue(func() []WoodSpecies {
	return lists.Map(speciesRows(), func(row []string) WoodSpecies {
		return WoodSpecies{
			Name: row[0], Radial: figureOf(row[3]), Tangential: figureOf(row[4]), Density: figureOf(row[5]),
			Recalled: row[6] == "memory", Also: strings.FieldsFunc(row[7], func(r rune) bool { return r == ';' }),
		}
	})
})

// speciesRows returns the rows of the table below its head. It is part of the
// program and cannot fail to be read; the tests count the rows.
func speciesRows() [][]string {
	table := csv.NewReader(strings.NewReader(speciesTable))
	table.Comment = '#'
	rows, err := table.ReadAll()
	if err != nil || len(rows) == 0 {
		return nil
	}
	return rows[1:]
}

func figureOf(text string) float64 {
	v, _ := strconv.ParseFloat(text, 64)
	return v
}

// FindSpecies finds a wood by name: capitals, commas and the order of the
// words do not matter, so that "white ash" is "Ash, white".
func FindSpecies(name string) (WoodSpecies, bool) {
	if i, known := speciesByName()[plainName(name)]; known {
		return species()[i], true
	}
	return WoodSpecies{}, false
}

// speciesByName finds a wood by each of its names, plain; the first in the table
// where several share one.
var speciesByName = sync.OnceValue(func() map[string]int {
	out := map[string]int{}
	for i, w := range slices.Backward(species()) {
		for _, name := range slices.Concat(w.Also, []string{w.Name}) {
			out[plainName(name)] = i
		}
	}
	return out
})

// Known returns the wood from the table; false is one of which only the
// density is given, so that nothing is known of its movement.
func (w Wood) Known() (WoodSpecies, bool) { return FindSpecies(w.Species) }

// plainName is a name without capitals and commas, its words in order.
func plainName(name string) string {
	words := nameWords(name)
	slices.Sort(words)
	return strings.Join(words, " ")
}

func nameWords(name string) []string {
	return strings.FieldsFunc(strings.ToLower(name), func(r rune) bool { return r == ' ' || r == ',' || r == '-' })
}

// resolveSpecies gives a wood of the table its name there and its density. A
// wood that is not in it must have its density given.
func resolveSpecies(d *Design, s settings) []note {
	if !s.good("wood.species") {
		return nil
	}
	wood, known := d.Wood.Known()
	if known {
		d.Wood.Species = wood.Name
	}
	if _, given := s["wood.density"]; given {
		return nil
	}
	d.Wood.Density = wood.Density
	if known {
		return nil
	}
	return []note{{
		at: s["wood.species"].at, path: "wood.species", words: woodUnknown.With(wording.Shown(d.Wood.Species)),
		hint: woodHint(speciesLike(d.Wood.Species)),
	}}
}

func woodHint(meant string) string {
	if meant == "" {
		return giveDensity.With()
	}
	return orGiveDensity.With(meant)
}

// speciesLike suggests woods of the same genus, which the name puts before its
// comma; the nearest where one is a slip away. Without a genus it is the nearest
// name of all.
func speciesLike(name string) string {
	have := nameWords(name)
	all := species()
	related := slices.DeleteFunc(slices.Clone(all), func(w WoodSpecies) bool {
		genus, _, _ := strings.Cut(w.Name, ",")
		return !slices.ContainsFunc(nameWords(genus), func(word string) bool { return slices.Contains(have, word) })
	})
	among := related
	if len(among) == 0 {
		among = all
	}
	var plain, quoted []string
	for _, w := range among {
		plain, quoted = append(plain, plainName(w.Name)), append(quoted, `"`+w.Name+`"`)
	}
	if i := slices.Index(plain, Nearest(plainName(name), plain)); i >= 0 {
		return didMean.With(quoted[i])
	}
	if len(related) > 0 {
		const most = 9
		return tableHas.With(wording.Or(quoted[:min(most, len(quoted))]...))
	}
	return ""
}
