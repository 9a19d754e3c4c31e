package outwind.web;

import com.sun.net.httpserver.HttpExchange;
import java.io.IOException;
import java.io.InputStream;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;

/** How much the server takes on at once, so that a slow or greedy client leaves the others served. */
final class Limits {

    /** Of what is sent (bytes). */
    static final int LARGEST_BODY = 5 * 1024 * 1024;

    private static final int THREADS = 64;
    private static final int WAITING = 256;

    private Limits() { }

    /** Called before the server is first made: the JDK's server reads these when its classes are loaded. */
    static void set() {
        System.setProperty("sun.net.httpserver.maxReqTime", "60");
        System.setProperty("sun.net.httpserver.maxRspTime", "60");
        System.setProperty("sun.net.httpserver.idleInterval", "30");
        System.setProperty("sun.net.httpserver.maxReqHeaders", "64");
        System.setProperty("sun.net.httpserver.nodelay", "true");
        System.setProperty("jdk.httpserver.maxConnections", "64");
    }

    static ThreadPoolExecutor threads() {
        ThreadPoolExecutor pool = new ThreadPoolExecutor(THREADS, THREADS, 30, TimeUnit.SECONDS,
            new ArrayBlockingQueue<>(WAITING), task -> {
                Thread thread = new Thread(task, "bench");
                thread.setDaemon(true);
                return thread;
            });
        pool.allowCoreThreadTimeOut(true);
        return pool;
    }

    /** What was sent, if it is not too much. */
    static byte[] body(HttpExchange exchange) throws IOException, Refused {
        try (InputStream in = exchange.getRequestBody()) {
            byte[] body = in.readNBytes(LARGEST_BODY + 1);
            if (body.length > LARGEST_BODY) {
                throw new Refused(413, "That is more than 5 MB. Judge a scan from the command line.");
            }
            return body;
        }
    }
}
