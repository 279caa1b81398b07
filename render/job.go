package render

import (
	"math"
	"runtime"
	"slices"
	"sync"
	"sync/atomic"

	"rodsheet/geometry"
	"rodsheet/templates"
)

// A laidJob is a job cut and packed in one manner.
type laidJob struct {
	laids []*laid
	items []item
	bins  []*bin
	packer
	surveys []survey
}

// layJob lays one job, behind the calibration square where it comes first, in
// the manner that takes the fewest sheets.
func (l Layout) layJob(job templates.Job, first bool) (laidJob, error) {
	clear := l.clear()
	if l.Paper.Whole {
		clear = wholeSize(job)
	}
	j := laidJob{packer: packer{[2]geometry.Point{clear, clear}}}
	if l.turns() {
		j.size[1] = l.onSide().clear()
	}
	if err := j.survey(job.Drawings, l); err != nil {
		return laidJob{}, err
	}
	if first {
		j.items = append(j.items, item{lay(templates.Calibration(l.Unit), stance{}, clear, l.Overlap).tiles()[0].block()})
	}
	var best laidJob
	for _, m := range l.manners() {
		k, err := j.layIn(m, job, l)
		if err != nil {
			return laidJob{}, err
		}
		if best.bins == nil || len(k.bins) < len(best.bins) {
			best = k
		}
		if best.ordinary() || len(best.bins) == 1 {
			break // no manner differs, or none can do better
		}
	}
	for _, p := range best.laids {
		p.register()
	}
	return best, nil
}

// survey looks at every drawing by itself, each in its own goroutine.
func (j *laidJob) survey(drawings []templates.Drawing, l Layout) error {
	for _, d := range drawings {
		c := cutter{d, l.Overlap, j.size}
		if n := c.filled(); n > l.MaxSheets {
			return tooMany(n, l.MaxSheets)
		}
		j.surveys = append(j.surveys, survey{cutter: c})
	}
	each(len(drawings), func(i int) { j.surveys[i] = j.surveys[i].cutter.survey() })
	return nil
}

// each calls f with every number below n, several at a time.
func each(n int, f func(int)) {
	var next atomic.Int64
	var group sync.WaitGroup
	for range min(n, runtime.GOMAXPROCS(0)) {
		group.Go(func() {
			for i := int(next.Add(1)) - 1; i < n; i = int(next.Add(1)) - 1 {
				f(i)
			}
		})
	}
	group.Wait()
}

// ordinary reports whether every drawing stands whole on a sheet as it is,
// turned by quarters at most: it then does so in every manner.
func (j laidJob) ordinary() bool {
	for _, p := range j.laids {
		if p.rows*p.cols > 1 || p.turned || p.angle != 0 && p.angle != math.Pi/2 {
			return false
		}
	}
	return true
}

// layIn lays the job of j in one manner, behind the items it has.
func (j laidJob) layIn(m manner, job templates.Job, l Layout) (laidJob, error) {
	j.items = slices.Clip(j.items)
	if err := j.layDrawings(l, m); err != nil {
		return laidJob{}, err
	}
	for _, p := range panels(job, j.laids, l) {
		j.items = append(j.items, layPanel(p, columns(j.size[0].X), j.size[0])...)
	}
	j.bins = j.pack(j.items)
	return j, nil
}

// columns returns the widths of a column of words: half the sheet by
// preference, or what is left beside the calibration square.
func columns(clear float64) []float64 {
	half := (math.Min(clear, 190) - gap) / 2
	return []float64{half, math.Min(half, 62), math.Min(half, 50)}
}

// layDrawings turns and cuts every drawing and makes its blocks; one of a
// single tile may be packed in any shape it fits in.
func (j *laidJob) layDrawings(l Layout, m manner) error {
	sum := 0
	for _, v := range j.surveys {
		p := v.lay(m)
		p.addCrosses(checkStep(l.Unit))
		p.assess(l)
		j.laids = append(j.laids, p)
		if p.rows*p.cols == 1 {
			j.items = append(j.items, v.shapes(p, m))
			continue
		}
		if sum += p.large(j.size); sum > l.MaxSheets {
			return tooMany(sum, l.MaxSheets)
		}
		for _, t := range p.tiles() {
			j.items = append(j.items, item{t.block()})
		}
	}
	return nil
}

// shapes returns the blocks of a drawing of one tile, the one of p first.
func (v survey) shapes(p *laid, m manner) item {
	const most = 4 // shapes tried of a free drawing
	out := item{p.tiles()[0].block()}
	for _, s := range v.all {
		if s.stance == p.stance || s.turned != p.turned || s.rows*s.cols > 1 || len(out) == most || !m.allows(s.stance) {
			continue
		}
		q := s.copy()
		q.trust = p.trust
		out = append(out, q.tiles()[0].block())
	}
	return out
}

// panels returns the panels of the job and those the sheets add: how to tape
// up, how far to trust them, and what was noticed.
func panels(job templates.Job, laids []*laid, l Layout) []templates.Panel {
	out := append([]templates.Panel{}, job.Panels...)
	if p, ok := checkPanel(laids, l.Unit); ok {
		out = append(out, p)
	}
	if p, ok := accuracyPanel(laids, l); ok {
		out = append(out, p)
	}
	if len(job.Warnings) > 0 {
		out = append(out, templates.Panel{Heading: "note", Text: job.Warnings})
	}
	return out
}
