
# Where a record is asked for, its id is offered, and "last" for the newest.
_tiptoe_with_records() {
  local cur="${COMP_WORDS[COMP_CWORD]}" before="${COMP_WORDS[COMP_CWORD-1]}" folder word
  folder="${XDG_DATA_HOME:-$HOME/.local/share}/tiptoe/examinations"
  for ((word = 1; word < COMP_CWORD; word++)); do
    [ "${COMP_WORDS[word]}" = --data ] && folder="${COMP_WORDS[word+1]}/examinations"
  done
  case "${COMP_WORDS[1]} $before" in
    "exam --continue" | "records --remove" | "review review" | "record record" | "record --verify" | \
      "sign sign" | "report report" | "send send" | "assess assess")
      if [[ "$cur" != -* ]]; then
        COMPREPLY=($(compgen -W "last $(ls "$folder" 2>/dev/null)" -- "$cur"))
        return
      fi
      ;;
  esac
  _complete_tiptoe "$@"
}
complete -F _tiptoe_with_records -o default tiptoe tiptoe.sh tiptoe.bash
