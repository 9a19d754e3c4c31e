package outwind.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import outwind.board.file.Recording;

/** The whole job. */
class BenchBrowserTest extends InBrowser {

    /** What the board reads at the place that is asked for: a twist of 2.4 mm and a bow of 0.4 mm (invented). */
    private static String heightHere() {
        String[] place = browser.text("#where").replaceAll(".*x (\\d+), y (\\d+).*", "$1 $2").split(" ");
        double u = Double.parseDouble(place[0]) / 1180 - 0.5;
        double v = Double.parseDouble(place[1]) / 212 - 0.5;
        return String.format(Locale.ROOT, "%.2f", 2.4 * u * v + 1.6 * u * u);
    }

    private static void touchOff(String height) throws InterruptedException {
        browser.driver.findElement(By.id("height")).sendKeys(height, Keys.ENTER);
        browser.awaitText("#line", "Kept: " + height);
    }

    // Were the rules not asked, no screen would break one.
    @Test
    void theRulesSeeWhatBreaksThem() throws Exception {
        try (Bench bench = new Bench(folder, false)) {
            browser.open(bench.server.opening());
            browser.awaitText("main", "no board here yet");
            browser.driver.executeScript("""
                const faint = document.createElement('p');
                faint.textContent = 'faint';
                faint.style.color = '#ccc';
                document.querySelector('main').append(faint, document.createElement('img'));""");

            assertTrue(browser.violations(true).stream().anyMatch(rule -> rule.startsWith("color-contrast: ")));
            assertTrue(browser.violations(false).stream().anyMatch(rule -> rule.startsWith("image-alt: ")));
        }
    }

    @Test
    void theWholeJobFromANewBoardToItsNewPlan() throws Exception {
        try (Bench bench = new Bench(folder, false)) {
            browser.size(360, 740, false);
            browser.open(bench.server.opening());
            browser.awaitText("main", "no board here yet");
            Look.at(browser, "boards-empty");
            browser.open(bench.base + "/#/new");
            browser.awaitText("h1", "Begin");
            Look.at(browser, "new");
            browser.type("name", "<img src=x onerror=alert(1)>");
            browser.type("length", "1180");
            browser.type("width", "212");
            browser.type("thickness", "31,5");
            browser.type("target", "26");
            browser.driver.findElement(By.cssSelector("button.main")).click();
            browser.awaitText("#where", "Place 1 of 15");
            assertTrue(browser.text("h1").contains("<img src=x onerror=alert(1)>"));

            // One by our own keys, the others by the keyboard alone.
            String first = heightHere();
            for (String key : first.split("")) {
                browser.driver.findElement(By.xpath("//div[@class='keys']/button[text()='" + key + "']")).click();
            }
            browser.driver.findElement(By.id("keep")).click();
            browser.awaitText("#line", "Kept: " + first);
            browser.type("caliper", "31,5");
            browser.driver.findElement(By.id("keep-caliper")).click();
            browser.awaitText("#line", "Kept: thickness 31,5");
            for (int i = 2; i <= 9; i++) {
                browser.awaitText("#where", "Place " + i + " of 15");
                touchOff(heightHere());
            }
            browser.driver.findElement(By.id("height")).sendKeys("-6.2", Keys.ENTER);
            browser.awaitText("[role=alert]", "The others point to");
            Look.at(browser, "measure-doubt");
            browser.driver.findElement(By.id("height")).clear();
            for (int i = 10; i <= 15; i++) {
                browser.awaitText("#where", "Place " + i + " of 15");
                touchOff(heightHere());
            }
            browser.awaitText(".verdict", "YES");
            Look.at(browser, "measure");
            try (Stream<Path> files = Files.list(folder)) {
                Path file = files.filter(name -> name.toString().endsWith(".csv")).findFirst().orElseThrow();
                assertEquals(15, Recording.read(file).entries().size());
            }

            browser.driver.findElement(By.linkText("See")).click();
            browser.awaitText(".verdict", "YES");
            browser.awaitText("#gain", "Levelling");
            Look.at(browser, "see");
            browser.type("target", "31");
            browser.awaitText(".verdict", "NO");
            browser.driver.findElement(By.linkText("Cut")).click();
            browser.awaitText("h1", "Cut it");
            List<String> ids = browser.driver.findElements(By.cssSelector(".steps input")).stream()
                .map(step -> step.getDomAttribute("id")).toList();
            assertTrue(ids.contains("step-shim-1"), ids.toString());
            for (String id : ids) {
                browser.tick(id);
                browser.await(id + " is not ticked", () -> browser.driver.findElement(By.cssSelector("li.done #" + id)).isSelected());
            }
            Look.at(browser, "cut");
            for (int i = 0; i < 6; i++) {
                String label = browser.text("label[for=check-" + i + "]");
                double expected = Double.parseDouble(label.replaceAll(".*should read ([\\d.]+).*", "$1"));
                browser.type("check-" + i, String.valueOf(expected + (i == 0 ? 2 : 0)));
                browser.press(Keys.TAB);
                browser.awaitText("#line", "Kept");
                int place = i;
                browser.await("reading " + i + " is lost", () -> !browser.driver.findElement(By.id("check-" + place))
                    .getDomProperty("value").isEmpty());
            }
            browser.awaitText("main", "It has moved: here is the new plan");
            assertTrue(browser.text("#face-b-answer .verdict").startsWith("THE BOARD HAS MOVED"), browser.text("#face-b-answer"));
            assertTrue(browser.text("#face-b-answer").contains("Set zero on the bed."), browser.text("#face-b-answer"));
            Look.at(browser, "cut-moved");
            browser.tick("step-face-b");
            browser.awaitText("h1", "Done");

            browser.driver.findElement(By.linkText("Stack")).click();
            browser.awaitText("table", "<img src=x onerror=alert(1)>");
            Look.at(browser, "stack");
            Files.writeString(folder.resolve("bill.csv"), "name,length,width,thickness,quantity\nrail,300,60,20,2\n");
            browser.driver.navigate().refresh();
            browser.awaitText("#bill", "bill.csv");
            browser.driver.findElement(By.cssSelector("#bill option[value='bill.csv']")).click();
            browser.awaitText(".cuts", "crosscut");
            assertTrue(browser.text(".cuts").contains("300.0"), browser.text(".cuts"));
            assertTrue(browser.text("#buying").contains("bind the blade"), browser.text("#buying"));
            browser.driver.executeScript("document.querySelector('.cuts').scrollIntoView()");
            Look.at(browser, "stack-bill");
            assertTrue(bench.troubles.isEmpty(), bench.troubles.toString());
        }
    }

