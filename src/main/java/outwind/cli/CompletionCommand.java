package outwind.cli;

import picocli.AutoComplete;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** Prints a script for the shell. */
@Command(name = "completion", mixinStandardHelpOptions = true, sortOptions = false,
    description = "Print a script by which bash or zsh completes commands, options and file names of outwind.",
    footer = {"", "Example: source <(outwind completion)"})
final class CompletionCommand implements Runnable {

    @Spec
    private CommandSpec spec;

    @Override
    public void run() {
        spec.commandLine().getOut().println(AutoComplete.bash("outwind", spec.root().commandLine()));
    }
}
