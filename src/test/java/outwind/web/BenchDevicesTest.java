package outwind.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WindowType;
import outwind.board.CaliperReading;
import outwind.board.file.Recording;

/** Several devices at one bench. */
class BenchDevicesTest extends InBrowser {

    @Test
    void aSecondDeviceComesInByItsCodeAndTapsTheReadingThatLooksWrong() throws Exception {
        Files.copy(Path.of("sample-probes/door-panel-misread.csv"), folder.resolve("door.csv"));
        try (Bench bench = new Bench(folder, true); Browser phone = new Browser()) {
            String board = bench.begin("side table");
            browser.size(1280, 800, false);
            browser.open(bench.server.opening());
            browser.open(bench.base + "/#/measure/" + board);
            browser.awaitText("#where", "Place 1 of 15");

            String entrance = bench.server.addresses().stream().findFirst().orElse(bench.base + "/enter");
            phone.size(360, 740, false);
            phone.open(entrance);
            phone.find("#code").sendKeys("AAAAAAAA", Keys.ENTER);
            phone.awaitText("[role=alert]", "That is not the code");
            Look.at(phone, "enter");
            String code = bench.server.code();
            phone.find("#code").sendKeys(code.toLowerCase(Locale.ROOT), Keys.ENTER);
            phone.awaitText("h1", "Boards");
            assertNotEquals(code, bench.server.code());

            String inside = entrance.replace("/enter", "/");
            phone.open(inside + "#/measure/" + board);
            phone.awaitText("#where", "Place 1 of 15");
            phone.find("#height").sendKeys("0.5", Keys.ENTER);
            phone.awaitText("#line", "Kept: 0.5");
            browser.awaitText("#where", "Place 2 of 15");

            phone.open(inside + "#/see/door.csv");
            phone.awaitText("#suspects", "Looks wrong");
            int line = bench.asked("see?board=door.csv").path("judgement").path("readings").path("suspects").path(0)
                .path("line").asInt();
            String without = bench.asked("see?board=door.csv&without=" + line).path("words").path(1).asText()
                .replace('\u00a0', ' ');
            assertFalse(phone.text("[role=status].seen").contains(without));
            phone.touch(phone.find("circle.suspect"), 0);
            phone.awaitText("[role=status].seen", without);
            phone.awaitText("#suspects", "Put it back");
            String before = Look.relief(phone);
            phone.touch(phone.find("canvas.relief"), 80);
            phone.await("the relief does not turn", () -> !Look.relief(phone).equals(before));
            Look.at(phone, "see-without");
            assertTrue(bench.troubles.isEmpty(), bench.troubles.toString());
        }
    }

    @Test
    void whatIsTypedWhileTheBenchIsAwayIsSentOnceWhenItIsBackAndTwoWindowsSeeEachOther() throws Exception {
        try (Bench bench = new Bench(folder, false)) {
            String board = bench.begin("side table");
            browser.open(bench.server.opening());
            browser.open(bench.base + "/#/measure/" + board);
            browser.awaitText("#where", "Place 1 of 15");
            browser.driver.executeCdpCommand("Network.enable", Map.of());
            browser.offline(true);
            browser.driver.findElement(By.id("height")).sendKeys("0.5", Keys.ENTER);
            browser.awaitText("#line", "Not saved yet: 0.5");
            // Work goes on meanwhile.
            browser.awaitText("#where", "Place 2 of 15");
            browser.driver.findElement(By.id("height")).sendKeys("0.45", Keys.ENTER);
            browser.type("caliper", "31.4");
            browser.driver.findElement(By.id("keep-caliper")).click();
            browser.type("note", "by the knot");
            browser.driver.findElement(By.id("note")).sendKeys(Keys.ENTER);
            browser.awaitText("#line", "; the note.");
            assertEquals(0, Recording.read(folder.resolve(board)).entries().size());
            browser.offline(false);
            browser.awaitText("#line", "Kept: the note");
            Recording kept = Recording.read(folder.resolve(board));
            assertEquals(2, kept.board().readings().size());
            assertEquals(List.of(31.4), kept.board().calipers().stream().map(CaliperReading::thickness).toList());
            assertTrue(kept.text().contains("by the knot"), kept.text());

            String first = browser.driver.getWindowHandle();
            browser.driver.switchTo().newWindow(WindowType.WINDOW);
            browser.open(bench.base + "/#/measure/" + board);
            browser.awaitText("#where", "Place 3 of 15");
            bench.touch(board, bench.asked("measure?board=" + board), 2, "0.4");
            long since = System.nanoTime();
            browser.awaitText("#where", "Place 4 of 15");
            assertTrue(System.nanoTime() - since < 3e9);
            browser.driver.close();
            browser.driver.switchTo().window(first);

            // Two devices read one place: the later one is shown the other's height, and nothing is overwritten.
            browser.awaitText("#where", "Place 4 of 15");
            browser.offline(true);
            browser.driver.findElement(By.id("height")).sendKeys("0.9", Keys.ENTER);
            browser.awaitText("#line", "Not saved yet: 0.9");
            bench.touch(board, bench.asked("measure?board=" + board), 3, "0.3");
            browser.offline(false);
            browser.awaitText("[role=alert]", "Another device read 0.30");
            assertEquals(4, Recording.read(folder.resolve(board)).entries().size());
            assertEquals(URI.create(bench.base).getPort(), URI.create(browser.driver.getCurrentUrl()).getPort());
        }
    }
}
