package design

// Nearest returns the known word that is nearest to the one given, or nothing
// where none is near enough to be a slip.
func Nearest(word string, known []string) string {
	best, least := "", 1+min(3, max(1, len(word)/3))
	for _, k := range known {
		if d := distance(word, k); d < least {
			best, least = k, d
		}
	}
	return best
}

func didYouMean(word string, known []string) string {
	if best := Nearest(word, known); best != "" {
		return didMean.With(best)
	}
	return ""
}

// farWord is longer than any word that is looked for.
const farWord = 40

// distance returns the number of letters to put in, take out, change or swap
// with their neighbour to make a out of b (optimal string alignment).
func distance(a, b string) int {
	if len(a) > farWord || len(b) > farWord {
		return farWord
	}
	var d [farWord + 1][farWord + 1]int
	for i := range len(a) + 1 {
		for j := range len(b) + 1 {
			switch {
			case i == 0 || j == 0:
				d[i][j] = i + j
			case a[i-1] == b[j-1]:
				d[i][j] = d[i-1][j-1]
			default:
				d[i][j] = 1 + min(d[i-1][j-1], d[i-1][j], d[i][j-1])
			}
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				d[i][j] = min(d[i][j], d[i-2][j-2]+1)
			}
		}
	}
	return d[len(a)][len(b)]
}
