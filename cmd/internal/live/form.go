package live

import (
	"html/template"

	"strconv"
	"strings"

	"rodsheet/templates/piece/design"
)

type field struct {
	ID, Label, Words string
	Size             string
	Key              design.Key
	Row              int
	Value            string
	Empty            string // what holds where nothing is written
	Choices          []string
	Offers           []string // of what may be written freely
	Idle             bool
	Limits           string
}

// A fieldset is a table of the design. Rows of one that may stand several times are
// fieldsets of their own.
type fieldset struct {
	Table  design.Key
	Legend string
	Words  string
	Row    int
	New    bool // not there yet
	Open   bool // at first
	Fields []field
}

// form is what a maker fills in, for one size or for all of them.
type form struct {
	Sizes []string // none where the design has one without a name
	Size  string   // whose fields are shown, "" for those of all
	Sets  []fieldset
}

// formOf writes the form of the size that is asked for. What a size does not name shows
// as inherited; what follows from other figures shows where it would be given.
func formOf(a asked) template.HTML {
	f, err := design.FormOf([]byte(a.text))
	if err != nil {
		return fill("fault", faults(err))
	}
	out := form{}
	if len(f.Sizes) > 1 || len(f.Sizes) == 1 && f.Sizes[0] != "" {
		out.Sizes = f.Sizes
	}
	own := -1
	for i, name := range f.Sizes {
		if name == a.Request.Own && name != "" {
			own, out.Size = i, name
		}
	}
	for _, g := range f.Groups {
		if g.Repeats {
			if own < 0 {
				out.Sets = append(out.Sets, rows(g)...)
			}
			continue
		}
		set := fieldset{Table: g.Table, Legend: tableName(g.Table), Words: g.Words, Open: g.Table.Draws()}
		for _, one := range g.Fields {
			if one.Key == "kind" {
				continue // another kind has other tables: that is another design
			}
			if own >= 0 && own >= len(one.Own) {
				continue // no size can have it
			}
			set.Fields = append(set.Fields, a.field(one, out.Size, own))
		}
		if len(set.Fields) > 0 {
			out.Sets = append(out.Sets, set)
		}
	}
	return fill("form", out)
}

func (a asked) field(f design.FormField, size string, own int) field {
	out := field{ID: id(size, f.Key, 0), Label: label(f.Key), Words: f.Words, Size: size, Key: f.Key,
		Value: f.Given, Choices: f.Choices, Idle: f.Idle, Limits: f.Limits}
	if f.Standard != "" {
		out.Empty = standard.With(f.Standard)
	}
	if v, ok := a.follows()[f.Key]; ok {
		out.Empty = workedOut.With(v.Text(a.design.Unit))
	}
	if f.Kind == design.YesNoField {
		out.Choices = []string{"true", "false"}
	}
	if f.Kind == design.LineField {
		out.Choices, out.Offers = nil, f.Choices
	}
	if own >= 0 {
		if out.Value = f.Own[own]; f.Given != "" {
			out.Empty = inherited.With(f.Given)
		}
	}
	return out
}

// rows returns the rows of a table that may stand several times, and one more to fill in.
func rows(g design.FormGroup) []fieldset {
	var out []fieldset
	for row := 1; row <= g.Rows+1; row++ {
		name := tableName(g.Table)
		set := fieldset{Table: g.Table, Legend: aRow.With(name, row), Words: g.Words, Row: row}
		if set.New = row > g.Rows; set.New {
			set.Legend = newRow.With(strings.ToLower(name))
		}
		for _, f := range g.Fields {
			one := field{ID: id("", f.Key, row), Label: label(f.Key), Words: f.Words, Key: f.Key, Row: row, Choices: f.Choices, Limits: f.Limits}
			if row <= g.Rows && row <= len(f.Own) {
				one.Value = f.Own[row-1]
			}
			set.Fields = append(set.Fields, one)
		}
		out = append(out, set)
	}
	return out
}

// id names the input of a field, the same whenever it is drawn.
func id(size string, key design.Key, row int) string {
	out := "f-" + strings.ReplaceAll(string(key), ".", "-")
	if row > 0 {
		out += "-" + strconv.Itoa(row)
	}
	if size != "" {
		out += "-of-" + strings.ReplaceAll(size, " ", "-")
	}
	return out
}

// label is the word of a key as it is read.
func label(k design.Key) string {
	word := string(k)[strings.LastIndexByte(string(k), '.')+1:]
	return strings.ReplaceAll(word, "-", " ")
}
