package outwind.report.files;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Whatever goes wrong while a report is written, nothing that was there is lost. */
class ReportsTest {

    private static final String OLD = "the report of yesterday\n";
    private static final String NEW = "the report of today, which is longer\n".repeat(300);

    /** What is done on the disk for a report that takes two writes. */
    private static final List<String> STEPS = List.of("create", "open", "write", "write", "move");

    @TempDir
    private Path folder;

    private Path reports;

    /** A process that is killed: nothing after it runs. */
    private static final class Killed extends Error {

        private static final long serialVersionUID = 1;
    }

    @BeforeEach
    void aReportOfYesterdayAndAFileOfTheUsersLieThere() throws IOException {
        reports = Files.createDirectory(folder.resolve("reports"));
        Files.writeString(reports.resolve("oak.txt"), OLD);
        Files.writeString(reports.resolve("my-notes.txt"), "mine\n");
    }

    private static Map<String, String> contents(Path where) throws IOException {
        Map<String, String> contents = new TreeMap<>();
        try (Stream<Path> files = Files.walk(where)) {
            for (Path file : files.filter(Files::isRegularFile).toList()) {
                contents.put(where.relativize(file).toString(), Files.readString(file));
            }
        }
        return contents;
    }

    private static List<String> stepsOfAWrite(Path where) throws IOException {
        Path sound = FaultyDisk.at(where, Integer.MAX_VALUE, new IOException());
        new Reports(sound, List.of()).write("oak.txt", NEW);
        return FaultyDisk.steps(sound);
    }

    @Test
    void aReportIsWrittenBesideItsPlaceAndMovedThere() throws IOException {
        assertEquals(STEPS, stepsOfAWrite(reports));
        assertEquals(Map.of("my-notes.txt", "mine\n", "oak.txt", NEW), contents(reports));
        assertEquals("make folder", stepsOfAWrite(folder.resolve("new")).get(0));
    }

    private void everyStepFailing(IOException trouble, String reason) throws IOException {
        Map<String, String> before = contents(reports);
        for (int step = 0; step < STEPS.size(); step++) {
            Path failing = FaultyDisk.at(reports, step, trouble);

            IOException thrown = assertThrows(IOException.class, () -> new Reports(failing, List.of())
                .write("oak.txt", NEW), "step " + step);

            assertEquals(reports.resolve("oak.txt") + " is not written: " + reason + ". What was there before is still"
                + " there. Make room or see to the permissions of its folder, or choose another folder with --out.",
                thrown.getMessage());
            assertEquals(before, contents(reports), "step " + step + " of " + FaultyDisk.steps(failing));
        }
    }

    @Test
    void onAFullDiskNothingIsLostAndNothingIsLeftBehind() throws IOException {
        everyStepFailing(new FileSystemException("part", null, "No space left on device"), "No space left on device");
    }

    // Once it said of a folder that had been removed that what was there before was still there.
    @Test
    void ofAFolderThatIsGoneNothingIsPromised() throws IOException {
        Files.delete(reports.resolve("oak.txt"));
        Path failing = FaultyDisk.at(reports, 0, new NoSuchFileException("part"));

        IOException thrown = assertThrows(IOException.class, () -> new Reports(failing, List.of())
            .write("oak.txt", NEW));

        assertEquals(reports.resolve("oak.txt") + " is not written: its folder is not there any more. Make room or see to"
            + " the permissions of its folder, or choose another folder with --out.", thrown.getMessage());
    }

    @Test
    void withoutPermissionNothingIsLost() throws IOException {
        everyStepFailing(new AccessDeniedException("part"), "there is no permission to write there");
    }

    @Test
    void aDiskThatSaysNothingIsToldAsWell() throws IOException {
        everyStepFailing(new IOException(), "the disk does not take it");
    }

    @Test
    void aFolderThatCannotBeMadeIsTold() throws IOException {
        Path below = reports.resolve("oak.txt/new");

        IOException thrown = assertThrows(IOException.class, () -> new Reports(below, List.of()).write("ash.txt", NEW));

        assertTrue(thrown.getMessage().startsWith(below.resolve("ash.txt") + " is not written: "), thrown.getMessage());
        assertEquals(OLD, Files.readString(reports.resolve("oak.txt")));
    }