    private static boolean isKept(String height) {
        return browser.text("#line").contains("Kept: " + height + " at");
    }

    private static boolean isDoubted() {
        return browser.text("[role=alert]").contains("The others point to");
    }

    private static void fill(String id, String text) {
        browser.tabTo("#" + id);
        browser.press(text);
    }

    @Test
    void theWholeJobByTheKeyboardAloneOnADesktop() throws Exception {
        try (Bench bench = new Bench(folder, false)) {
            browser.size(1280, 800, false);
            browser.open(bench.server.opening());
            browser.awaitText("main", "no board here yet");
            browser.tabTo("main a.button");
            browser.press(Keys.ENTER);
            browser.awaitText("h1", "Begin");
            fill("name", "bench top");
            fill("length", "1180");
            fill("width", "212");
            fill("thickness", "31,5");
            fill("target", "22");
            browser.press(Keys.ENTER);
            for (int i = 1; i <= 15; i++) {
                browser.awaitText("#where", "Place " + i + " of 15");
                // A slip of 4 mm, which the person insists on; readings beside it may be asked about, too.
                boolean slips = i == 10;
                String height = slips ? String.valueOf(Double.parseDouble(heightHere()) + 4) : heightHere();
                browser.press(height, Keys.ENTER);
                browser.await("no answer to " + height, () -> isKept(height) || isDoubted());
                if (slips || !isKept(height)) {
                    assertTrue(isDoubted());
                    browser.press(Keys.ENTER);
                }
                browser.awaitText("#line", "Kept: " + height);
            }
            String board = bench.asked("boards").path("boards").path(0).path("file").asText();

            browser.backTo("nav a[href^='#/see/']");
            browser.press(Keys.ENTER);
            browser.awaitText("#suspects", "Looks wrong");
            int line = bench.asked("see?board=" + board).path("judgement").path("readings").path("suspects").path(0)
                .path("line").asInt();
            String without = bench.asked("see?board=" + board + "&without=" + line).path("words").path(1).asText()
                .replace('\u00a0', ' ');
            assertFalse(browser.text("[role=status].seen").contains(without));
            browser.tabTo("#without-" + line);
            browser.press(Keys.ENTER);
            browser.awaitText("[role=status].seen", without);
            // The focus is on what undoes it, so that the keyboard goes on from there.
            browser.press(Keys.ENTER);
            browser.awaitText("#suspects", "Looks wrong");

            String section = browser.text("#section-words");
            browser.tabTo("#along");
            browser.press(Keys.ARROW_RIGHT, Keys.ARROW_RIGHT);
            assertNotEquals(section, browser.text("#section-words"));
            browser.tabTo("#turn");
            String still = Look.relief(browser);
            Thread.sleep(150);
            assertEquals(still, Look.relief(browser), "it moves by itself");
            browser.press(Keys.ARROW_RIGHT, Keys.ARROW_RIGHT);
            assertNotEquals(still, Look.relief(browser));

            browser.backTo("nav a[href^='#/cut/']");
            browser.press(Keys.ENTER);
            browser.awaitText("h1", "Cut it");
            List<String> ids = browser.driver.findElements(By.cssSelector(".steps input")).stream()
                .map(step -> step.getDomAttribute("id")).toList();
            for (String id : ids) {
                browser.tabTo("#" + id);
                browser.press(Keys.SPACE);
                browser.await(id + " is not ticked", () -> browser.find("li.done #" + id).isSelected());
            }
            browser.tabTo("#check-0");
            for (int i = 0; i < 6; i++) {
                browser.press(browser.text("label[for=check-" + i + "]").replaceAll(".*should read (-?[\\d.]+).*", "$1"),
                    Keys.ENTER);
            }
            browser.awaitText("#face-b-answer", "As expected");
            browser.tabTo("#step-face-b");
            browser.press(Keys.SPACE);
            browser.awaitText("h1", "Done");
            assertTrue(bench.troubles.isEmpty(), bench.troubles.toString());
        }
    }
}
