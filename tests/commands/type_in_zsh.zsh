# Types words and a tab into an interactive zsh in a terminal of its own, and prints what it shows.
# $1: the completion script; $2: the words. Quotes part what is waited for where it's only echoed.
zmodload zsh/zpty
zpty shell zsh -f -i
zpty -w shell "unsetopt zle_bracketed_paste; autoload -Uz compinit bashcompinit"
zpty -w shell "compinit -u -D; bashcompinit; source ${(q)1}; PROMPT='NO''W>'"
zpty -r -m shell line "*NOW>*"
zpty -w -n shell "$2"$'\t'
zpty -w shell " --e''nd"
zpty -r -m shell line "*--e''nd*"
print -r -- "$line"
zpty -d shell
