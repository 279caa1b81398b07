package main

import (
	"cmp"
	"encoding/json"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"rodsheet/geometry"
	"rodsheet/geometry/measure"
	"rodsheet/render/readback"
	"rodsheet/templates/piece/design"
)

// promised is how near every stroke of a written file stands to where it
// should, in mm.
const promised = 0.01

// A printed job is what a command wrote, read back by PDFium, with the places
// of its templates as the JSON gives them.
type printed struct {
	pages  []readback.Page
	places []placedTemplate
}

type placedTemplate struct {
	Page     int        `json:"page"`
	Template string     `json:"template"`
	ToPage   [6]float64 `json:"to_page"`
}

func printJob(t *testing.T, args ...string) printed {
	t.Helper()
	name := filepath.Join(t.TempDir(), "job.pdf")
	places := placesOf(t, name, args)
	return printed{must(readback.PDF(must(os.ReadFile(name))(t)))(t).Pages, places}
}

// printSVG is the same of SVG files, one for each sheet.
func printSVG(t *testing.T, args ...string) printed {
	t.Helper()
	dir := t.TempDir()
	out := printed{places: placesOf(t, filepath.Join(dir, "job.svg"), args)}
	names := must(filepath.Glob(filepath.Join(dir, "*.svg")))(t)
	slices.SortFunc(names, func(a, b string) int { return cmp.Or(len(a)-len(b), strings.Compare(a, b)) }) // numbers are not padded
	for _, name := range names {
		d := must(readback.SVG(must(os.ReadFile(name))(t)))(t)
		out.pages = append(out.pages, readback.Page{Width: d.Width, Height: d.Height, Strokes: d.Strokes})
	}
	return out
}

func placesOf(t *testing.T, name string, args []string) []placedTemplate {
	t.Helper()
	status, out, errs := start(t.Context(), append(args, "--json", "-o", name)...)
	if status != 0 {
		t.Fatalf("%q: status %d, %s", args, status, errs)
	}
	var said struct {
		Pages []placedTemplate `json:"pages"`
	}
	done(t, json.Unmarshal([]byte(out), &said))
	return said.Pages
}

func (p placedTemplate) toPage(x, y float64) geometry.Point {
	m := p.ToPage
	return geometry.Affine{A: m[0], B: m[1], C: m[2], D: m[3], E: m[4], F: m[5]}.Apply(geometry.Pt(x, y))
}

// shows reports whether a page has a straight line all the way along s.
func shows(p readback.Page, s geometry.Segment) bool {
	const steps = 40
	for k := 0; k <= steps; k++ {
		if nearestLine(p, s.A.Lerp(s.B, float64(k)/steps)) > promised {
			return false
		}
	}
	return true
}

func nearestLine(p readback.Page, at geometry.Point) float64 {
	best := math.Inf(1)
	for _, stroke := range p.Strokes {
		for _, s := range stroke.Segments() {
			best = math.Min(best, s.Distance(at))
		}
	}
	return best
}

// wants checks that every template of that name shows the lines, given in
// template mm. A line is looked for whole: for templates of one tile.
func (p printed) wants(t *testing.T, template string, lines ...[4]float64) {
	t.Helper()
	found := false
	for _, place := range p.places {
		if place.Template != template {
			continue
		}
		found = true
		for _, l := range lines {
			s := geometry.Segment{A: place.toPage(l[0], l[1]), B: place.toPage(l[2], l[3])}
			if !shows(p.pages[place.Page-1], s) {
				t.Errorf("%s, sheet %d: no line %.3f", template, place.Page, l)
			}
		}
	}
	if !found {
		t.Errorf("no template %q among %v", template, p.places)
	}
}

var truthPapers = []struct {
	args          []string
	width, height float64
}{
	{[]string{"--paper", "a4", "--units", "mm"}, 210, 297},
	{[]string{"--paper", "a4", "--units", "in"}, 210, 297},
	{[]string{"--paper", "letter", "--units", "mm"}, 215.9, 279.4},
	{[]string{"--paper", "letter", "--units", "in"}, 215.9, 279.4},
}

