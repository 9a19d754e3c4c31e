package outwind.cli;

import com.sun.management.OperatingSystemMXBean;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.lang.management.ManagementFactory;

/** A process that judges one file after another and prints for each what became of it and what it cost. */
final class HostileFiles {

    private HostileFiles() { }

    /** @param args folder for the reports, then the files */
    public static void main(String[] args) {
        OperatingSystemMXBean machine = (OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean();
        for (int i = 1; i < args.length; i++) {
            StringWriter err = new StringWriter();
            long before = machine.getProcessCpuTime();
            int code = Main.run(new PrintWriter(new StringWriter()), new PrintWriter(err), "judge", "--no-chart",
                "--out", args[0], args[i]);
            double seconds = (machine.getProcessCpuTime() - before) / 1e9;
            System.out.println(code + "\t" + seconds + "\t" + args[i] + "\t" + err.toString().lines().findFirst()
                .orElse(""));
        }
    }
}
