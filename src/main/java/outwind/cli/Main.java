package outwind.cli;

import java.io.InputStream;
import java.io.PrintWriter;
import java.io.Writer;
import java.lang.ref.Reference;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import outwind.cli.option.PathConverter;
import outwind.cli.terminal.Stopgaps;
import outwind.cli.terminal.Terminal;
import outwind.report.words.Release;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.IFactory;
import picocli.CommandLine.IVersionProvider;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParseResult;
import picocli.CommandLine.ScopeType;
import picocli.CommandLine.Spec;

/** From heights touched off on a rough board to what it will finish at. */
@Command(name = "outwind", mixinStandardHelpOptions = true, versionProvider = Main.Version.class, sortOptions = false,
    description = "Measure a rough board. Learn what it will finish at, how to set it down, and how deep to cut.",
    footer = {"", "Example: outwind judge --target 20mm hall-table.csv"},
    subcommands = {PointsCommand.class, RecordCommand.class, JudgeCommand.class, FinishCommand.class,
        CheckCommand.class, BlanksCommand.class, StackCommand.class, BenchCommand.class,
        ShopCommand.class, CompletionCommand.class})
public final class Main implements Runnable {

    private static final String QUIET = "--quiet";
    private static final String QUIETLY = "Print nothing but what went wrong; files and exit code tell the rest.";

    @Spec
    private CommandSpec spec;

    @Option(names = QUIET, scope = ScopeType.INHERIT, description = QUIETLY)
    private boolean quiet;

    /** Runs a command and leaves with its exit code. */
    public static void main(String[] args) {
        List<InputStream> stopgaps = Stopgaps.taken();
        System.setProperty("java.awt.headless", "true");
        Terminal terminal = Terminal.of(System.getenv(), System.getProperties());
        Call call = Call.of(System.in, args);
        int code = run(call.command().setUsageHelpWidth(terminal.helpColumns()), terminal.writer(System.out, "stdout"),
            terminal.writer(System.err, "stderr"), call.args());
        Reference.reachabilityFence(stopgaps);
        if (code != 0) {
            System.exit(code);
        }
    }

    /** Runs a command, printing to {@code out} and {@code err}; returns the exit code. */
    public static int run(PrintWriter out, PrintWriter err, String... args) {
        return run(System.in, out, err, args);
    }

    /** The same with answers typed into {@code input}. */
    public static int run(InputStream input, PrintWriter out, PrintWriter err, String... args) {
        Call call = Call.of(input, args);
        return run(call.command(), out, err, call.args());
    }

    /** The same with any command as the first. */
    public static int run(CommandLine commandLine, PrintWriter out, PrintWriter err, String... args) {
        boolean trace = "1".equals(System.getenv("OUTWIND_TRACE"));
        commandLine.setOut(out);
        commandLine.setErr(err);
        commandLine.setColorScheme(CommandLine.Help.defaultColorScheme(CommandLine.Help.Ansi.OFF));
        commandLine.registerConverter(Path.class, new PathConverter());
        commandLine.setExecutionStrategy(Main::perhapsQuietly);
        commandLine.setParameterExceptionHandler(new BadCommandLine());
        commandLine.setExecutionExceptionHandler((thrown, command, parsed) -> {
            Breakdown.tell(thrown, err, trace);
            return 1;
        });
        int code = 1;
        try {
            code = commandLine.execute(args);
        } catch (OutOfMemoryError | StackOverflowError e) {
            Breakdown.tell(e, err, trace);
        }
        if (out.checkError()) {
            err.println("Not everything could be printed: the disk is full, or whoever reads it has gone.");
            code = Math.max(code, 1);
        }
        err.flush();
        return code;
    }

    /** The program with all its commands. */
    static CommandLine whole(InputStream input) {
        return new CommandLine(new Main(), new Commands(input));
    }

    /** True if nothing is to be printed but what went wrong. */
    static boolean isQuiet(ParseResult parsed) {
        return parsed.hasMatchedOption(QUIET) || parsed.hasSubcommand() && isQuiet(parsed.subcommand());
    }

    private static int perhapsQuietly(ParseResult parsed) {
        ParseResult last = parsed;
        while (last.hasSubcommand()) {
            last = last.subcommand();
        }
        if (isQuiet(parsed) && !last.isUsageHelpRequested() && !last.isVersionHelpRequested()) {
            parsed.commandSpec().commandLine().setOut(new PrintWriter(Writer.nullWriter()));
        }
        return new CommandLine.RunLast().execute(parsed);
    }

    /** What {@code --version} prints, as {@code outwind 0.1.0}. */
    static final class Version implements IVersionProvider {

        @Override
        public String[] getVersion() {
            return new String[] {"outwind " + Release.version()};
        }
    }

    @Override
    public void run() {
        spec.commandLine().usage(spec.commandLine().getOut());
    }

    /**
     * A command and what it is given.
     *
     * @param command the one that is called, by itself: to read the options of the others as well would only take time;
     *                where none is, all of them
     * @param args    of that command
     */
    private record Call(CommandLine command, String[] args) {

        /** @param input where answers are typed */
        static Call of(InputStream input, String... args) {
            IFactory commands = new Commands(input);
            Optional<Class<?>> called = Arrays.<Class<?>>stream(Main.class.getAnnotation(Command.class).subcommands())
                .filter(command -> args.length > 0
                    && command.getAnnotation(Command.class).name().equals(args[0])
                    && command != CompletionCommand.class)
                .findFirst();
            if (called.isEmpty()) {
                return new Call(whole(input), args);
            }
            CommandLine alone = new CommandLine(called.get(), commands).setCommandName("outwind " + args[0]);
            alone.getCommandSpec().addOption(OptionSpec.builder(QUIET).type(boolean.class).arity("0")
                .description(QUIETLY).build());
            return new Call(alone, Arrays.copyOfRange(args, 1, args.length));
        }
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
}
