package outwind.cli;

import java.util.Arrays;
import java.util.Map;
import java.util.stream.Collectors;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/**
 * Prints a script for the shell.
 *
 * <p>In bash names of files come from {@code compgen -f} and are read line by line. They never go through {@code compgen
 * -W}, which expands its words: a file named {@code $(…)} would run. In zsh {@code _files} gives them: the stand-in for
 * {@code compgen} there takes what is typed for a pattern.
 */
@Command(name = "completion", mixinStandardHelpOptions = true, sortOptions = false,
    description = "Print a script by which bash or zsh completes commands, options and file names of outwind.",
    footer = {"", "Example: source <(outwind completion)"})
final class CompletionCommand implements Runnable {

    private static final String SCRIPT = """
        # Completion of outwind for bash and zsh.

        # What may be typed behind these words; true if a command is among them, so that files may come as well.
        _outwind_words() {
          local one
          for one in "$@"; do
            case "$one" in
        %s    esac
          done
          printf '%%s\\n' %s
          return 1
        }

        if [ -n "${ZSH_VERSION-}" ]; then
          command -v compdef >/dev/null || { autoload -Uz compinit && compinit; }
          _outwind() {
            local one
            if [[ "$PREFIX" != -* ]] && _outwind_words "${words[@]:1:$((CURRENT - 2))}" >/dev/null; then
              _files
            else
              while IFS= read -r one; do
                compadd -- "$one"
              done < <(_outwind_words "${words[@]:1:$((CURRENT - 2))}")
            fi
          }
          compdef _outwind outwind
        else
          _outwind() {
            local word="${COMP_WORDS[COMP_CWORD]}" one
            COMPREPLY=()
            if [[ "$word" != -* ]] && _outwind_words "${COMP_WORDS[@]:1:COMP_CWORD-1}" >/dev/null; then
              while IFS= read -r one; do
                COMPREPLY+=("$one")
              done < <(compgen -f -- "$word")
            else
              while IFS= read -r one; do
                [[ "$one" == "$word"* ]] && COMPREPLY+=("$one")
              done < <(_outwind_words "${COMP_WORDS[@]:1:COMP_CWORD-1}")
            fi
          }
          complete -o filenames -F _outwind outwind
        fi
        """;

    @Spec
    private CommandSpec spec;

    @Override
    public void run() {
        CommandLine root = spec.root().commandLine();
        Map<String, CommandLine> commands = root.getSubcommands();
        String names = String.join(" ", commands.keySet());
        String cases = commands.entrySet().stream().map(command -> "      " + command.getKey() + ") printf '%s\\n' "
            + options(command.getValue()) + "; return ;;\n").collect(Collectors.joining());
        spec.commandLine().getOut().print(String.format(SCRIPT, cases, names + " " + options(root)));
        spec.commandLine().getOut().flush();
    }

    private static String options(CommandLine command) {
        return command.getCommandSpec().options().stream().flatMap(option -> Arrays.stream(option.names()))
            .sorted().collect(Collectors.joining(" "));
    }
}
