package pdf

import (
	"bytes"
	"errors"
	"fmt"
	"slices"
	"strconv"
)

var errStrange = errors.New("the PDF library has written a file of another form than expected")

// rewrite passes every object of a file that gofpdf has written, in the order
// of the file, through change, and writes the cross-reference table anew for
// the lengths that come out. n is the number of the object.
func rewrite(file []byte, change func(n int, object []byte) ([]byte, error)) ([]byte, error) {
	table := bytes.LastIndex(file, []byte("\nxref\n0 ")) + 1
	trailer := bytes.LastIndex(file, []byte("\ntrailer\n")) + 1
	end := bytes.LastIndex(file, []byte("startxref\n"))
	if table == 0 || trailer < table || end < trailer {
		return nil, errStrange
	}
	offsets := offsets(file[table:trailer])
	order := make([]int, len(offsets))
	for i := range order {
		order[i] = i
	}
	slices.SortFunc(order, func(i, j int) int { return offsets[i] - offsets[j] })
	if len(order) == 0 || offsets[order[0]] < 0 || offsets[order[len(order)-1]] > table {
		return nil, errStrange
	}

	out := make([]byte, 0, len(file))
	out = append(out, file[:offsets[order[0]]]...)
	moved := make([]int, len(offsets))
	for k, i := range order {
		next := table
		if k+1 < len(order) {
			next = offsets[order[k+1]]
		}
		object := file[offsets[i]:next]
		if !bytes.HasPrefix(object, fmt.Appendf(nil, "%d 0 obj\n", i+1)) {
			return nil, errStrange
		}
		object, err := change(i+1, object)
		if err != nil {
			return nil, err
		}
		moved[i] = len(out)
		out = append(out, object...)
	}

	table = len(out)
	out = fmt.Appendf(out, "xref\n0 %d\n%010d 65535 f \n", len(moved)+1, 0)
	for _, at := range moved {
		out = fmt.Appendf(out, "%010d 00000 n \n", at)
	}
	out = append(out, file[trailer:end]...)
	return fmt.Appendf(out, "startxref\n%d\n%%%%EOF\n", table), nil
}

// offsets reads a cross-reference table: where object i + 1 begins; −1 where
// an entry is no number. Object 0 is none.
func offsets(table []byte) []int {
	const digits = 10
	var out []int
	for i, entry := range bytes.Split(bytes.TrimSuffix(table, []byte("\n")), []byte("\n")) {
		if i < 3 { // "xref", the count, object 0
			continue
		}
		at, err := strconv.Atoi(string(entry[:min(digits, len(entry))]))
		if err != nil {
			at = -1
		}
		out = append(out, at)
	}
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
