package outwind.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/** A screen as it is looked at: by axe-core's rules, for its width and its targets, and in a picture in target/bench. */
final class Look {

    private static final Path PICTURES = Path.of("target/bench");

    private Look() { }

    /** Looks at a screen as a phone shows it in the light and a desktop in the dark; leaves it as a phone shows it. */
    static void at(Browser browser, String screen) throws IOException {
        Files.createDirectories(PICTURES);
        for (boolean dark : new boolean[] {false, true}) {
            int width = dark ? 1280 : 360;
            browser.size(width, dark ? 800 : 740, dark);
            List<String> violations = browser.violations(dark);
            assertTrue(violations.isEmpty(), () -> screen + ": " + violations);
            assertTrue(fits(browser), screen + " is wider than " + width);
            browser.picture(PICTURES.resolve(screen + "-" + width + (dark ? "-dark" : "") + ".png"));
        }
        browser.size(320, 640, false);
        assertTrue(fits(browser), screen + " is wider than 320");
        assertEquals(List.of(), browser.driver.executeScript(
            "return [...document.querySelectorAll('a,button,input,select,textarea')]"
            + ".filter(e => e.offsetParent && !e.classList.contains('skip'))"
            + ".filter(e => { const b = e.getBoundingClientRect(); return b.height < 47.5 || b.width < 47.5; })"
            + ".map(e => e.outerHTML)"), screen + ": targets under 48 px");
        browser.size(360, 740, false);
    }

    private static boolean fits(Browser browser) {
        return (Boolean) browser.driver.executeScript(
            "return document.documentElement.scrollWidth <= document.documentElement.clientWidth");
    }

    /** The relief as it is drawn: every pixel. */
    static String relief(Browser browser) {
        return (String) browser.driver.executeScript("return document.querySelector('canvas.relief').toDataURL()");
    }
}
