package outwind.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.deque.html.axecore.results.Rule;
import com.deque.html.axecore.selenium.AxeBuilder;
import java.io.IOException;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.BooleanSupplier;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.NoSuchElementException;
import org.openqa.selenium.OutputType;
import org.openqa.selenium.StaleElementReferenceException;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.WindowType;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;
import outwind.board.CaliperReading;
import outwind.board.file.Recording;

/**
 * The whole job in a real browser, Chromium of the system; skipped where there is none, which {@code .ci/run} does not
 * let pass. Pictures of every screen are left in target/bench.
 */
class BenchBrowserTest {

    private static final Path CHROMIUM = Path.of("/usr/bin/chromium");
    private static final Path DRIVER = Path.of("/usr/bin/chromedriver");
    private static final Path PICTURES = Path.of("target/bench");

    private static final List<String> TAGS = List.of("wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa",
        "best-practice");

    private static final List<String> IN_THE_DARK = List.of("measure-doubt", "see", "cut-moved");

    private static ChromeDriver browser;

    @TempDir
    private Path folder;

    @BeforeAll
    static void open() throws IOException {
        assumeTrue(Files.isExecutable(CHROMIUM) && Files.isExecutable(DRIVER),
            "the page was not tested, no Chromium here: apt-get install chromium chromium-driver");
        ChromeOptions options = new ChromeOptions();
        options.setBinary(CHROMIUM.toFile());
        options.addArguments("--headless=new", "--no-sandbox", "--disable-dev-shm-usage", "--disable-gpu",
            "--force-prefers-reduced-motion");
        browser = new ChromeDriver(new ChromeDriverService.Builder().usingDriverExecutable(DRIVER.toFile()).build(),
            options);
        Files.createDirectories(PICTURES);
    }

    @AfterAll
    static void close() {
        if (browser != null) {
            browser.quit();
        }
    }

    private static void size(int width, int height, boolean dark) {
        browser.executeCdpCommand("Emulation.setDeviceMetricsOverride", Map.of("width", width, "height", height,
            "deviceScaleFactor", 1, "mobile", false));
        browser.executeCdpCommand("Emulation.setEmulatedMedia", Map.of("features", List.of(Map.of("name",
            "prefers-color-scheme", "value", dark ? "dark" : "light"))));
    }