// The figures here are worked out from the arguments alone.
func TestWrittenLinesStandAtTheirFigures(t *testing.T) {
	t.Parallel()
	sin60, tan60, tan12 := math.Sqrt(3)/2, math.Sqrt(3), math.Tan(12*math.Pi/180)
	cos12 := math.Cos(12 * math.Pi / 180)
	for _, paper := range truthPapers {
		t.Run(strings.Join(paper.args, " "), func(t *testing.T) {
			with := func(args ...string) printed { return printJob(t, append(args, paper.args...)...) }

			lap := with("lap", "--width", "28mm", "--other", "28mm", "--depth", "36mm", "--angle", "60", "--kerf", "3.2mm", "--at", "100mm", "--full")
			edge, shift := 28/sin60, 28/tan60
			lap.wants(t, "lap, right hand, cut face",
				[4]float64{100, 0, 100 + shift, 28}, [4]float64{100 + edge, 0, 100 + edge + shift, 28})

			angle := with("angle", "30", "--base", "200mm", "--full")
			angle.wants(t, "angle 30°, right hand", [4]float64{0, 0, 200, 0}, [4]float64{0, 0, 200, 200 / tan60})

			bridle := with("bridle", "--width", "28mm", "--depth", "36mm", "--angle", "12", "--leg", "38mm", "--full")
			along := 36 / cos12
			bridle.wants(t, "leg, left hand, ring side", [4]float64{along, 0, along - 38*tan12, 38})

			// Leans of 4 and 3 in 12 make a sightline of 3 aside to 4 ahead.
			sightline := with("sightline", "--rake", "4:12", "--splay", "3:12", "--in", "60mm")
			sightline.wants(t, "slab from above, right hand, sightline", [4]float64{-30, 100, 30, 20}, [4]float64{-50, 0, 50, 0})
			sightline.wants(t, "slab from above, left hand, sightline", [4]float64{30, 100, -30, 20})

			// The sides of a dodecahedron, whose faces have corners of 108°.
			hopper := with("hopper", "--sides", "5", "--slope", "63.4349488")
			hopper.wants(t, "gauge: bevel 72°", [4]float64{0, 0, 100, 100 * math.Tan(math.Pi/10)})

			segments := with("segments", "--pieces", "6", "--outer", "120mm", "--inner", "60mm", "--shape", "flats", "--kerf", "3mm")
			segments.wants(t, "piece of the ring", [4]float64{60 / tan60, 0, 30 / tan60, 30}, [4]float64{-60 / tan60, 0, 60 / tan60, 0})

			for _, job := range []printed{lap, angle, bridle, sightline, hopper, segments, with("scale")} {
				job.wantsScale(t, paper.width, paper.height, squareOf(paper.args))
			}
		})
	}
}

// squareOf returns the side in mm of the calibration square: 100 mm or 4 in.
func squareOf(args []string) float64 {
	if slices.Contains(args, "in") {
		return 4 * 25.4
	}
	return 100
}

// wantsScale checks what every sheet proves itself by: its size, the two
// rules, and on the first sheet the square with its diagonals.
func (p printed) wantsScale(t *testing.T, width, height, square float64) {
	t.Helper()
	p.wants(t, "calibration square",
		[4]float64{0, 0, square, 0}, [4]float64{square, 0, square, square}, [4]float64{square, square, 0, square},
		[4]float64{0, square, 0, 0}, [4]float64{0, 0, square, square}, [4]float64{square, 0, 0, square})
	for i, page := range p.pages {
		upright := math.Abs(page.Width-width) < promised && math.Abs(page.Height-height) < promised
		onSide := math.Abs(page.Width-height) < promised && math.Abs(page.Height-width) < promised
		if !upright && !onSide {
			t.Errorf("sheet %d is %.3f × %.3f mm, want %.1f × %.1f", i+1, page.Width, page.Height, width, height)
		}
		for _, way := range []geometry.Point{{X: 1}, {Y: 1}} {
			if err := checkRule(page, way, square > 100); err != nil {
				t.Errorf("sheet %d: %v", i+1, err)
			}
		}
	}
}

// checkRule wants one line of 4 in along way, with a mark at 100 mm on its left and
// one at 4 in on its right, or the other way round where inches are set.
func checkRule(page readback.Page, way geometry.Point, inches bool) error {
	const fourInches, mark = 101.6, 1.0
	n := 0
	for _, stroke := range page.Strokes {
		for _, s := range stroke.Segments() {
			along := s.B.Sub(s.A).Dot(way)
			if math.Abs(s.Length()-fourInches) > promised || math.Abs(along-fourInches) > promised {
				continue
			}
			left := way.Perp().Mul(mark)
			if inches {
				left = left.Mul(-1)
			}
			metric, imperial := s.A.Add(way.Mul(100)), s.A.Add(way.Mul(fourInches))
			if shows(page, geometry.Segment{A: metric, B: metric.Add(left)}) &&
				shows(page, geometry.Segment{A: imperial, B: imperial.Sub(left)}) {
				n++
			}
		}
	}
	if n != 1 {
		return fmt.Errorf("%d true rules along %v, want 1", n, way)
	}
	return nil
}

