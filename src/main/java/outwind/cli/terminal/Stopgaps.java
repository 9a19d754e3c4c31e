package outwind.cli.terminal;

import java.io.File;
import java.io.FileInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.List;

/**
 * What stands in for standard streams that were closed before the start. The system gives the lowest free number to the
 * next file that is opened (POSIX, open): without this, what is printed could go into a board file.
 */
public final class Stopgaps {

    private static final int STANDARD_STREAMS = 3;

    private Stopgaps() { }

    /** Takes the numbers that are free. They are taken for as long as the answer is reachable. */
    public static List<InputStream> taken() {
        List<InputStream> taken = new ArrayList<>();
        try {
            for (int i = 0; i < STANDARD_STREAMS && File.separatorChar == '/'; i++) {
                taken.add(new FileInputStream("/dev/null"));
            }
        } catch (IOException e) {
            // A system without it: the streams are open on all but the strangest starts.
            return taken;
        }
        return taken;
    }
}
