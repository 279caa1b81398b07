package printer

import (
	"bytes"
	"errors"
	"fmt"
	"maps"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"github.com/pelletier/go-toml/v2"

	"rodsheet/geometry/measure"
	"rodsheet/templates/wording"
)

// version is that of the file. It grows when an older program would misread
// what a newer one writes.
const version = 1

const (
	heading = "# Printers that were measured on the calibration rectangle: sides and diagonals\n" +
		"# as printed, in the unit named. The diagonal from the lower left comes first.\n" +
		"# The program writes this file anew: notes of your own are not kept.\n"
	// A file that was cut short may still be good TOML, so it ends in a line
	// of its own.
	ending = "# end of printers"
)

// The file as TOML. Pointers tell what is missing from what is 0.
type (
	fileTOML struct {
		Version  int                  `toml:"version"`
		Printers map[string]entryTOML `toml:"printers"`
	}
	entryTOML struct {
		Unit      string    `toml:"unit"`
		Diagonals []float64 `toml:"diagonals"`
		Across    *float64  `toml:"across"`
		Along     *float64  `toml:"along"`
	}
)

// encode writes the records in the order of their names.
func encode(records map[string]Record) []byte {
	var b bytes.Buffer
	fmt.Fprintf(&b, "%sversion = %d\n", heading, version)
	for _, name := range slices.Sorted(maps.Keys(records)) {
		r := records[name]
		fmt.Fprintf(&b, "\n[printers.%s]\nunit = %q\n", name, r.Unit)
		if r.Skewed() {
			fmt.Fprintf(&b, "diagonals = [%s, %s]\n", figure(r.Diagonals[0], r.Unit), figure(r.Diagonals[1], r.Unit))
		}
		fmt.Fprintf(&b, "across = %s\nalong = %s\n", figure(r.Across, r.Unit), figure(r.Along, r.Unit))
	}
	fmt.Fprintf(&b, "\n%s\n", ending)
	return b.Bytes()
}

// figure writes mm in unit u.
func figure(mm float64, u measure.Unit) string {
	return strconv.FormatFloat(six(mm/unitSize(u)), 'f', -1, 64)
}

// six rounds to six decimals, which is what the file holds.
func six(v float64) float64 { return math.Round(v*1e6) / 1e6 }

// rounded returns the record as the file gives it back, so that what was
// checked is what is kept.
func (r Record) rounded() Record {
	mm := unitSize(r.Unit)
	for _, v := range []*float64{&r.Across, &r.Along, &r.Diagonals[0], &r.Diagonals[1]} {
		*v = six(*v/mm) * mm
	}
	return r
}

func unitSize(u measure.Unit) float64 {
	if u == measure.Inch {
		return measure.MillimetresPerInch
	}
	return 1
}

// decode reads what encode writes, and no more but the byte order mark that
// some editors put before it: the reason for a refusal continues the sentence
// that begins with the name of the file.
func decode(data []byte) (map[string]Record, error) {
	data = bytes.TrimPrefix(data, []byte("\ufeff"))
	if err := checkVersion(data); err != nil {
		return nil, err
	}
	var f fileTOML
	if err := toml.NewDecoder(bytes.NewReader(data)).DisallowUnknownFields().Decode(&f); err != nil {
		return nil, decodeReason(err)
	}
	records := map[string]Record{}
	for _, name := range slices.Sorted(maps.Keys(f.Printers)) {
		r, err := f.Printers[name].record()
		if err == nil {
			err = CheckName(name)
		}
		if err != nil {
			line, _ := wording.Fault(err, measure.Millimetre)
			return nil, fmt.Errorf("has a bad printer, %.40q: %s", name, line)
		}
		records[name] = r
	}
	if !strings.HasSuffix(strings.TrimRight(string(data), " \t\r\n"), ending) {
		return nil, fmt.Errorf("is cut short: its last line is not %q", ending)
	}
	return records, nil
}

// checkVersion looks at the version alone, since a newer file may hold what
// this program does not know.
func checkVersion(data []byte) error {
	var f struct {
		Version *int64 `toml:"version"`
	}
	if err := toml.Unmarshal(data, &f); err != nil {
		return decodeReason(err)
	}
	switch {
	case f.Version == nil:
		return errors.New("names no version and is not a file of rodsheet")
	case *f.Version > version:
		return fmt.Errorf("is of version %d, from a newer rodsheet; this one knows version %d", *f.Version, version)
	case *f.Version < version:
		return fmt.Errorf("is of version %d, which never was; this rodsheet knows version %d", *f.Version, version)
	}
	return nil
}

// decodeReason says where the file is no TOML or holds an unknown key. The
// words of the TOML reader speak of Go and are left out.
func decodeReason(err error) error {
	var unknown *toml.StrictMissingError
	var bad *toml.DecodeError
	switch {
	case errors.As(err, &unknown) && len(unknown.Errors) > 0:
		line, _ := unknown.Errors[0].Position()
		return fmt.Errorf("holds an unknown key, %.60q, on line %d", strings.Join(unknown.Errors[0].Key(), "."), line)
	case errors.As(err, &bad):
		line, _ := bad.Position()
		return fmt.Errorf("cannot be read at line %d", line)
	}
	return errors.New("cannot be read")
}

func (e entryTOML) record() (Record, error) {
	if e.Across == nil || e.Along == nil {
		return Record{}, errors.New("across or along is missing")
	}
	u, err := measure.ParseUnit(e.Unit)
	if err != nil {
		said, _ := wording.Fault(err, measure.Millimetre)
		return Record{}, fmt.Errorf("unit %s", said)
	}
	mm := unitSize(u)
	r := Record{Unit: u, Across: *e.Across * mm, Along: *e.Along * mm}
	switch len(e.Diagonals) {
	case 0:
	case 2:
		r.Diagonals = [2]float64{e.Diagonals[0] * mm, e.Diagonals[1] * mm}
	default:
		return Record{}, fmt.Errorf("%d diagonals, not 2", len(e.Diagonals))
	}
	r = r.rounded()
	return r, r.Check()
}

// longestName is the most characters of the name of a printer.
const longestName = 40

// CheckName refuses what cannot name a printer: names go into files, on
// sheets and on command lines as they are. None is kept for no printer.
func CheckName(name string) error {
	switch n := len([]rune(name)); {
	case n > longestName:
		return &NameError{fmt.Sprintf("a name of %d characters must be at most %d", n, longestName)}
	case !regexp.MustCompile(`^[A-Za-z0-9_-]+$`).MatchString(name) || strings.HasPrefix(name, "-"):
		return &NameError{fmt.Sprintf("%.40q cannot name a printer", name)}
	case name == None:
		return &NameError{fmt.Sprintf("%q stands for no printer", None)}
	}
	return nil
}

// None is the name that stands for no correction.
const None = "none"

// A NameError says that a name is no name for a printer.
type NameError struct{ reason string }

func (e *NameError) Error() string { return e.reason }

// Hint says what a name may be.
func (e *NameError) Hint() string {
	return "use letters, digits, - and _, and begin with no -, like bench or office_2"
}