// wantsWhole checks that every point is on a line of some tile of the template.
func (p printed) wantsWhole(t *testing.T, template string, points []geometry.Point) {
	t.Helper()
	for _, at := range points {
		best := math.Inf(1)
		for _, place := range p.places {
			if place.Template == template {
				best = math.Min(best, nearestLine(p.pages[place.Page-1], place.toPage(at.X, at.Y)))
			}
		}
		if best > promised {
			t.Errorf("%s: point %.3f is %.4f mm from any line", template, at, best)
			return
		}
	}
}

// A taper over several sheets: cut and reference edge run from end to end.
func TestTaperOverSheetsIsWhole(t *testing.T) {
	t.Parallel()
	for _, paper := range truthPapers {
		job := printJob(t, append([]string{"taper", "--length", "640mm", "--top", "45mm", "--foot", "28mm", "--start", "110mm", "--full"}, paper.args...)...)
		for _, l := range [][4]float64{{110, 45, 640, 28}, {0, 0, 640, 0}, {0, 45, 110, 45}} {
			var points []geometry.Point
			for k := range 201 {
				points = append(points, geometry.Pt(l[0], l[1]).Lerp(geometry.Pt(l[2], l[3]), float64(k)/200))
			}
			job.wantsWhole(t, "taper, right hand, face", points)
		}
	}
}

// A top is turned as suits the sheets and is whole all round.
func TestTopOverSheetsIsWhole(t *testing.T) {
	t.Parallel()
	for _, paper := range truthPapers {
		job := printJob(t, append([]string{"top", "--diameter", "600mm", "--full"}, paper.args...)...)
		var points []geometry.Point
		for k := range 720 {
			sin, cos := math.Sincos(float64(k) * math.Pi / 360)
			points = append(points, geometry.Pt(300*cos, 300*sin))
		}
		job.wantsWhole(t, "top, outline", points)
		job.wantsScale(t, paper.width, paper.height, squareOf(paper.args))
	}
}

// A curve is drawn by chords and cut into tiles: what is read back stands on it from end
// to end. An ellipse is (a·cos t, b·sin t); the arc has a chord of 600 and a rise of
// 200, so its radius is 325; the four arcs are those of two circles through each
// other's centres, 200 at the ends and 400 at the sides up to 60°.
func TestCurvesOverSheetsAreWhole(t *testing.T) {
	t.Parallel()
	end := math.Asin(125.0/325) * 180 / math.Pi
	width := fmt.Sprintf("%.9fmm", 200*(4-math.Sqrt(3)))
	for i, paper := range truthPapers {
		for k, read := range []func(*testing.T, ...string) printed{printJob, printSVG} {
			if k > 0 && i > 0 {
				continue // what is laid is the same; one paper shows how it is written
			}
			with := func(args ...string) printed { return read(t, append(args, paper.args...)...) }
			with("arc", "--chord", "600mm", "--rise", "200mm").
				wantsWhole(t, "arc", along(0, -125, 325, 325, end, 180-end))
			with("oval", "--length", "900mm", "--width", "600mm").
				wantsWhole(t, "oval, quarter", along(0, 0, 450, 300, 0, 90))
			with("oval", "--length", "400mm", "--width", "150mm", "--full").
				wantsWhole(t, "oval, outline", along(0, 0, 200, 75, 0, 360))
			with("oval", "--length", "600mm", "--width", width, "--end-radius", "200mm").
				wantsWhole(t, "oval, quarter", slices.Concat(along(100, 0, 200, 200, 0, 60), along(0, -100*math.Sqrt(3), 400, 400, 60, 90)))
		}
	}
}

// along are points of an ellipse about (x, y), its half axes along x and y, between two
// angles in degrees.
func along(x, y, a, b, from, to float64) (points []geometry.Point) {
	for k := range 361 {
		sin, cos := math.Sincos((from + (to-from)*float64(k)/360) * math.Pi / 180)
		points = append(points, geometry.Pt(x+a*cos, y+b*sin))
	}
	return points
}

