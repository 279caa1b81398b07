package main

import (
	"encoding/json"
	"errors"
	"math"
	"strings"
	"testing"

	"rodsheet/geometry"
	"rodsheet/geometry/measure"
	"rodsheet/render"
	"rodsheet/templates"
)

func TestDecimal(t *testing.T) {
	for v, want := range map[float64]string{
		0:                     "0",
		math.Copysign(0, -1):  "0",
		-1e-12:                "0",
		14.5:                  "14.5",
		-640:                  "-640",
		100:                   "100",
		1.0 / 3:               "0.333333333",
		1e-9:                  "0.000000001",
		123456789012345678900: "123456789012345683968",
	} {
		got, err := json.Marshal(decimal(v))
		if err != nil || string(got) != want {
			t.Errorf("decimal(%v) = %s, %v; want %s", v, got, err, want)
		}
	}
	for _, v := range []float64{math.NaN(), math.Inf(1), math.Inf(-1)} {
		if got, err := json.Marshal(decimal(v)); err == nil {
			t.Errorf("decimal(%v) = %s, want an error", v, got)
		}
	}
}

func TestJSON(t *testing.T) {
	figure := func(name string, q measure.Quantity) templates.Figure { return templates.Figure{Name: name, Value: q} }
	for _, test := range []struct {
		name   string
		job    templates.Job
		placed []render.Placement
		want   string
	}{
		{"nothing is empty, not null", templates.Job{}, nil, `{"figures":[],"pages":[],"bounds":{"sheets":0,"least":0,"tiles":[]},"warnings":[]}`},
		{
			"all of it",
			templates.Job{
				Figures:  []templates.Figure{figure("slope", measure.Angle(math.Pi/2)), figure("1 in", measure.Number(0.5))},
				Warnings: []string{"a < b & \"c\""},
			},
			[]render.Placement{{Sheet: 2, Template: "face", Row: 1, Column: 3, ToPage: geometry.Affine{A: 0, B: 1, C: -1, D: 0, E: 2.5, F: -7}}},
			`{"figures":[{"name":"slope","value":90,"unit":"deg"},{"name":"1 in","value":0.5,"unit":""}],` +
				`"pages":[{"page":2,"template":"face","row":1,"column":3,"to_page":[0,1,-1,0,2.5,-7]}],"bounds":{"sheets":0,"least":0,"tiles":[]},` +
				`"warnings":["a < b & \"c\""]}`,
		},
	} {
		var b strings.Builder
		if err := writeJSON(&b, pack{job: test.job, warnings: test.job.Warnings}, test.placed, render.Bound{}); err != nil || b.String() != test.want+"\n" {
			t.Errorf("%s: got %s, %v; want %s", test.name, b.String(), err, test.want)
		}
	}

	var b strings.Builder
	err := writeJSON(&b, pack{job: templates.Job{Figures: []templates.Figure{figure("bad", measure.Length(math.NaN()))}}}, nil, render.Bound{})
	if err == nil || errors.As(err, new(refusal)) || b.Len() > 0 {
		t.Errorf("NaN: got %q, %v; want an error of the system and no output", b.String(), err)
	}
}

func TestFigureTable(t *testing.T) {
	got := figureTable([]templates.Figure{
		{Name: "edge length", Value: measure.Length(25.4)},
		{Name: "angle", Value: measure.Angle(measure.Radians(60))},
	}, measure.Inch)
	if want := "edge length  1 in\nangle        60°\n"; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
}
