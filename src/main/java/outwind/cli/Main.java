package outwind.cli;

import java.io.InputStream;
import java.io.OutputStreamWriter;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Optional;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.IFactory;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** From heights touched off on a rough board to what it will finish at. */
@Command(name = "outwind", mixinStandardHelpOptions = true, version = "outwind 0.1.0", sortOptions = false,
    description = "From heights touched off on a rough board to what it will finish at, how to set it down, and how"
        + " deep to cut.",
    subcommands = {PointsCommand.class, RecordCommand.class, JudgeCommand.class, BlanksCommand.class,
        StackCommand.class})
public final class Main implements Runnable {

    @Spec
    private CommandSpec spec;

    /** Runs a command and leaves with its exit code. */
    public static void main(String[] args) {
        System.setProperty("java.awt.headless", "true");
        int code = run(new PrintWriter(new OutputStreamWriter(System.out, StandardCharsets.UTF_8), true),
            new PrintWriter(new OutputStreamWriter(System.err, StandardCharsets.UTF_8), true), args);
        if (code != 0) {
            System.exit(code);
        }
    }

    /** Runs a command, printing to {@code out} and {@code err}; returns the exit code. */
    static int run(PrintWriter out, PrintWriter err, String... args) {
        return run(System.in, out, err, args);
    }

    /** The same with answers typed into {@code input}. */
    static int run(InputStream input, PrintWriter out, PrintWriter err, String... args) {
        IFactory commands = new Commands(input);
        Optional<CommandLine> called = called(commands, args);
        CommandLine commandLine = called.orElseGet(() -> new CommandLine(new Main(), commands));
        commandLine.setOut(out);
        commandLine.setErr(err);
        commandLine.setColorScheme(CommandLine.Help.defaultColorScheme(CommandLine.Help.Ansi.OFF));
        int code = commandLine.execute(called.isEmpty() ? args : Arrays.copyOfRange(args, 1, args.length));
        out.flush();
        err.flush();
        return code;
    }

    /** The command that is called, by itself: to read the options of the others as well would only take time. */
    private static Optional<CommandLine> called(IFactory commands, String... args) {
        return Arrays.stream(Main.class.getAnnotation(Command.class).subcommands())
            .filter(command -> args.length > 0 && command.getAnnotation(Command.class).name().equals(args[0]))
            .findFirst()
            .map(command -> new CommandLine(command, commands).setCommandName("outwind " + args[0]));
    }

    /**
     * Makes the commands.
     *
     * @param input where answers are typed
     */
    private record Commands(InputStream input) implements IFactory {

        @Override
        public <K> K create(Class<K> made) throws Exception {
            return made == RecordCommand.class ? made.cast(new RecordCommand(input))
                : CommandLine.defaultFactory().create(made);
        }
    }

    @Override
    public void run() {
        spec.commandLine().usage(spec.commandLine().getOut());
    }
}
