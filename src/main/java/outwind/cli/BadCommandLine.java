package outwind.cli;

import java.io.PrintWriter;
import java.util.List;
import java.util.stream.Collectors;
import picocli.CommandLine;
import picocli.CommandLine.IParameterExceptionHandler;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.UnmatchedArgumentException;

/** Says what is wrong with a command line, what may have been meant, and where to read more; exit code 2. */
final class BadCommandLine implements IParameterExceptionHandler {

    @Override
    public int handleParseException(ParameterException wrong, String[] args) {
        CommandLine command = wrong.getCommandLine();
        PrintWriter err = command.getErr();
        err.println(wrong instanceof UnmatchedArgumentException unmatched ? unmatched(unmatched)
            : inWords(wrong.getMessage()));
        err.println("See: " + command.getCommandSpec().qualifiedName() + " --help");
        return CommandLine.ExitCode.USAGE;
    }

    /** Numbers by the words that people have for them. */
    private static String inWords(String message) {
        return message.replaceFirst(" is not an? (int|long)$", " is no whole number")
            .replaceFirst(" is not a double$", " is no number");
    }

    private static String unmatched(UnmatchedArgumentException wrong) {
        CommandLine command = wrong.getCommandLine();
        String name = command.getCommandSpec().qualifiedName();
        String first = wrong.getUnmatched().get(0);
        boolean asksForCommand = !wrong.isUnknownOption() && !command.getSubcommands().isEmpty();
        String what = wrong.isUnknownOption() ? name + " has no option " + first
            : asksForCommand ? name + " has no command " + first
            : name + " takes no more than it was given before " + first;
        // Suggested commands come with the program's name before them.
        List<String> near = wrong.getSuggestions().stream()
            .map(meant -> meant.substring(meant.lastIndexOf(' ') + 1)).toList();
        if (!near.isEmpty()) {
            return what + ". Did you mean " + String.join(" or ", near) + "?";
        }
        return asksForCommand ? what + ". Commands are " + command.getSubcommands().keySet().stream()
            .collect(Collectors.joining(", ")) + "." : what + ".";
    }
}
