package main

import (
	"cmp"
	"context"
	"embed"
	"strings"
	"text/template"

	"rodsheet/templates/wording"
)

// shells are those that a script can be written for.
var shells = []string{"bash", "zsh", "fish", "powershell"}

func completionCommand() command {
	return command{
		name:    "completion",
		words:   "SHELL",
		choices: shells,
		summary: "a script by which a shell completes this program's words",
		about: `Writes a script to standard output that makes the Tab key complete commands,
flags, the words that a flag takes, and the names of files. SHELL is bash, zsh,
fish or powershell. Where it goes:

  bash        in ~/.bashrc: source <(rodsheet completion bash)
  zsh         as _rodsheet into a folder of $fpath, before compinit is called
  fish        as rodsheet.fish into ~/.config/fish/completions
  powershell  in the file $PROFILE names:
              rodsheet completion powershell | Out-String | Invoke-Expression`,
		examples: []example{
			{"rodsheet completion bash", "for bash, version 3.2 and later"},
			{"rodsheet completion zsh", "for zsh"},
			{"rodsheet completion fish", "for fish, version 3 and later"},
			{"rodsheet completion powershell", "for PowerShell, version 5 and later"},
		},
		prints: true,
		act: func(_ context.Context, v *values, w world) error {
			shell, err := v.oneOf("shell", shells)
			if err != nil {
				return err
			}
			return emit(w.stdout, completion(shell))
		},
	}
}

// oneOf returns the one word of the command line, which is among the choices.
func (v *values) oneOf(what string, choices []string) (string, error) {
	word := v.words[0]
	if len(v.words) > 1 {
		return "", refuse(v.command+" takes one "+what+", found "+wording.Shown(v.words[1])+" as well", "")
	}
	for _, c := range choices {
		if c == word {
			return c, nil
		}
	}
	return "", refuse(what+" "+wording.Shown(word)+" must be "+wording.Or(choices...), cmp.Or(suggest("rodsheet "+v.command+" ", word, choices), "rodsheet help "+v.command))
}

// scripts are templates of one script a shell, named as they are called there.
//
//go:embed completion
var scripts embed.FS

func completion(shell string) string {
	t := template.Must(template.New("").Funcs(template.FuncMap{
		"join": strings.Join,
		"q":    quoting[shell],
		"spec": zshSpec,
	}).ParseFS(scripts, "completion/*.tmpl"))
	var b strings.Builder
	if err := t.ExecuteTemplate(&b, shell+".tmpl", completed()); err != nil {
		panic(err) // a template that does not fit the tables
	}
	return b.String()
}

// A slot is a place on a command line: what may stand there.
type slot struct {
	Called string   // "LENGTH"
	Words  []string // that can be given, where they are known
	Files  string   // any, toml, folder, or nothing
}

// slotOf returns the place that is called so in the help.
func slotOf(called string, words []string) slot {
	called = strings.Trim(called, "[]")
	return slot{called, words, map[string]string{"FILE": "any", fileWord: "toml", "DIR": "folder"}[called]}
}

// A completedCommand is a command as the scripts read it.
type completedCommand struct {
	Name, Summary string
	Many          bool // words, not one
	Word          slot
	Flags         []completedFlag
}

type completedFlag struct {
	Name, Short, Usage string
	Takes              bool // a value
	Value              slot
}

// completed returns all that may stand first on a command line, with what may follow.
func completed() []completedCommand {
	help := completedCommand{Name: "help", Summary: "how a command works, or a topic", Word: slot{Called: "COMMAND", Words: []string{manWord}}}
	for _, t := range topics() {
		help.Word.Words = append(help.Word.Words, t.name)
	}
	var all []completedCommand
	for _, c := range commands() {
		word, many := strings.CutSuffix(c.words, "...")
		out := completedCommand{Name: c.name, Summary: c.summary, Many: many, Word: slotOf(word, c.choices)}
		for _, f := range c.all() {
			out.Flags = append(out.Flags, completedFlag{f.name, f.short, f.usage, f.value != "", slotOf(f.value, f.known())})
		}
		all = append(all, out)
		help.Word.Words = append(help.Word.Words, c.name)
	}
	return append(all, help)
}

// quoting puts a text in single quotes as a shell reads them.
var quoting = map[string]func(string) string{
	"bash":       posixQuoted,
	"zsh":        posixQuoted,
	"fish":       func(s string) string { return "'" + strings.NewReplacer(`\`, `\\`, `'`, `\'`).Replace(s) + "'" },
	"powershell": func(s string) string { return "'" + strings.ReplaceAll(s, "'", "''") + "'" },
}

func posixQuoted(s string) string { return "'" + strings.ReplaceAll(s, "'", `'\''`) + "'" }

// zshSpec writes a place as the message and the action of _arguments.
func zshSpec(s slot) string {
	actions := map[string]string{"": " ", "any": "_files", "toml": `_files -g "*.toml"`, "folder": "_files -/"}
	action := actions[s.Files]
	if len(s.Words) > 0 {
		action = "(" + strings.Join(s.Words, " ") + ")"
	}
	return ":" + strings.ReplaceAll(s.Called, ":", `\:`) + ":" + action
}
