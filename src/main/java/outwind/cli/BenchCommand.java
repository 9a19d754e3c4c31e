package outwind.cli;

import io.nayuki.qrcodegen.QrCode;
import java.io.IOException;
import java.io.PrintWriter;
import java.net.BindException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.atomic.AtomicReference;
import outwind.web.BenchServer;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** The boards of a folder in the browser, from this machine or from a phone beside it. */
@Command(name = "bench", mixinStandardHelpOptions = true, sortOptions = false,
    description = "Measure, judge and cut the boards of a folder in the browser, on this machine or on a phone.",
    footer = {"", "Ctrl-C ends it. Every reading is in its board's file before it is shown as kept.", "",
        "Example: outwind bench --share boards/"})
final class BenchCommand implements Callable<Integer> {

    /** Any that is seldom taken would do. */
    private static final String USUAL_PORT = "8417";

    /** Blank modules around the code, as ISO/IEC 18004 asks for. */
    private static final int QUIET_ZONE = 4;

    @Spec
    private CommandSpec spec;

    @Parameters(arity = "0..1", paramLabel = "DIR", defaultValue = ".",
        description = "Folder of the board files (default: this one).")
    private Path folder;

    @Option(names = "--port", paramLabel = "NUMBER", defaultValue = USUAL_PORT,
        description = "Port to serve the page at; 0 for any that is free (default: ${DEFAULT-VALUE}).")
    private int port;

    @Option(names = "--no-open", description = "Do not open the browser; print the address instead.")
    private boolean unopened;

    @Option(names = "--share", description = "Let other devices of the same network in, each with a code that is good"
        + " once. What they send is not encrypted: use it on a network that you trust.")
    private boolean shared;

    @Override
    public Integer call() throws InterruptedException {
        PrintWriter out = spec.commandLine().getOut();
        PrintWriter err = spec.commandLine().getErr();
        if (port < 0 || port > 65535) {
            throw new ParameterException(spec.commandLine(), "--port is a number from 0 to 65535, not " + port);
        }
        if (!Files.isDirectory(folder)) {
            err.println(folder + ": there is no such folder. Make it, or name another.");
            return 1;
        }
        AtomicReference<BenchServer> running = new AtomicReference<>();
        try (BenchServer server = BenchServer.start(folder, port, shared, () -> invite(running.get(), out),
                thrown -> Breakdown.tell(thrown, err, "1".equals(System.getenv("OUTWIND_TRACE"))))) {
            running.set(server);
            String address = server.opening();
            if (unopened || !opens(address)) {
                out.println("Open " + address + " on this machine.");
            } else {
                out.println("The bench is open in your browser. Ctrl-C ends it.");
            }
            invite(server, out);
            out.flush();
            new CountDownLatch(1).await();
            return 0;
        } catch (BindException e) {
            err.println("port " + port + " is taken, perhaps by another bench: end that one, or name another --port");
        } catch (IOException e) {
            err.println(FileTrouble.inWords(folder, e));
        }
        return 1;
    }

    private void invite(BenchServer server, PrintWriter out) {
        if (!shared || server == null) {
            return;
        }
        Optional<String> address = server.addresses().stream().findFirst();
        if (address.isEmpty()) {
            out.println("This machine is on no network that another device could share.");
            return;
        }
        out.println("From another device: " + String.join(" or ", server.addresses()) + ", code " + server.code()
            + ". It lets one device in.");
        out.println(picture(QrCode.encodeText(address.get() + "?code=" + server.code(), QrCode.Ecc.MEDIUM)));
        out.flush();
    }

    /** Two modules above each other in one character; light on dark and dark on light are both read by phones. */
    private static String picture(QrCode code) {
        StringBuilder picture = new StringBuilder();
        for (int y = -QUIET_ZONE; y < code.size + QUIET_ZONE; y += 2) {
            for (int x = -QUIET_ZONE; x < code.size + QUIET_ZONE; x++) {
                boolean upper = !code.getModule(x, y);
                boolean lower = !code.getModule(x, y + 1);
                picture.append(upper && lower ? '█' : upper ? '▀' : lower ? '▄' : ' ');
            }
            picture.append('\n');
        }
        return picture.toString();
    }

    private static boolean opens(String address) {
        String system = System.getProperty("os.name").toLowerCase(Locale.ROOT);
        try {
            ProcessBuilder opener = system.contains("windows")
                ? new ProcessBuilder("rundll32", "url.dll,FileProtocolHandler", address)
                : new ProcessBuilder(system.contains("mac") ? "open" : "xdg-open", address);
            opener.redirectErrorStream(true).redirectOutput(ProcessBuilder.Redirect.DISCARD).start();
            return true;
        } catch (IOException e) {
            return false;
        }
    }
}
