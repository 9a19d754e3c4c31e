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
 * <p>Names of files come from {@code compgen -f} and are read line by line. They never go through {@code compgen -W},
 * which expands its words: a file named {@code $(…)} would run.
 */
@Command(name = "completion", mixinStandardHelpOptions = true, sortOptions = false,
    description = "Print a script by which bash or zsh completes commands, options and file names of outwind.",
    footer = {"", "Example: source <(outwind completion)"})
final class CompletionCommand implements Runnable {

    private static final String SCRIPT = """
        # Completion of outwind for bash and zsh.
        if [ -n "${ZSH_VERSION-}" ]; then
          autoload -U +X compinit && compinit
          autoload -U +X bashcompinit && bashcompinit
        fi

        _outwind() {
          local word="${COMP_WORDS[COMP_CWORD]}" words="%s" command="" one
          local i
          for ((i = 1; i < COMP_CWORD; i++)); do
            case "${COMP_WORDS[i]}" in
              %s) command="${COMP_WORDS[i]}"; break ;;
            esac
          done
          case "$command" in
        %s  esac
          COMPREPLY=()
          if [[ -z "$command" || "$word" == -* ]]; then
            for one in $words; do
              [[ "$one" == "$word"* ]] && COMPREPLY+=("$one")
            done
          else
            while IFS= read -r one; do
              COMPREPLY+=("$one")
            done < <(compgen -f -- "$word")
          fi
        }
        complete -o filenames -F _outwind outwind
        """;

    @Spec
    private CommandSpec spec;

    @Override
    public void run() {
        CommandLine root = spec.root().commandLine();
        Map<String, CommandLine> commands = root.getSubcommands();
        String names = String.join(" ", commands.keySet());
        String cases = commands.entrySet().stream().map(command -> "    " + command.getKey() + ") words=\""
            + options(command.getValue()) + "\" ;;\n").collect(Collectors.joining());
        spec.commandLine().getOut().print(String.format(SCRIPT, names + " " + options(root), names.replace(' ', '|'),
            cases));
        spec.commandLine().getOut().flush();
    }

    private static String options(CommandLine command) {
        return command.getCommandSpec().options().stream().flatMap(option -> Arrays.stream(option.names()))
            .sorted().collect(Collectors.joining(" "));
    }
}
