package main

import (
	"fmt"
	"strings"
)

func shells() []string { return []string{"bash", "zsh", "fish"} }

func completeCommand() command {
	return command{name: "complete", short: "a script that completes commands in your shell", operands: "bash|zsh|fish",
		about: "Prints a script for one shell. With it the tab key completes commands, options, the names of lists and samples, and files.\n" +
			"The examples show where each shell looks for it; start a new shell afterwards.",
		examples: []string{
			"pegwright complete bash > ~/.local/share/bash-completion/completions/pegwright",
			"pegwright complete fish > ~/.config/fish/completions/pegwright.fish",
			"pegwright complete zsh > ~/.zfunc/_pegwright    # a folder of your $fpath",
		}, run: runComplete}
}

func runComplete(s *streams, a given) int {
	scripts := map[string]func() string{"bash": bashScript, "zsh": zshScript, "fish": fishScript}
	if len(a.rest) != 1 || scripts[a.rest[0]] == nil {
		return s.refuse("complete wants the name of one shell: %s", anyOf(shells()))
	}
	s.data([]byte(scripts[a.rest[0]]()))
	return exitDone
}

// bashScript completes by word lists: commands first, then what the command
// takes, then files.
func bashScript() string {
	var b strings.Builder
	b.WriteString("# bash completion for pegwright\n_pegwright() {\n" +
		"  local cur=\"${COMP_WORDS[COMP_CWORD]}\" prev=\"${COMP_WORDS[COMP_CWORD-1]}\" words=\"\"\n" +
		"  COMPREPLY=()\n" + // --as=text comes as three words
		"  [ \"$cur\" = = ] && cur=\"\"\n  [ \"$prev\" = = ] && prev=\"${COMP_WORDS[COMP_CWORD-2]}\"\n" +
		"  if [ \"$COMP_CWORD\" -eq 1 ]; then\n")
	fmt.Fprintf(&b, "    COMPREPLY=($(compgen -W %s -- \"$cur\"))\n    return\n  fi\n", bashQuote(commandNames()))
	b.WriteString("  case \"${COMP_WORDS[1]} $prev\" in\n")
	for _, c := range commands() {
		for _, o := range c.options {
			switch words := o.optionWords(); {
			case len(words) > 0:
				fmt.Fprintf(&b, "    '%s --%s') COMPREPLY=($(compgen -W %s -- \"$cur\")); return ;;\n", c.name, o.name, bashQuote(words))
			case o.name == "set":
				fmt.Fprintf(&b, "    '%s --%s') return ;;\n", c.name, o.name)
			}
		}
	}
	b.WriteString("  esac\n  case \"${COMP_WORDS[1]}\" in\n")
	for _, c := range commands() {
		fmt.Fprintf(&b, "    %s) words=%s ;;\n", c.name, bashQuote(append(c.completions(), c.dashed()...)))
	}
	b.WriteString("  esac\n  COMPREPLY=($(compgen -W \"$words\" -- \"$cur\"))\n" +
		"  local IFS=$'\\n'\n  COMPREPLY+=($(compgen -f -- \"$cur\"))\n}\n" + // names may hold spaces
		"complete -o filenames -F _pegwright pegwright\n")
	return b.String()
}

func bashQuote(words []string) string { return "'" + strings.Join(words, " ") + "'" }

// dashed are the options of a command as they are typed.
func (c command) dashed() []string {
	out := []string{"--help"}
	for _, o := range c.options {
		out = append(out, "--"+o.name)
	}
	return out
}

func zshScript() string {
	var b strings.Builder
	b.WriteString("#compdef pegwright\n_pegwright() {\n  local -a commands\n  commands=(\n")
	for _, c := range commands() {
		fmt.Fprintf(&b, "    %s\n", single(c.name+":"+c.short))
	}
	b.WriteString("  )\n  if (( CURRENT == 2 )); then\n    _describe command commands\n    return\n  fi\n" +
		"  local cmd=$words[2]\n  shift words; (( CURRENT-- ))\n  case $cmd in\n")
	for _, c := range commands() {
		fmt.Fprintf(&b, "    %s) _arguments", c.name)
		for _, o := range c.options {
			fmt.Fprintf(&b, " \\\n      %s", single(o.zsh()))
		}
		what := "_files"
		if w := c.completions(); len(w) > 0 {
			what = "_alternative \"words:word:(" + strings.Join(w, " ") + ")\" \"files:file:_files\""
			what = "{" + what + "}"
		}
		fmt.Fprintf(&b, " \\\n      %s ;;\n", single("*:operand:"+what))
	}
	b.WriteString("  esac\n}\n_pegwright \"$@\"\n")
	return b.String()
}

func (o option) zsh() string {
	head := "--" + o.name
	if o.name == "set" {
		head = "*" + head
	}
	spec := head + "[" + strings.NewReplacer("[", "(", "]", ")", ":", " -").Replace(o.about) + "]:value:"
	switch words := o.optionWords(); {
	case len(words) > 0:
		return spec + "(" + strings.Join(words, " ") + ")"
	case o.files:
		return spec + "_files"
	}
	return spec
}

func fishScript() string {
	var b strings.Builder
	b.WriteString("# fish completion for pegwright\n")
	first := "'__fish_use_subcommand'"
	for _, c := range commands() {
		fmt.Fprintf(&b, "complete -c pegwright -n %s -f -a %s -d %s\n", first, c.name, single(c.short))
	}
	for _, c := range commands() {
		on := single("__fish_seen_subcommand_from " + c.name)
		for _, o := range c.options {
			fmt.Fprintf(&b, "complete -c pegwright -n %s -l %s -r -d %s", on, o.name, single(o.about))
			if words := o.optionWords(); len(words) > 0 {
				fmt.Fprintf(&b, " -f -a %s", single(strings.Join(words, " ")))
			}
			b.WriteString("\n")
		}
		if words := c.completions(); len(words) > 0 {
			fmt.Fprintf(&b, "complete -c pegwright -n %s -a %s\n", on, single(strings.Join(words, " ")))
		}
	}
	return b.String()
}

// single puts a text in single quotes for a shell.
func single(text string) string { return "'" + strings.ReplaceAll(text, "'", `'\''`) + "'" }
