package pdf

import (
	"bytes"
	"cmp"
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"rodsheet/geometry/lists"
)

var errStrange = errors.New("the PDF library has written a file of another form than expected")

// rewrite passes every object of a file that gofpdf has written through change, several
// at a time, and writes the cross-reference table anew for the lengths that come out. n is
// the number of the object.
func rewrite(file []byte, change func(n int, object []byte) ([]byte, error)) ([]byte, error) {
	table := bytes.LastIndex(file, []byte("\nxref\n0 ")) + 1
	trailer := bytes.LastIndex(file, []byte("\ntrailer\n")) + 1
	end := bytes.LastIndex(file, []byte("startxref\n"))
	if table == 0 || trailer < table || end < trailer {
		return nil, errStrange
	}
	objects := tabled(file[table:trailer])
	at := 0
	for k, o := range objects {
		next := table
		if k+1 < len(objects) {
			next = objects[k+1].at
		}
		if o.at < at || next > table || !bytes.HasPrefix(file[o.at:next], fmt.Appendf(nil, "%d 0 obj\n", o.n)) {
			return nil, errStrange
		}
		objects[k].text, at = file[o.at:next], next
	}
	if at < table {
		return nil, errStrange
	}
	errs := make([]error, len(objects))
	lists.Each(len(objects), func(k int) { objects[k].text, errs[k] = change(objects[k].n, objects[k].text) })
	if err := cmp.Or(errs...); err != nil {
		return nil, err
	}
	out := make([]byte, 0, len(file))
	offsets := make([]int, len(objects)+1) // by number; object 0 is none
	out = append(out, file[:objects[0].at]...)
	for _, o := range objects {
		offsets[o.n] = len(out)
		out = append(out, o.text...)
	}
	table = len(out)
	out = fmt.Appendf(out, "xref\n0 %d\n%010d 65535 f \n", len(offsets), 0)
	for _, o := range offsets[1:] {
		out = fmt.Appendf(out, "%010d 00000 n \n", o)
	}
	out = append(out, file[trailer:end]...)
	return fmt.Appendf(out, "startxref\n%d\n%%%%EOF\n", table), nil
}

// An object has a number and a text, and stands somewhere in the file.
type object struct {
	n, at int
	text  []byte
}

// tabled reads a cross-reference table and returns its objects in the order of
// the file. An entry that is no number stands before the file.
func tabled(table []byte) []object {
	const digits, first = 10, 3 // before object 1: "xref", the count, object 0
	var out []object
	for i, entry := range strings.Split(strings.TrimSuffix(string(table), "\n"), "\n") {
		if i >= first {
			at, err := strconv.Atoi(entry[:min(digits, len(entry))])
			if err != nil {
				at = -1
			}
			out = append(out, object{n: i - first + 1, at: at})
		}
	}
	slices.SortFunc(out, func(a, b object) int { return a.at - b.at })
	return out
}

// preferences ask the print dialogue for actual size, for the tray that holds
// the sheet, and for one side of the paper. PrintScaling came with PDF 1.6
// and the other two with 1.7 (ISO 32000-1, table 150, from memory), hence the
// version. Not every viewer follows them.
const preferences = "/Version /1.7\n/ViewerPreferences <</PrintScaling /None /PickTrayByPDFSize true /Duplex /Simplex>>\n"

// withPreferences adds them to the catalogue, as gofpdf has no call for them.
// Other objects are left as they are.
func withPreferences(n int, object []byte) []byte {
	begins := fmt.Appendf(nil, "%d 0 obj\n<<\n/Type /Catalog\n", n)
	if !bytes.HasPrefix(object, begins) {
		return object
	}
	return slices.Concat(begins, []byte(preferences), object[len(begins):])
}
