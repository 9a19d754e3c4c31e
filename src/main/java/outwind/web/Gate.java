package outwind.web;

import com.sun.net.httpserver.Headers;
import com.sun.net.httpserver.HttpExchange;
import java.net.InetAddress;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.SecureRandom;
import java.util.Arrays;
import java.util.Base64;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.function.LongSupplier;

/**
 * Who is let in. A request must name a host that this server goes by (against DNS rebinding), must not come from
 * another site's page, and must hold the session's token in a cookie. The token is handed out for the key in the
 * address that is opened on this machine, or for a code of which each is good for one device.
 *
 * <p>A code has eight letters of 32, so 2⁴⁰ values; with five tries a minute guessing one takes 10⁵ years.
 */
final class Gate {

    private static final String COOKIE = "outwind";
    private static final String LETTERS = "ABCDEFGHJKLMNPQRSTUVWXYZ23456789";
    private static final int CODE_LENGTH = 8;
    private static final int MOST_TRIES = 5;
    private static final long PAUSE = 60_000_000_000L;

    private final SecureRandom random = new SecureRandom();
    private final String token = secret();
    private final Set<String> hosts;
    private final boolean shared;
    private final LongSupplier clock;
    private String key = secret();
    private String code = freshCode();
    private int tries;
    private long pausedUntil;
    private boolean paused;

    /**
     * @param hosts  names and ports that this server goes by
     * @param shared true if a code lets other devices in
     * @param clock  nanoseconds
     */
    Gate(Set<String> hosts, boolean shared, LongSupplier clock) {
        this.hosts = Set.copyOf(hosts);
        this.shared = shared;
        this.clock = clock;
    }

    /** What opens the page on this machine, once. */
    synchronized String key() {
        return key;
    }

    /** What lets the next device in. */
    synchronized String code() {
        return code;
    }

    /** Refuses a request that another site's page may have caused. */
    void requireOwnSite(HttpExchange exchange) throws Refused {
        Headers headers = exchange.getRequestHeaders();
        String host = headers.getFirst("Host");
        if (host == null || !hosts.contains(host) || headers.get("Host").size() != 1) {
            throw new Refused(421, "This server does not go by that name.");
        }
        String origin = headers.getFirst("Origin");
        if (origin != null && !origin.equals("http://" + host)) {
            throw new Refused(403, "Another site's page asked for this.");
        }
        String site = headers.getFirst("Sec-Fetch-Site");
        boolean opensPage = "GET".equals(exchange.getRequestMethod()) && "/".equals(exchange.getRequestURI().getPath());
        if (site != null && !opensPage && !site.equals("same-origin") && !site.equals("none")) {
            throw new Refused(403, "Another site's page asked for this.");
        }
    }

    /** True if the request holds the token. */
    boolean knows(HttpExchange exchange) {
        return Optional.ofNullable(exchange.getRequestHeaders().get("Cookie")).stream().flatMap(List::stream)
            .flatMap(line -> Arrays.stream(line.split(";"))).map(String::strip)
            .filter(pair -> pair.startsWith(COOKIE + "=")).map(pair -> pair.substring(COOKIE.length() + 1))
            .anyMatch(held -> same(held, token));
    }

    /** The cookie that lets a device in. */
    String cookie() {
        return COOKIE + "=" + token + "; Path=/; HttpOnly; SameSite=Strict";
    }

    /** Takes the key of the address that is opened on this machine. */
    synchronized boolean opensWith(String held, InetAddress from) {
        boolean right = from.isLoopbackAddress() && same(held, key);
        if (right) {
            key = secret();
        }
        return right;
    }

    /**
     * Takes a code; each lets one device in.
     *
     * @throws Refused after five wrong ones, for a minute
     */
    synchronized boolean admits(String typed) throws Refused {
        if (!shared) {
            throw new Refused(403, "This bench is not shared. Start it with --share.");
        }
        if (paused && clock.getAsLong() - pausedUntil < 0) {
            throw new Refused(429, "Too many wrong codes. Wait a minute, then try again.");
        }
        paused = false;
        if (same(typed.strip().toUpperCase(Locale.ROOT), code)) {
            tries = 0;
            code = freshCode();
            return true;
        }
        tries++;
        if (tries >= MOST_TRIES) {
            tries = 0;
            paused = true;
            pausedUntil = clock.getAsLong() + PAUSE;
        }
        return false;
    }

    private static boolean same(String one, String other) {
        return MessageDigest.isEqual(one.getBytes(StandardCharsets.UTF_8), other.getBytes(StandardCharsets.UTF_8));
    }

    private String secret() {
        byte[] bytes = new byte[24];
        random.nextBytes(bytes);
        return Base64.getUrlEncoder().withoutPadding().encodeToString(bytes);
    }

    private String freshCode() {
        StringBuilder letters = new StringBuilder();
        for (int i = 0; i < CODE_LENGTH; i++) {
            letters.append(LETTERS.charAt(random.nextInt(LETTERS.length())));
        }
        return letters.toString();
    }
}
