package main

import "rodsheet/templates"

func scaleCommand() command {
	return command{
		name:    "scale",
		summary: "a sheet to prove that the printer is true",
		about: `Prints the calibration square and the rules alone. Measure them before any
template goes near the wood.`,
		examples: []example{
			{"rodsheet scale", "on A4"},
			{"rodsheet scale --units in", "on letter paper, in inches"},
			{"rodsheet scale --paper a3 --title bench", "on A3, with a name on the sheet"},
		},
		read: func(*values) maker { return single(templates.Scale) },
	}
}
