package pdf

import (
	"bytes"
	"errors"
	"strconv"
)

// preferences ask the print dialogue for actual size, for the tray that holds
// the sheet, and for one side of the paper. PrintScaling came with PDF 1.6
// and the other two with 1.7 (ISO 32000-1, table 150, from memory), hence the
// version. Not every viewer follows them.
const preferences = "/Version /1.7\n/ViewerPreferences <</PrintScaling /None /PickTrayByPDFSize true /Duplex /Simplex>>\n"

// addToCatalog inserts entries at the end of the catalogue of a file that has
// it as its last object, straight before the cross-reference table, as gofpdf
// writes it. No object moves; only the table does, and with it the number
// that says where it is.
func addToCatalog(file []byte, entries string) ([]byte, error) {
	const (
		catalogEnd = ">>\nendobj\n"
		mark       = "startxref\n"
		end        = "\n%%EOF\n"
	)
	var body, digits []byte
	found := false
	if at := bytes.LastIndex(file, []byte(mark)); at >= 0 {
		body = file[:at+len(mark)]
		digits, found = bytes.CutSuffix(file[len(body):], []byte(end))
	}
	if !found {
		return nil, errors.New("the file has no startxref")
	}
	table, err := strconv.ParseUint(string(digits), 10, 32)
	if err != nil || table > uint64(len(body)) ||
		!bytes.HasPrefix(file[table:], []byte("xref\n")) || !bytes.HasSuffix(file[:table], []byte(catalogEnd)) {
		return nil, errors.New("the catalogue is not the last object of the file")
	}
	cut := int(table) - len(catalogEnd)
	out := make([]byte, 0, len(file)+len(entries)+4)
	out = append(out, body[:cut]...)
	out = append(out, entries...)
	out = append(out, body[cut:]...)
	out = strconv.AppendInt(out, int64(table)+int64(len(entries)), 10)
	return append(out, end...), nil
}
