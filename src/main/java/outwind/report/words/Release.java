package outwind.report.words;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Properties;

/** Which release of Outwind this is: the version in {@code pom.xml}, which the build writes into a resource. */
public final class Release {

    private Release() { }

    /** Its semantic version, as {@code 0.1.0}. */
    public static String version() {
        try (InputStream in = Release.class.getResourceAsStream("release.properties")) {
            Properties release = new Properties();
            release.load(in);
            return release.getProperty("version");
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
