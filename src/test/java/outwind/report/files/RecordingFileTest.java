package outwind.report.files;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.OpenOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import outwind.board.Board;
import outwind.board.Place;
import outwind.board.file.BoardFile;
import outwind.board.file.Defaults;
import outwind.board.file.Recording;
import outwind.board.text.BadBoardFile;
import outwind.report.words.Figures;

class RecordingFileTest {

    private static final String KEYS = "# units: mm\n# length: 600\n# width: 150\n# thickness: 30 everywhere\n";

    @TempDir
    private Path folder;

    /** The power fails. */
    private static final class PowerCut extends Error {

        private static final long serialVersionUID = 1;
    }

    /**
     * A disk that does so many things before the power fails, each byte written, each wait and each move being one. It
     * does not wait itself: what a process has written outlives it.
     */
    private static final class FailingDisk implements Disk {

        private int left;

        FailingDisk(int left) {
            this.left = left;
        }

        private void step() {
            if (left-- == 0) {
                throw new PowerCut();
            }
        }

        @Override
        public void write(Path file, byte[] bytes, OpenOption... how) throws IOException {
            int written = Math.min(left, bytes.length);
            Files.write(file, Arrays.copyOf(bytes, written), how);
            left -= written;
            step();
        }

        @Override
        public void cutOff(Path file, long length) {
            throw new IllegalStateException("nothing is cut off where no error is reported");
        }

        @Override
        public void replace(Path file, Path by) throws IOException {
            step();
            Files.move(by, file, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
            step();
        }
    }

    private static Recording begun() throws BadBoardFile {
        return Recording.of("b.csv", KEYS).planning(List.of(new Place(20, 15), new Place(300, 15),
            new Place(580, 15), new Place(580, 135), new Place(300, 135), new Place(20, 135)));
    }

    /** One more thing that a person does. */
    private static Recording step(Recording recording, SplittableRandom random) {
        Place place = new Place(random.nextInt(600), random.nextInt(150));
        return switch (random.nextInt(14)) {
            case 0 -> recording.undone().orElse(recording);
            case 1 -> recording.noted("beside a knot, or \"so\" \u00e9" + random.nextInt(100)).orElse(recording);
            case 2 -> recording.next().isPresent()
                ? recording.skipped(recording.plan().get(recording.next().getAsInt()).place()) : recording;
            case 3 -> recording.tidied();
            default -> recording.touched(place, Figures.decimals(random.nextDouble(-3, 3), 2));
        };
    }

    // What was kept before the power failed is there afterwards, to the letter; or what was being kept is there whole.
    @Tag("long")
    @Test
    void nothingKeptIsLostAtTwoHundredMoments() throws IOException, BadBoardFile {
        SplittableRandom random = new SplittableRandom(20261125);
        int torn = 0;
        for (int moment = 0; moment < 200; moment++) {
            Path file = folder.resolve(moment + ".csv");
            Recording kept = null;
            Recording next = begun();
            if (moment >= 20) {
                RecordingFile.at(file, new FailingDisk(Integer.MAX_VALUE)).keep(next.text());
                kept = next;
            }
            Disk disk = new FailingDisk(random.nextInt(400));
            try {
                for (RecordingFile on = RecordingFile.at(file, disk); true; next = step(next, random)) {
                    on.keep(next.text());
                    kept = next;
                }
            } catch (PowerCut cut) {
                torn += Files.exists(file) && !Files.readString(file).endsWith("\n") ? 1 : 0;
                requireKept(file, kept, next, "moment " + moment);
            }
        }
        // Not a property, but without it the test would say little.
        assertTrue(torn > 40, torn + " of 200 moments tore a line");
    }

    private static void requireKept(Path file, Recording kept, Recording next, String moment)
            throws IOException, BadBoardFile {
        if (kept == null && !Files.exists(file)) {
            return;
        }
        Recording found = Recording.read(file);
        String was = kept == null ? next.text() : kept.text();
        assertTrue(found.text().equals(was) || found.text().equals(next.text()), moment + "\n" + found.text());
        if (found.board().readings().size() >= 3) {
            Board judged = BoardFile.read(file, Defaults.NOTHING);
            assertEquals(found.board().readings(), judged.readings(), moment);
        }
        Recording more = found.touched(new Place(1, 1), "0.5");
        RecordingFile.at(file, new FailingDisk(Integer.MAX_VALUE)).keep(more.text());
        assertEquals(more.text(), Files.readString(file), moment);
    }

    @Test
    void aTextThatGoesOnIsAddedAndAnyOtherIsMovedIntoPlace() throws IOException, BadBoardFile {
        Path file = folder.resolve("b.csv");
        RecordingFile kept = RecordingFile.at(file);
        kept.keep(begun().text());
        Object first = Files.readAttributes(file, "*").get("fileKey");

        Recording touched = begun().touched(new Place(20, 15), "0.1");
        kept.keep(touched.text());
        assertEquals(first, Files.readAttributes(file, "*").get("fileKey"));

        kept.keep(touched.undone().orElseThrow().text());
        assertEquals(begun().text(), Files.readString(file));
        try (var files = Files.list(folder)) {
            assertEquals(List.of(file), files.toList());
        }
    }

    @Test
    void aFileThatSomebodyElseWritesToIsLeftAsItIs() throws IOException, BadBoardFile {
        Path file = folder.resolve("b.csv");
        RecordingFile kept = RecordingFile.at(file);
        kept.keep(begun().text());
        Files.writeString(file, "mine");

        assertThrows(IOException.class, () -> kept.keep(begun().touched(new Place(20, 15), "0.1").text()));
        assertEquals("mine", Files.readString(file));
    }

    @Test
    void aFullDiskLeavesNoHalfLine() throws IOException, BadBoardFile {
        Path file = folder.resolve("b.csv");
        RecordingFile.at(file).keep(begun().text());
        Disk full = new Disk() {

            @Override
            public void write(Path to, byte[] bytes, OpenOption... how) throws IOException {
                Disk.REAL.write(to, Arrays.copyOf(bytes, bytes.length / 2), how);
                throw new IOException("No space left on device");
            }

            @Override
            public void cutOff(Path to, long length) throws IOException {
                Disk.REAL.cutOff(to, length);
            }

            @Override
            public void replace(Path to, Path by) {
                throw new IllegalStateException("nothing is replaced");
            }
        };
        RecordingFile kept = RecordingFile.at(file, full);

        assertThrows(IOException.class, () -> kept.keep(begun().touched(new Place(20, 15), "0.1").text()));
        assertEquals(begun().text(), Files.readString(file));
    }

    @Test
    void aLinkStaysALink() throws IOException, BadBoardFile {
        Path real = folder.resolve("real.csv");
        RecordingFile.at(real).keep(begun().text());
        Path link = Files.createSymbolicLink(folder.resolve("link.csv"), real);
        Recording touched = begun().touched(new Place(20, 15), "0.1");

        RecordingFile kept = RecordingFile.at(link);
        kept.keep(touched.text());
        kept.keep(begun().text());

        assertTrue(Files.isSymbolicLink(link));
        assertEquals(begun().text(), Files.readString(real));
        assertFalse(Files.exists(folder.resolve(".real.csv.part")));
    }
}