    private static void await(String what, BooleanSupplier holds) throws InterruptedException {
        long end = System.nanoTime() + Duration.ofSeconds(8).toNanos();
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

    private static String text(String css) {
        return browser.findElement(By.cssSelector(css)).getText();
    }

    private static void awaitText(String css, String part) throws InterruptedException {
        await("no \"" + part + "\" in " + css, () -> text(css).contains(part));
    }

    private static void look(String screen) throws IOException {
        for (boolean dark : new boolean[] {false, true}) {
            for (int[] size : new int[][] {{360, 740}, {1280, 800}}) {
                size(size[0], size[1], dark);
                // Contrast differs with the colours alone: three screens in the dark have them all.
                boolean examined = dark ? size[0] > 1000 && IN_THE_DARK.contains(screen) : size[0] < 1000;
                List<Rule> violations = examined ? new AxeBuilder().withTags(TAGS).analyze(browser).getViolations()
                    : List.of();
                assertTrue(violations.isEmpty(), () -> screen + ": " + violations);
                boolean fits = (Boolean) browser.executeScript(
                    "return document.documentElement.scrollWidth <= document.documentElement.clientWidth");
                assertTrue(fits, screen + " is wider than " + size[0]);
                Files.write(PICTURES.resolve(screen + "-" + size[0] + (dark ? "-dark" : "") + ".png"),
                    browser.getScreenshotAs(OutputType.BYTES));
            }
        }
        size(320, 640, false);
        assertTrue((Boolean) browser.executeScript(
            "return document.documentElement.scrollWidth <= document.documentElement.clientWidth"),
            screen + " is wider than 320");
        assertEquals(List.of(), browser.executeScript("return [...document.querySelectorAll('a,button,input,select,textarea')]"
            + ".filter(e => e.offsetParent && !e.classList.contains('skip'))"
            + ".filter(e => { const b = e.getBoundingClientRect(); return b.height < 47.5 || b.width < 47.5; })"
            + ".map(e => e.outerHTML)"), screen + ": targets under 48 px");
        size(360, 740, false);
    }

    private static void type(String id, String text) throws InterruptedException {
        await("cannot type into " + id, () -> {
            WebElement input = browser.findElement(By.id(id));
            input.clear();
            input.sendKeys(text);
            return true;
        });
    }

    /** What the board reads at the place that is asked for: a twist of 2.4 mm and a bow of 0.4 mm (invented). */
    private static String heightHere() {
        String[] place = text("#where").replaceAll(".*x (\\d+), y (\\d+).*", "$1 $2").split(" ");
        double u = Double.parseDouble(place[0]) / 1180 - 0.5;
        double v = Double.parseDouble(place[1]) / 212 - 0.5;
        return String.format(Locale.ROOT, "%.2f", 2.4 * u * v + 1.6 * u * u);
    }

    private static void touchOff(String height) throws InterruptedException {
        browser.findElement(By.id("height")).sendKeys(height, Keys.ENTER);
        awaitText("#line", "Kept: " + height);
    }

    @Test
    void theWholeJobFromANewBoardToItsNewPlan() throws Exception {
        try (Bench bench = new Bench(folder, false)) {
            size(360, 740, false);
            browser.get(bench.server.opening());
            awaitText("main", "no board here yet");
            look("boards-empty");
            browser.get(bench.base + "/#/new");
            awaitText("h1", "Begin");
            look("new");
            type("name", "<img src=x onerror=alert(1)>");
            type("length", "1180");
            type("width", "212");
            type("thickness", "31,5");
            type("target", "26");
            browser.findElement(By.cssSelector("button.main")).click();
            awaitText("#where", "Place 1 of 15");
            assertTrue(text("h1").contains("<img src=x onerror=alert(1)>"));

            // One by our own keys, the others by the keyboard alone.
            String first = heightHere();
            for (String key : first.split("")) {
                browser.findElement(By.xpath("//div[@class='keys']/button[text()='" + key + "']")).click();
            }
            browser.findElement(By.id("keep")).click();
            awaitText("#line", "Kept: " + first);
            type("caliper", "31,5");
            browser.findElement(By.id("keep-caliper")).click();
            awaitText("#line", "Kept: thickness 31,5");
            for (int i = 2; i <= 9; i++) {
                awaitText("#where", "Place " + i + " of 15");
                touchOff(heightHere());
            }
            browser.findElement(By.id("height")).sendKeys("-6.2", Keys.ENTER);
            awaitText("[role=alert]", "The others point to");
            look("measure-doubt");
            browser.findElement(By.id("height")).clear();
            for (int i = 10; i <= 15; i++) {
                awaitText("#where", "Place " + i + " of 15");
                touchOff(heightHere());
            }
            awaitText(".verdict", "YES");
            look("measure");
            try (Stream<Path> files = Files.list(folder)) {
                Path file = files.filter(name -> name.toString().endsWith(".csv")).findFirst().orElseThrow();
                assertEquals(15, Recording.read(file).entries().size());
            }

            browser.findElement(By.linkText("See")).click();
            awaitText(".verdict", "YES");
            awaitText("#gain", "Levelling");
            look("see");
            type("target", "31");
            awaitText(".verdict", "NO");
            browser.findElement(By.linkText("Cut")).click();
            awaitText("h1", "Cut it");
            List<String> ids = browser.findElements(By.cssSelector(".steps input")).stream()
                .map(step -> step.getDomAttribute("id")).toList();
            assertTrue(ids.contains("step-shim-1"), ids.toString());
            for (String id : ids) {
                browser.findElement(By.id(id)).sendKeys(Keys.SPACE);
                await(id + " is not ticked", () -> browser.findElement(By.cssSelector("li.done #" + id)).isSelected());
            }
            look("cut");
            for (int i = 0; i < 6; i++) {
                String label = text("label[for=check-" + i + "]");
                double expected = Double.parseDouble(label.replaceAll(".*should read ([\\d.]+).*", "$1"));
                type("check-" + i, String.valueOf(expected + (i == 0 ? 2 : 0)));
                browser.findElement(By.id("check-" + i)).sendKeys(Keys.TAB);
                awaitText("#line", "Kept");
                int place = i;
                await("reading " + i + " is lost", () -> !browser.findElement(By.id("check-" + place))
                    .getDomProperty("value").isEmpty());
            }
            awaitText("main", "It has moved: here is the new plan");
            assertTrue(text("#face-b-answer .verdict").startsWith("THE BOARD HAS MOVED"), text("#face-b-answer"));
            assertTrue(text("#face-b-answer").contains("Set zero on the bed."), text("#face-b-answer"));
            look("cut-moved");
            browser.findElement(By.id("step-face-b")).sendKeys(Keys.SPACE);
            awaitText("h1", "Done");

            browser.findElement(By.linkText("Stack")).click();
            awaitText("table", "<img src=x onerror=alert(1)>");
            look("stack");
            assertTrue(bench.troubles.isEmpty(), bench.troubles.toString());
        }
    }

    @Test
    void whatIsTypedWhileTheBenchIsAwayIsSentOnceWhenItIsBackAndTwoWindowsSeeEachOther() throws Exception {
        try (Bench bench = new Bench(folder, false)) {
            String board = bench.begin("side table");
            browser.get(bench.server.opening());
            browser.get(bench.base + "/#/measure/" + board);
            awaitText("#where", "Place 1 of 15");
            browser.executeCdpCommand("Network.enable", Map.of());
            offline(true);
            browser.findElement(By.id("height")).sendKeys("0.5", Keys.ENTER);
            awaitText("#line", "Not saved yet: 0.5");
            // Work goes on meanwhile.
            awaitText("#where", "Place 2 of 15");
            browser.findElement(By.id("height")).sendKeys("0.45", Keys.ENTER);
            type("caliper", "31.4");
            browser.findElement(By.id("keep-caliper")).click();
            type("note", "by the knot");
            browser.findElement(By.id("note")).sendKeys(Keys.ENTER);
            awaitText("#line", "; the note.");
            assertEquals(0, Recording.read(folder.resolve(board)).entries().size());
            offline(false);
            awaitText("#line", "Kept: the note");
            Recording kept = Recording.read(folder.resolve(board));
            assertEquals(2, kept.board().readings().size());
            assertEquals(List.of(31.4), kept.board().calipers().stream().map(CaliperReading::thickness).toList());
            assertTrue(kept.text().contains("by the knot"), kept.text());

            String first = browser.getWindowHandle();
            browser.switchTo().newWindow(WindowType.WINDOW);
            browser.get(bench.base + "/#/measure/" + board);
            awaitText("#where", "Place 3 of 15");
            bench.touch(board, bench.asked("measure?board=" + board), 2, "0.4");
            long since = System.nanoTime();
            awaitText("#where", "Place 4 of 15");
            assertTrue(System.nanoTime() - since < 3e9);
            browser.close();
            browser.switchTo().window(first);

            // Two devices read one place: the later one is shown the other's height, and nothing is overwritten.
            awaitText("#where", "Place 4 of 15");
            offline(true);
            browser.findElement(By.id("height")).sendKeys("0.9", Keys.ENTER);
            awaitText("#line", "Not saved yet: 0.9");
            bench.touch(board, bench.asked("measure?board=" + board), 3, "0.3");
            offline(false);
            awaitText("[role=alert]", "Another device read 0.30");
            assertEquals(4, Recording.read(folder.resolve(board)).entries().size());
            assertEquals(URI.create(bench.base).getPort(), URI.create(browser.getCurrentUrl()).getPort());
        }
    }

    private static void offline(boolean away) {
        browser.executeCdpCommand("Network.emulateNetworkConditions", Map.of("offline", away, "latency", 0,
            "downloadThroughput", -1, "uploadThroughput", -1));
    }
}
