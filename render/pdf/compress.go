package pdf

import (
	"bytes"
	"compress/zlib"
	"errors"
	"fmt"
	"sort"
	"strconv"
)

// compressPages compresses what is drawn on each page of a file that gofpdf
// has written plain. The outcome is what gofpdf would write itself, but with
// one compressor for all pages: to make a new one takes longer than to use it.
// What is drawn on page i, counted from 1, is object 2i + 2.
func compressPages(file []byte, pages int) ([]byte, error) {
	table, offsets, err := crossReferences(file)
	if err != nil {
		return nil, err
	}
	z, err := zlib.NewWriterLevel(nil, zlib.BestSpeed)
	if err != nil {
		return nil, err
	}
	var packed bytes.Buffer
	var ends, shifts []int // an object from ends[i] on moves by shifts[i]
	out := make([]byte, 0, len(file)/2)
	at := 0 // what stands before is in out
	for i := 1; i <= pages; i++ {
		s, err := findStream(file, offsets, 2*i+2)
		if err != nil || s.dictionary < at {
			return nil, fmt.Errorf("what is drawn on page %d is not found", i)
		}
		packed.Reset()
		z.Reset(&packed)
		z.Write(file[s.begin:s.end]) // never fails: it goes to memory
		z.Close()
		out = append(out, file[at:s.dictionary]...)
		out = fmt.Appendf(out, "<</Filter /FlateDecode /Length %d%s", packed.Len(), streamBegins)
		out = append(out, packed.Bytes()...)
		at = s.end
		ends, shifts = append(ends, at), append(shifts, len(out)-at)
	}
	out = append(out, file[at:table]...)
	for i, o := range offsets {
		if k := sort.SearchInts(ends, o+1); k > 0 {
			offsets[i] += shifts[k-1]
		}
	}
	return appendTable(out, file[table:], offsets), nil
}

// A stream is an object that holds one: where its dictionary begins, and from
// where to where the stream itself runs.
type stream struct{ dictionary, begin, end int }

const (
	streamBegins = ">>\nstream\n"
	streamEnds   = "\nendstream\nendobj\n"
)

// findStream finds object n, whose dictionary holds its length alone.
func findStream(file []byte, offsets []int, n int) (stream, error) {
	wrong := fmt.Errorf("object %d holds no stream", n)
	if n >= len(offsets) || offsets[n] > len(file) {
		return stream{}, wrong
	}
	head := fmt.Sprintf("%d 0 obj\n", n)
	s := stream{dictionary: offsets[n] + len(head)}
	rest, ok := bytes.CutPrefix(file[offsets[n]:], []byte(head+"<</Length "))
	digits, _, more := bytes.Cut(rest, []byte(streamBegins))
	length, err := strconv.ParseUint(string(digits[:min(len(digits), 10)]), 10, 31)
	if !ok || !more || err != nil {
		return stream{}, wrong
	}
	s.begin = s.dictionary + len("<</Length ") + len(digits) + len(streamBegins)
	s.end = s.begin + int(length)
	if s.end > len(file) || !bytes.HasPrefix(file[s.end:], []byte(streamEnds)) {
		return stream{}, wrong
	}
	return s, nil
}

const (
	tableBegins = "xref\n0 "
	entryLength = len("0000000000 00000 n \n")
	tableEnds   = "trailer\n"
	fileEnds    = "\n%%EOF\n"
)

// crossReferences returns where the table of the objects begins and, by their
// numbers, where it says that they are. Object 0 is none.
func crossReferences(file []byte) (table int, offsets []int, err error) {
	wrong := errors.New("the file has no table of its objects")
	body, ok := bytes.CutSuffix(file, []byte(fileEnds))
	number, err := strconv.ParseUint(string(body[bytes.LastIndexByte(body, '\n')+1:]), 10, 31)
	if !ok || err != nil || number > uint64(len(file)) {
		return 0, nil, wrong
	}
	rest, ok := bytes.CutPrefix(file[number:], []byte(tableBegins))
	count, entries, _ := bytes.Cut(rest, []byte("\n"))
	n, err := strconv.ParseUint(string(count), 10, 31)
	if !ok || err != nil || n == 0 || n > uint64(len(entries)/entryLength) || !bytes.HasPrefix(entries[int(n)*entryLength:], []byte(tableEnds)) {
		return 0, nil, wrong
	}
	for e := range bytes.SplitSeq(entries[:int(n)*entryLength-1], []byte("\n")) {
		digits, _, _ := bytes.Cut(e, []byte(" "))
		o, err := strconv.ParseUint(string(digits), 10, 31)
		if err != nil {
			return 0, nil, wrong
		}
		offsets = append(offsets, int(o))
	}
	return int(number), offsets, nil
}

// appendTable ends a file with the table of its objects, and with what stood
// behind the table before.
func appendTable(file, tail []byte, offsets []int) []byte {
	table := len(file)
	file = fmt.Appendf(file, "%s%d\n%010d 65535 f \n", tableBegins, len(offsets), 0)
	for _, o := range offsets[1:] {
		file = fmt.Appendf(file, "%010d 00000 n \n", o)
	}
	trailer := tail[bytes.Index(tail, []byte(tableEnds)):]
	trailer = trailer[:bytes.LastIndexByte(trailer[:len(trailer)-len(fileEnds)], '\n')+1]
	file = append(file, trailer...)
	return append(strconv.AppendInt(file, int64(table), 10), fileEnds...)
}
