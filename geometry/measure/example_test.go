package measure_test

import (
	"errors"
	"fmt"

	"rodsheet/geometry/measure"
)

func ExampleQuantity_Text() {
	for _, q := range []measure.Quantity{
		measure.Length(641.35),
		measure.Length(29.34),
		measure.Angle(measure.Radians(9.4623)),
		measure.Area(4156.8),
		measure.Mass(15),
	} {
		fmt.Println(q.Text(measure.Millimetre), "=", q.Text(measure.Inch))
	}
	// Output:
	// 641.35 mm = 25 1/4 in
	// 29.34 mm = 1 5/32 in (1.155)
	// 9.46° = 9.46°
	// 4156.8 mm² = 6.44 sq in
	// 15 kg = 33.1 lb (15 kg)
}

func ExampleParseLength() {
	for _, s := range []string{"64cm", `2' 1 1/4"`, "25 1/4", "1,250"} {
		mm, err := measure.ParseLength(s, measure.Millimetre)
		var p *measure.ParseError
		if errors.As(err, &p) {
			fmt.Println(p)
			fmt.Println("  hint:", p.Hint.ID, p.Hint.Args)
			continue
		}
		fmt.Println(measure.Length(mm).Text(measure.Millimetre))
	}
	// Output:
	// 640 mm
	// 641.35 mm
	// "25 1/4": two-ways 25.25 mm 25 1/4 in (641.35 mm)
	//   hint: either [25 1/4in 25.25 mm]
	// "1,250": two-ways 1.250 1250
	//   hint: no-thousands []
}

func ExampleBelow() {
	err := measure.Below("taper.foot", measure.Length(50), "taper.top", measure.Length(45), "")
	fmt.Println(err)
	// Output:
	// taper.foot 50 mm: not < taper.top, 45 mm
}