    @Test
    void aRunThatIsKilledAtAnyStepLeavesTheOldReportWholeAndDoesNotHinderTheNext() throws IOException {
        List<Integer> leftBehind = new ArrayList<>();
        for (int step = 0; step < STEPS.size(); step++) {
            Path own = Files.createDirectory(folder.resolve("killed-at-" + step));
            Files.writeString(own.resolve("oak.txt"), OLD);
            Path dying = FaultyDisk.at(own, step, new Killed());

            assertThrows(Killed.class, () -> new Reports(dying, List.of()).write("oak.txt", NEW));

            Map<String, String> after = contents(own);
            assertEquals(OLD, after.remove("oak.txt"), "step " + step);
            leftBehind.add(after.values().stream().mapToInt(String::length).sum());
            assertEquals(step == 0 ? 0 : 1, after.size());
            assertTrue(after.keySet().stream().allMatch(name -> name.matches("\\.outwind-\\d+-\\d+\\.part")),
                after.toString());

            new Reports(own, List.of()).write("oak.txt", NEW);

            assertEquals(NEW, Files.readString(own.resolve("oak.txt")));
        }
        // Before there was a file; before it was opened; after half of the first write, of the second; before the move.
        assertEquals(List.of(0, 0), leftBehind.subList(0, 2));
        assertTrue(0 < leftBehind.get(2) && leftBehind.get(2) < leftBehind.get(3) && leftBehind.get(3) < NEW.length(),
            leftBehind.toString());
        assertEquals(NEW.length(), leftBehind.get(4));
    }

    @Test
    void whatAKilledRunLeftIsClearedAwayAfterADayAndNothingElseIs() throws IOException {
        FileTime old = FileTime.from(Instant.now().minus(25, ChronoUnit.HOURS));
        for (String name : List.of(".outwind-12-0.part", "my-notes.txt", "oak.txt", "film.part", ".outwind-notes")) {
            Path file = reports.resolve(name);
            Files.writeString(file, "x");
            Files.setLastModifiedTime(file, old);
        }
        Files.writeString(reports.resolve(".outwind-13-0.part"), "of a run that is still at it");

        new Reports(reports, List.of()).sweep();

        assertEquals(List.of(".outwind-13-0.part", ".outwind-notes", "film.part", "my-notes.txt", "oak.txt"),
            List.copyOf(contents(reports).keySet()));
        new Reports(folder.resolve("not-there"), List.of()).sweep();
        assertFalse(Files.exists(folder.resolve("not-there")));
    }

    @Test
    void aFileWhereTheFolderShouldBeIsToldAndLeftAsItIs() throws IOException {
        Path inTheWay = Files.writeString(folder.resolve("file"), "mine\n");

        IOException thrown = assertThrows(IOException.class, () -> new Reports(inTheWay, List.of())
            .write("oak.txt", NEW));

        assertTrue(thrown.getMessage().contains(inTheWay + " is a file, not a folder"), thrown.getMessage());
        assertEquals("mine\n", Files.readString(inTheWay));
    }

    @Test
    void aFolderWhereTheReportShouldBeIsToldAndLeftAsItIs() throws IOException {
        Files.createDirectories(reports.resolve("ash.txt/inside"));

        IOException thrown = assertThrows(IOException.class, () -> new Reports(reports, List.of())
            .write("ash.txt", NEW));

        assertTrue(thrown.getMessage().startsWith(reports.resolve("ash.txt") + " is not written: "), thrown.getMessage());
        assertTrue(Files.isDirectory(reports.resolve("ash.txt/inside")));
        assertEquals(2, contents(reports).size());
    }

    @Test
    void aFolderMayBeALinkToOne() throws IOException {
        Path link = Files.createSymbolicLink(folder.resolve("link"), reports);

        new Reports(link, List.of()).write("oak.txt", NEW);

        assertEquals(NEW, Files.readString(reports.resolve("oak.txt")));
    }

    @Test
    void inAFolderThatIsReadOnlyNothingIsLost() throws IOException {
        assumeTrue(!"root".equals(System.getProperty("user.name")), "whoever may do everything may write everywhere");
        Files.setPosixFilePermissions(reports, PosixFilePermissions.fromString("r-xr-xr-x"));
        try {
            IOException thrown = assertThrows(IOException.class, () -> new Reports(reports, List.of())
                .write("oak.txt", NEW));

            assertTrue(thrown.getMessage().contains("there is no permission to write there"), thrown.getMessage());
            assertEquals(OLD, Files.readString(reports.resolve("oak.txt")));
        } finally {
            Files.setPosixFilePermissions(reports, PosixFilePermissions.fromString("rwxr-xr-x"));
        }
    }

    // A report is for others at the shop as well: it may be read by whom a file made here may usually be read.
    @Test
    void aReportHasThePermissionsThatFilesUsuallyGet() throws IOException {
        Path usual = Files.writeString(folder.resolve("usual"), "");
        Path report = new Reports(reports, List.of()).write("ash.txt", NEW);
        assumeTrue(Files.getFileStore(report).supportsFileAttributeView("posix"));

        assertEquals(Files.getPosixFilePermissions(usual), Files.getPosixFilePermissions(report));
    }
}