// The outline of a seat, of whatever shape, in PDF and SVG. That of a shield is a band round
// three circles: radius 30 at the corners of the front, 100 at the back. The normal n of
// the straight side between two of them, c apart, has n·c = 30 − 100.
func TestSeatsAreDrawnTrue(t *testing.T) {
	t.Parallel()
	text := string(must(design.Start(design.SeatKind, 3, measure.Millimetre))(t))
	c := geometry.Pt(-(180 - 30), 130-100-(30-130))
	n := math.Atan2(c.Y, c.X)*180/math.Pi - math.Acos((30-100)/c.Norm())*180/math.Pi
	for shape, want := range map[string][]geometry.Point{
		"diameter = 340": along(0, 0, 170, 170, 0, 360),
		"shape = \"oval\"\nwidth = 360\ndepth = 260": along(0, 0, 180, 130, 0, 360),
		"shape = \"shield\"\nwidth = 360\ndepth = 260\nback-width = 200\ncorner = 30": slices.Concat(
			along(150, -100, 30, 30, -90, n), along(0, 30, 100, 100, n, 180-n), along(-150, -100, 30, 30, 180-n, 270)),
	} {
		name := filepath.Join(t.TempDir(), "seat.toml")
		own := regexp.MustCompile(`(?m)^diameter = 340.*`).ReplaceAllString(text, shape)
		own = regexp.MustCompile(`(?m)^from-middle = (75|115).*`).ReplaceAllString(own, "from-middle = 60")
		done(t, os.WriteFile(name, []byte(own), 0o600))
		for _, read := range []func(*testing.T, ...string) printed{printJob, printSVG} {
			read(t, "piece", name, "--anyway", "--paper", "a4").wantsWhole(t, "underside", want)
		}
	}
}

// The examples are what their commands print, byte for byte.
func TestExamplesAreUpToDate(t *testing.T) {
	const folder = "../../examples"
	page := must(os.ReadFile(filepath.Join(folder, "README.md")))(t)
	dir := must(filepath.Abs(folder))(t)
	t.Chdir(t.TempDir())
	designs, _ := filepath.Glob(filepath.Join(dir, "*.toml"))
	for _, name := range designs {
		copyFile(t, name, filepath.Base(name))
	}
	made := 0
	for _, line := range strings.Split(string(page), "\n") {
		_, command, ok := strings.Cut(line, "| `rodsheet ")
		if !ok {
			continue
		}
		command, _, _ = strings.Cut(command, "`")
		args := shellWords(command)
		status, out, errs := start(t.Context(), args...)
		if status != 0 {
			t.Errorf("%s: status %d, %s", command, status, errs)
			continue
		}
		name := args[len(args)-1]
		sameFile(t, name, filepath.Join(dir, name))
		if wrote := fmt.Sprintf("wrote %s: %s sheet", name, strings.TrimSpace(strings.Split(line, "|")[2])); !strings.Contains(out, wrote) {
			t.Errorf("%s: printed %q, want %q", command, lastLine(out), wrote)
		}
		if text := strings.TrimSuffix(name, ".pdf") + ".txt"; strings.Contains(line, text) {
			done(t, os.WriteFile(text, []byte(out), 0o600))
			sameFile(t, text, filepath.Join(dir, text))
		}
		made++
	}
	if kept, _ := filepath.Glob(filepath.Join(dir, "*.pdf")); made == 0 || made != len(kept) {
		t.Errorf("%d commands for %d examples", made, len(kept))
	}
}

func lastLine(text string) string {
	lines := strings.Split(strings.TrimSpace(text), "\n")
	return lines[len(lines)-1]
}

func copyFile(t *testing.T, from, to string) {
	t.Helper()
	data, err := os.ReadFile(from)
	if err == nil {
		err = os.WriteFile(to, data, 0o600)
	}
	if err != nil {
		t.Fatal(err)
	}
}

func sameFile(t *testing.T, got, want string) {
	t.Helper()
	a, errA := os.ReadFile(got)
	b, errB := os.ReadFile(want)
	if errA != nil || errB != nil || string(a) != string(b) {
		t.Errorf("%s differs from the example kept: run its command in examples/", got)
	}
}

// shellWords splits a command line as a shell does one with double quotes.
func shellWords(line string) []string {
	var out []string
	for i, part := range strings.Split(line, `"`) {
		if i%2 == 1 {
			out = append(out, part)
		} else {
			out = append(out, strings.Fields(part)...)
		}
	}
	return out
}

// The same lines stand at the same figures in an SVG file.
func TestSVGLinesStandAtTheirFigures(t *testing.T) {
	t.Parallel()
	p := printSVG(t, "lap", "--width", "28", "--other", "28", "--depth", "36", "--angle", "60", "--kerf", "3.2", "--at", "100", "--full", "--paper", "whole")
	edge, shift := 56/math.Sqrt(3), 28/math.Sqrt(3)
	p.wants(t, "lap, right hand, cut face",
		[4]float64{100, 0, 100 + shift, 28}, [4]float64{100 + edge, 0, 100 + edge + shift, 28})
	p.wantsScale(t, p.pages[0].Width, p.pages[0].Height, 100)
}

