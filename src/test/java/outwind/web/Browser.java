package outwind.web;

import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.deque.html.axecore.selenium.AxeBuilder;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.function.BooleanSupplier;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.NoSuchElementException;
import org.openqa.selenium.OutputType;
import org.openqa.selenium.StaleElementReferenceException;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;
import org.openqa.selenium.interactions.Actions;
import org.openqa.selenium.interactions.PointerInput;
import org.openqa.selenium.interactions.Sequence;

/** A device with a browser, Chromium of the system: looked at, typed into and touched. Each has cookies of its own. */
public final class Browser implements AutoCloseable {

    private static final Path CHROMIUM = Path.of("/usr/bin/chromium");
    private static final Path DRIVER = Path.of("/usr/bin/chromedriver");
    private static final int MOST_TABS = 80;

    private static final List<String> TAGS = List.of("wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa",
        "best-practice");

    final ChromeDriver driver;

    public Browser() {
        ChromeOptions options = new ChromeOptions();
        options.setBinary(CHROMIUM.toFile());
        options.addArguments("--headless=new", "--no-sandbox", "--disable-dev-shm-usage", "--disable-gpu",
            "--force-prefers-reduced-motion");
        driver = new ChromeDriver(new ChromeDriverService.Builder().usingDriverExecutable(DRIVER.toFile()).build(),
            options);
    }

    /** A browser; without Chromium the test that asks for it is skipped. */
    static Browser orSkip() {
        assumeTrue(isHere(), "the page was not tested, no Chromium here: apt-get install chromium chromium-driver");
        return new Browser();
    }

    private static boolean isHere() {
        return Files.isExecutable(CHROMIUM) && Files.isExecutable(DRIVER);
    }

    public void open(String address) {
        driver.get(address);
    }

    /** Width and height of the window (CSS pixels), light or dark. */
    public void size(int width, int height, boolean dark) {
        driver.executeCdpCommand("Emulation.setDeviceMetricsOverride", Map.of("width", width, "height", height,
            "deviceScaleFactor", 1, "mobile", false));
        driver.executeCdpCommand("Emulation.setEmulatedMedia", Map.of("features", List.of(Map.of("name",
            "prefers-color-scheme", "value", dark ? "dark" : "light"))));
    }

    void offline(boolean away) {
        driver.executeCdpCommand("Network.emulateNetworkConditions", Map.of("offline", away, "latency", 0,
            "downloadThroughput", -1, "uploadThroughput", -1));
    }

    void await(String what, BooleanSupplier holds) throws InterruptedException {
        long end = System.nanoTime() + Duration.ofSeconds(20).toNanos();
        while (System.nanoTime() < end) {
            try {
                if (holds.getAsBoolean()) {
                    return;
                }
            } catch (StaleElementReferenceException | NoSuchElementException e) {
                // The screen is being drawn again.
                Thread.sleep(10);
            }
            Thread.sleep(20);
        }
        throw new AssertionError(what + "; the page says: " + text("body"));
    }

    WebElement find(String css) {
        return driver.findElement(By.cssSelector(css));
    }

    /** What is to be read there, blanks that do not break as plain ones; empty if there is no such thing. */
    String text(String css) {
        return ((String) driver.executeScript("return document.querySelector(arguments[0])?.innerText ?? ''", css))
            .replace('\u00a0', ' ');
    }

    public void awaitText(String css, String part) throws InterruptedException {
        await("no \"" + part + "\" in " + css, () -> text(css).contains(part));
    }

    void type(String id, String text) throws InterruptedException {
        await("cannot type into " + id, () -> {
            WebElement input = driver.findElement(By.id(id));
            input.clear();
            input.sendKeys(text);
            return true;
        });
    }

    /** Ticks a box by the space bar. */
    void tick(String id) throws InterruptedException {
        await("cannot tick " + id, () -> {
            driver.findElement(By.id(id)).sendKeys(Keys.SPACE);
            return true;
        });
    }

    /** Presses keys, wherever the focus is. */
    void press(CharSequence... keys) {
        new Actions(driver).sendKeys(keys).perform();
    }

    private boolean isAt(String css) {
        return (Boolean) driver.executeScript("return document.activeElement.matches(arguments[0])", css);
    }

    /** Goes forward with the tabulator until the focus is there. */
    void tabTo(String css) {
        for (int i = 0; i < MOST_TABS && !isAt(css); i++) {
            press(Keys.TAB);
        }
        if (!isAt(css)) {
            throw new AssertionError("the tabulator does not lead to " + css);
        }
    }

    /** The same backward. */
    void backTo(String css) {
        for (int i = 0; i < MOST_TABS && !isAt(css); i++) {
            new Actions(driver).keyDown(Keys.SHIFT).sendKeys(Keys.TAB).keyUp(Keys.SHIFT).perform();
        }
        if (!isAt(css)) {
            throw new AssertionError("the tabulator does not lead back to " + css);
        }
    }

    /** A finger put down in the middle of something, moved by so many pixels to the right, and lifted. */
    void touch(WebElement what, int by) {
        driver.executeScript("arguments[0].scrollIntoView({block: 'center'})", what);
        PointerInput finger = new PointerInput(PointerInput.Kind.TOUCH, "finger");
        Sequence moves = new Sequence(finger, 0);
        moves.addAction(finger.createPointerMove(Duration.ZERO, PointerInput.Origin.fromElement(what), 0, 0));
        moves.addAction(finger.createPointerDown(PointerInput.MouseButton.LEFT.asArg()));
        if (by != 0) {
            moves.addAction(finger.createPointerMove(Duration.ofMillis(50), PointerInput.Origin.fromElement(what),
                by, 0));
        }
        moves.addAction(finger.createPointerUp(PointerInput.MouseButton.LEFT.asArg()));
        driver.perform(List.of(moves));
    }

    /** What axe-core finds; between light and dark nothing differs but the colours. */
    @SuppressWarnings("unchecked")
    List<String> violations(boolean coloursAlone) throws IOException {
        // The page stays loaded from screen to screen, and with it what examines it.
        if (!(Boolean) driver.executeScript("return 'axe' in window")) {
            try (InputStream rules = AxeBuilder.class.getResourceAsStream("/axe.min.js")) {
                driver.executeScript(new String(rules.readAllBytes(), StandardCharsets.UTF_8));
            }
        }
        return (List<String>) driver.executeAsyncScript("""
            const [only, done] = arguments;
            axe.run(document, {runOnly: only, resultTypes: ['violations']}).then(
                found => done(found.violations.map(rule => rule.id + ': ' + rule.nodes.map(node => node.html).join(' '))),
                trouble => done([String(trouble)]));""",
            coloursAlone ? Map.of("type", "rule", "values", List.of("color-contrast")) : Map.of("type", "tag", "values", TAGS));
    }

    /** Scrolls back to the top of the page. */
    public void toTop() {
        driver.executeScript("window.scrollTo(0, 0)");
    }

    /** Takes a picture of the window, from the top of the page. */
    public void picture(Path file) throws IOException {
        Files.write(file, driver.getScreenshotAs(OutputType.BYTES));
    }

    @Override
    public void close() {
        driver.quit();
    }
}
