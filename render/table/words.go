package table

import "rodsheet/templates/wording"

const continued wording.Text = "%s, continued"

func say(t wording.Text, args ...any) string { return t.With(args...) }