// Every command on the smallest paper it takes, and on paper wider than high:
// no line and no letter reaches into the margin of 8 mm.
func TestWholeJobsKeepTheMargins(t *testing.T) {
	t.Parallel()
	const margin, pen = 8, 0.2
	for _, line := range []string{
		"angle 14.5 60 1:6",
		"taper --length 640mm --top 45mm --foot 28mm --start 110mm",
		"taper --length 640mm --top 45mm --foot 28mm --start 110mm --faces four",
		"lap --width 28mm --other 28mm --depth 36mm --angle 60 --at 155mm",
		"bridle --width 28mm --depth 36mm --angle 12 --leg 38mm",
		"mortise --width 22mm --depth 70mm --leg 40mm --splay 8 --rake 5 --upper 10mm",
		"dovetail --width 120mm --tail-board 14mm --tails 3 --slope 75",
		"top --diameter 600mm",
		"top --length 500mm --width 320mm --round 30mm",
		"sightline --rake 12 --splay 8 --height 430mm",
		"hopper --slope 78 --second 70 --ends butted",
		"segments --pieces 12 --outer 300mm --inner 240mm",
		"segments --pieces 12 --top 320mm --bottom 260mm --height 400mm --thickness 18mm",
		"scale",
	} {
		for unit, smallest := range map[string]string{"mm": "142mmx168mm", "in": "144mmx170mm"} {
			for _, paper := range []string{smallest, "240mmx165mm", "a4", "letter"} {
				job := printJob(t, append(strings.Fields(line), "--paper", paper, "--units", unit, "--max-sheets", "1000")...)
				for i, page := range job.pages {
					printable := geometry.Box(0, 0, page.Width, page.Height).Offset(pen - margin)
					for _, x := range page.Texts {
						if !printable.Holds(x.Box) {
							t.Errorf("%s on %s, %s: sheet %d: %q reaches to %.2f", line, paper, unit, i+1, x.String, x.Box)
						}
					}
					for _, s := range page.Strokes {
						if box := geometry.Bounds(s.Points...); !printable.Holds(box) {
							t.Errorf("%s on %s, %s: sheet %d: a line reaches to %.2f", line, paper, unit, i+1, box)
						}
					}
				}
			}
		}
	}
}

// Where inches are set a sheet gives millimetres twice only: on the second of its
// two rules, and beside the inches of a check length.
func TestInchesAsInches(t *testing.T) {
	metric, beside := regexp.MustCompile(`[0-9] ?mm\b|millimet`), regexp.MustCompile(`= [0-9.]+ mm$`)
	for _, args := range [][]string{
		{"scale"},
		{"angle", "14.5", "0.5"},
		{"lap", "--width", "1 1/8", "--other", "1", "--depth", "1 1/2", "--angle", "60", "--kerf", "1/8"},
		{"taper", "--length", "25", "--top", "1 3/4", "--foot", "1 1/8", "--start", "4"},
		{"bridle", "--width", "1 1/8", "--depth", "1 1/2", "--angle", "12", "--leg", "1 1/2"},
		{"mortise", "--width", "7/8", "--depth", "2 3/4", "--leg", "1 1/2", "--length", "1", "--haunch", "square", "--splay", "8"},
		{"dovetail", "--width", "5", "--tail-board", "1/2", "--pin-board", "3/4", "--tails", "4", "--lap", "1/8"},
		{"top", "--diameter", "22"},
		{"sightline", "--rake", "12", "--splay", "8", "--height", "17"},
		{"arc", "--chord", "36", "--rise", "3"},
		{"hopper", "--sides", "5", "--slope", "75"},
		{"oval", "--length", "36", "--width", "24", "--compass", "--inset", "1/2"},
		{"segments", "--pieces", "12", "--outer", "12", "--inner", "9", "--kerf", "1/8"},
		{"segments", "--pieces", "12", "--top", "12", "--bottom", "10", "--height", "15", "--thickness", "3/4"},
		{"piece", filepath.Join("..", "..", "examples", "plant-stand.toml")},
	} {
		if args[0] != "piece" {
			args = append(args, "--units", "in")
		}
		for i, page := range printJob(t, args...).pages {
			for _, x := range page.Texts {
				if metric.MatchString(x.String) && !strings.HasPrefix(x.String, "100 mm") && !beside.MatchString(x.String) {
					t.Errorf("%s, sheet %d: %q", args[0], i+1, x.String)
				}
			}
		}
	}
}
