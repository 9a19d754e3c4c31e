package outwind;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Packages flow one way: each may use only those before it in the list. */
class PackageArrowsTest {

    private static final List<String> ORDER = List.of(
        "numeric", "numeric.plane", "numeric.plate", "board", "board.text", "shop", "board.file", "scan.bytes",
        "scan.file", "scan.find", "surface.trend", "surface.field", "surface", "flatten", "setup", "cutting", "forecast", "blanks",
        "judge", "stock", "report.words", "report.json", "report.text", "report.drawing", "report.sheet",
        "report.files", "", "web", "cli.terminal", "cli.option", "cli.ask", "cli");

    static final JavaClasses CLASSES = new ClassFileImporter()
        .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
        .importPackages("outwind");

    /** The entrance for other programs is the package above all others. */
    private static String inFull(String name) {
        return name.isEmpty() ? "outwind" : "outwind." + name;
    }

    @Test
    void packagesUseOnlyThoseBeforeThem() {
        for (int i = 0; i < ORDER.size() - 1; i++) {
            String[] later = ORDER.subList(i + 1, ORDER.size()).stream()
                .map(PackageArrowsTest::inFull).toArray(String[]::new);
            noClasses().that().resideInAPackage(inFull(ORDER.get(i)))
                .should().dependOnClassesThat().resideInAnyPackage(later)
                .check(CLASSES);
        }
    }

    @Test
    void everyClassLivesInOneOfThesePackages() {
        assertFalse(CLASSES.isEmpty());
        noClasses().should().resideOutsideOfPackages(ORDER.stream()
            .map(PackageArrowsTest::inFull).toArray(String[]::new)).check(CLASSES);
    }

    /** More than this nobody overlooks. */
    @Test
    void noPackageHoldsMoreThan26Files() throws IOException {
        try (Stream<Path> sources = Files.walk(Path.of("src/main/java"))) {
            Map<Path, Long> counts = sources.filter(file -> file.toString().endsWith(".java"))
                .collect(Collectors.groupingBy(Path::getParent, Collectors.counting()));
            assertEquals(List.of(), counts.entrySet().stream().filter(one -> one.getValue() > 26).toList());
        }
    }

    @Test
    void onlyTheCommandLinePrintsOrExits() {
        noClasses().that().resideOutsideOfPackage("outwind.cli..")
            .should().accessField(System.class, "out").orShould().accessField(System.class, "err")
            .orShould().callMethod(System.class, "exit", int.class)
            .check(CLASSES);
    }

    @Test
    void onlyReportsWritesFiles() {
        noClasses().that().resideOutsideOfPackage("outwind.report..")
            .should().callMethod(java.nio.file.Files.class, "write", java.nio.file.Path.class, byte[].class,
                java.nio.file.OpenOption[].class)
            .orShould().dependOnClassesThat().haveFullyQualifiedName("java.io.FileWriter")
            .orShould().dependOnClassesThat().haveFullyQualifiedName("java.io.FileOutputStream")
            .check(CLASSES);
    }

    @Test
    void noBagsOfLeftovers() {
        noClasses().should().haveNameMatching(".*(Utils?|Helper|Manager|Impl)$").check(CLASSES);
    }
}
