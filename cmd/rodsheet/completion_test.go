package main

import (
	"os"
	"strings"
	"testing"

	"rodsheet/render/readback"
)

// typed are beginnings of command lines, the last word of each unfinished, with what
// has to be offered for it and what must not.
var typed = []struct{ line, offered, not string }{
	{"ta", "taper", "table.toml"},
	{"p", "piece picture printer", "angle"},
	{"--", "--help --version", "taper"},
	{"lap --uni", "--units", "--kerf"},
	{"lap --units ", "mm in", "--kerf"},
	{"lap --width ", "", "table.toml --other"},
	{"taper --faces o", "one opposite", "four"},
	{"scale --paper ta", "tabloid", "table.toml letter"},
	{"scale --paper=ta", "tabloid", "table.toml letter"},
	{"check tab", "table.toml", "--units"},
	{"check ", "table.toml sub blanks.toml", "--units"},
	{"scale -o t", "table.toml text", "sub --out"},
	{"piece --for b", "buying bench", "record"},
	{"help l", "lap lengths", "taper"},
	{"completion z", "zsh", "fish"},
}

// completers hold how a shell is run that reads the script from FILE and prints what
// it offers for each line, a form feed behind each.
var completers = map[string][]string{
	"bash": {"--norc", "-c", `source "$1"; shift
		for line; do
			COMP_WORDS=(${line//=/ = }) # bash parts words there too
			[[ $line != *" " ]] || COMP_WORDS+=("")
			COMP_CWORD=$((${#COMP_WORDS[@]} - 1))
			_rodsheet
			printf '%s\n' "${COMPREPLY[@]}" $'\f'
		done`, "bash", "FILE"},
	"fish": {"--no-config", "-c", `source $argv[1]
		for line in $argv[2..-1]; complete -C $line | string split -f 1 \t; printf '\f'; end`, "FILE"},
	// zsh completes on a screen only, so it gets one of its own, where the Tab key is
	// pressed behind each line.
	"zsh": {"-f", "-c", `zmodload zsh/zpty; zpty z zsh -f -i
		zpty -w z "autoload -Uz compinit; compinit -u -D; source ${(q)1}; PS1=; zstyle ':completion:*' menu no
			show() { print -r -- \"<\$BUFFER>\" }; zle -N show; bindkey '^X' show; stty -echo; print BE''GUN"
		zpty -r z out '*BEGUN*'; shift
		for line; do
			zpty -w -n z "$line"$'\t\x18'
			zpty -r z out '*<rodsheet*>*'
			print -r -- "${out//$line /}"$'\f'
			zpty -w -n z $'\x15'
		done
		zpty -d z`, "zsh", "FILE"},
}

// Every shell that is installed completes as a maker would want. PowerShell is not
// among them: its script is read as text only.
func TestCompletion(t *testing.T) {
	var lines []string
	for _, test := range typed {
		lines = append(lines, "rodsheet "+test.line)
	}
	for shell, args := range completers {
		t.Run(shell, func(t *testing.T) {
			if shell == "zsh" && testing.Short() {
				t.Skip("it takes seconds to start")
			}
			t.Chdir(t.TempDir())
			for _, name := range []string{"table.toml", "with blanks.toml", "text"} {
				done(t, os.WriteFile(name, nil, 0o600))
			}
			done(t, os.Mkdir("sub", 0o700))
			all := strings.Split(readback.Run(t, []byte(completion(shell)), "script", shell, append(args, lines...)...), "\f")
			for i, test := range typed {
				for _, want := range strings.Fields(test.offered) {
					if !strings.Contains(all[i], want) {
						t.Errorf("%q: no %s in %q", test.line, want, all[i])
					}
				}
				for _, not := range strings.Fields(test.not) {
					if strings.Contains(all[i], not) {
						t.Errorf("%q: %s in %q", test.line, not, all[i])
					}
				}
			}
		})
	}
}

// The scripts leave nothing out that the help has. For PowerShell this is all that is
// tested: it is not run.
func TestCompletionIsWhole(t *testing.T) {
	for _, shell := range shells {
		script := completion(shell)
		want := map[string]bool{}
		for _, c := range commands() {
			want[c.name] = true
			for _, f := range c.all() {
				want[f.name] = true
				for _, word := range f.known() {
					want[word] = true
				}
			}
		}
		for word := range want {
			if !strings.Contains(script, word) {
				t.Errorf("%s: no %s", shell, word)
			}
		}
	}
	if script := completion("powershell"); strings.Count(script, "{") != strings.Count(script, "}") || !strings.Contains(script, "the file''s own") {
		t.Errorf("PowerShell: braces or quotes do not pair in\n%s", script)
	}
}

// Whatever is offered for a flag is accepted with the first example of its command.
func TestChoicesAreAccepted(t *testing.T) {
	if testing.Short() {
		t.Skip("prints everything, one command after another")
	}
	designed := read(t, "../../examples/window-seat.toml")
	t.Chdir(t.TempDir())
	for _, c := range commands() {
		flags := c.flags
		if c.name == "scale" { // for all that have the common ones
			flags = c.all()
		}
		for _, f := range flags {
			for _, word := range f.known() {
				if c.design {
					done(t, os.WriteFile("table.toml", []byte(designed), 0o600))
				}
				line := strings.TrimPrefix(c.examples[0].line, "rodsheet ") + " --" + f.name + " " + word
				if c.name == "printer" { // its measures are of one unit
					line = "printer --" + f.name + " " + word
				}
				if status, _, errs := start(t.Context(), strings.Fields(line)...); status != 0 {
					t.Errorf("%q: status %d, %s", line, status, errs)
				}
				os.Remove("table.toml")
			}
		}
	}
}
