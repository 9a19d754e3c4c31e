package outwind.web;

import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.net.Inet4Address;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.NetworkInterface;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.function.Consumer;

/**
 * Serves the page for the boards of one folder. It is bound to this machine alone unless it is shared with the devices
 * of the same network.
 *
 * <p>The JDK's own server does: it adds nothing to the size of the program, starts in milliseconds, and is mended with
 * every release of Java. It speaks HTTP without TLS: on a network that is not one's own, leave sharing off.
 */
public final class BenchServer implements AutoCloseable {

    private final HttpServer server;
    private final ThreadPoolExecutor threads;
    private final Gate gate;
    private final List<String> addresses;
    private final Workload workload;

    private BenchServer(HttpServer server, ThreadPoolExecutor threads, Gate gate, List<String> addresses,
                        Workload workload) {
        this.server = server;
        this.threads = threads;
        this.gate = gate;
        this.addresses = addresses;
        this.workload = workload;
    }

    /**
     * Starts it.
     *
     * @param folder   where the board files are
     * @param port     to listen at; 0 for any that is free
     * @param shared   true if other devices of the network may come in by code
     * @param admitted called when a code let a device in, so that the next one can be shown
     * @param troubles takes what nobody foresaw
     * @throws IOException if the port cannot be had
     */
    public static BenchServer start(Path folder, int port, boolean shared, Runnable admitted,
                                    Consumer<Throwable> troubles) throws IOException {
        Limits.set();
        InetAddress loopback = InetAddress.getByAddress("127.0.0.1", new byte[] {127, 0, 0, 1});
        HttpServer server = HttpServer.create(shared ? new InetSocketAddress(port)
            : new InetSocketAddress(loopback, port), 128);
        int bound = server.getAddress().getPort();
        List<String> addresses = shared ? networkAddresses().stream().map(address -> address + ":" + bound).toList()
            : List.of();
        Set<String> hosts = new HashSet<>(addresses);
        hosts.add("127.0.0.1:" + bound);
        hosts.add("localhost:" + bound);
        Gate gate = new Gate(hosts, shared, System::nanoTime);
        ThreadPoolExecutor threads = Limits.threads();
        server.setExecutor(threads);
        Workload workload = new Workload(System::gc);
        server.createContext("/", new Desk(gate, new Boards(new BoardFolder(folder.toRealPath()), workload),
            admitted, troubles));
        server.start();
        return new BenchServer(server, threads, gate, addresses, workload);
    }

    private static List<String> networkAddresses() throws IOException {
        return NetworkInterface.networkInterfaces().filter(BenchServer::isUp)
            .flatMap(NetworkInterface::inetAddresses)
            .filter(address -> address instanceof Inet4Address && !address.isLinkLocalAddress())
            .map(InetAddress::getHostAddress).toList();
    }

    private static boolean isUp(NetworkInterface network) {
        try {
            return network.isUp() && !network.isLoopback();
        } catch (IOException e) {
            return false;
        }
    }

    /** The address that opens the page on this machine, once. */
    public String opening() {
        return "http://127.0.0.1:" + server.getAddress().getPort() + "/?key=" + gate.key();
    }

    /** Addresses at which other devices find it; none unless it is shared. */
    public List<String> addresses() {
        return addresses.stream().map(address -> "http://" + address + "/enter").toList();
    }

    /** The code that lets the next device in. */
    public String code() {
        return gate.code();
    }

    @Override
    public void close() {
        server.stop(0);
        threads.shutdownNow();
        workload.close();
    }
}
