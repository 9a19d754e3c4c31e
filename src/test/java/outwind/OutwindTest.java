package outwind;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaModifier;
import java.io.ByteArrayInputStream;
import java.io.File;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.lang.module.ModuleDescriptor;
import java.lang.module.ModuleFinder;
import java.lang.reflect.Modifier;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import javax.tools.Diagnostic;
import javax.tools.DiagnosticCollector;
import javax.tools.JavaCompiler;
import javax.tools.JavaFileObject;
import javax.tools.ToolProvider;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import outwind.board.Board;
import outwind.board.BoardBuilder;
import outwind.board.Face;
import outwind.board.Turned;
import outwind.board.Underside;
import outwind.board.Units;
import outwind.cli.Main;
import outwind.forecast.JudgeOptions;
import outwind.judge.Judgement;

/** Other programs get what the command line gives, by way of the module's published packages alone. */
class OutwindTest {

    private static final Path SAMPLE = Path.of("sample-probes/hall-table.csv");
    private static final Path SHOP = Path.of("sample-probes/outwind-shop.txt");

    @Test
    void reportAndJsonAreThoseOfTheCommandLine(@TempDir Path out) throws IOException {
        StringWriter printed = new StringWriter();
        Main.run(new PrintWriter(printed), new PrintWriter(printed), "judge", SAMPLE.toString(), "--json", "--no-chart",
            "--out", out.toString());

        Board board = Outwind.read(SAMPLE);
        Judgement judgement = Outwind.judge(board, JudgeOptions.usual(board, Outwind.readShop(SHOP)));

        assertEquals(Files.readString(out.resolve("hall-table.json")), Outwind.json(judgement));
        String report = Outwind.report(judgement).strip();
        assertTrue(Files.readString(out.resolve("hall-table.txt")).startsWith(report.substring(0, 1000)), report);
    }

    @Test
    void boardBuiltInCodeIsTheBoardReadFromItsFile(@TempDir Path folder) throws IOException {
        Path file = Files.writeString(folder.resolve("shelf.csv"), """
            # units: mm
            # length: 900
            # width: 200
            # thickness: 27.4
            # species: white oak
            # repeatability: 0.05
            # target: 22
            # skim: 0.4
            # underside: flat
            # turned: along
            # defect: 0 0 40 200
            x,y,z,thickness,face
            20,20,0,27.5,A
            880,20,0.1,27.3,A
            450,180,1.2,27.6,A
            20,20,3,,B
            880,20,3.1,,B
            450,180,3.2,,B
            """);
        Board read = Outwind.read(file);
        BoardBuilder builder = Board.builder("shelf", 900, 200).thickness(27.4).species("white oak")
            .repeatability(0.05).target(22).skim(0.4).underside(Underside.FLAT).turned(Turned.ALONG)
            .units(Units.MILLIMETRES).reading(20, 20, 0).reading(880, 20, 0.1).reading(450, 180, 1.2)
            .reading(Face.B, 20, 20, 3).reading(Face.B, 880, 20, 3.1).reading(Face.B, 450, 180, 3.2)
            .caliper(20, 20, 27.5).caliper(880, 20, 27.3).caliper(450, 180, 27.6);
        read.defects().forEach(builder::defect);
        Board built = builder.build();

        assertEquals(withoutLines(read), withoutLines(built));
    }

    /** Lines of a file are all that a board built in code lacks. */
    private static String withoutLines(Board board) {
        return board.toString().replaceAll("line=\\d+", "");
    }

    @Test
    void whatIsAskedReachesTheAnswer() throws IOException {
        Board board = Outwind.read(SAMPLE);

        Judgement judgement = Outwind.judge(board, JudgeOptions.usual(board).withSeed(7).stoppingAt(25));

        assertEquals(7, judgement.request().seed());
        assertEquals(25, judgement.cuts().thickness(), 1e-9);
    }

    @Test
    void sameBoardGivesTheSameAnswerThatComparesByItsFigures() throws IOException {
        Judgement first = Outwind.judge(Outwind.read(SAMPLE));
        Judgement second = Outwind.judge(Outwind.read(SAMPLE));

        assertEquals(first.outlook(), second.outlook());
        assertEquals(first.outlook().hashCode(), second.outlook().hashCode());
        assertNotEquals(first.outlook(), Outwind.judge(first.board(), first.request().withSeed(2)).outlook());
        Path scan = Path.of("sample-probes/bread-board-scan.ply");
        assertEquals(Outwind.read(scan), Outwind.read(scan));
    }

    /** A record compares arrays by whether they are one and the same, unless it says otherwise. */
    @Test
    void publishedRecordsCompareArraysByContent() {
        Set<String> published = ModuleFinder.of(Path.of("target/classes")).find("outwind").orElseThrow().descriptor()
            .exports().stream().map(ModuleDescriptor.Exports::source).collect(Collectors.toSet());

        List<String> byIdentity = PackageArrowsTest.CLASSES.stream()
            .filter(type -> published.contains(type.getPackageName()) && type.isRecord()
                && type.getModifiers().contains(JavaModifier.PUBLIC))
            .map(JavaClass::reflect)
            .filter(type -> Arrays.stream(type.getRecordComponents()).anyMatch(part -> part.getType().isArray()))
            // What the compiler makes is final; what a person writes is not.
            .filter(type -> Arrays.stream(type.getDeclaredMethods())
                .anyMatch(method -> method.getName().equals("equals") && Modifier.isFinal(method.getModifiers())))
            .map(Class::getName).toList();

        assertEquals(List.of(), byIdentity);
    }

    @Test
    void sheetIsAPicture() throws IOException {
        byte[] png = Outwind.sheet(Outwind.judge(Outwind.read(SAMPLE)));

        assertTrue(ImageIO.read(new ByteArrayInputStream(png)).getWidth() > 500);
    }

    @Test
    void fileAtFaultSaysWhereAndHowToMendIt(@TempDir Path folder) throws IOException {
        Path file = Files.writeString(folder.resolve("bad.csv"), "# length: 900\n# width: 200\nx,y,z\n20,20,high\n");

        String message = assertThrows(IllegalArgumentException.class, () -> Outwind.read(file)).getMessage();

        assertTrue(message.contains("bad.csv:4:7") && message.contains("high"), message);
    }

    @Test
    void boardThatCannotBeIsRefused() {
        Board thin = Board.builder("thin", 900, 200).thickness(5).reading(Face.BED, 0, 0, 0)
            .underside(Underside.FLAT).reading(20, 20, -5).reading(880, 20, -5).reading(20, 180, -5).build();

        assertThrows(IllegalArgumentException.class, () -> Outwind.judge(thin));
    }

    @Test
    void versionIsThatOfThePomEverywhere() throws IOException {
        Matcher pom = Pattern.compile("<artifactId>outwind</artifactId>\\s*<version>(.*?)</version>")
            .matcher(Files.readString(Path.of("pom.xml")));
        assertTrue(pom.find());
        String version = pom.group(1);

        StringWriter printed = new StringWriter();
        Main.run(new PrintWriter(printed), new PrintWriter(printed), "--version");

        assertTrue(version.matches("\\d+\\.\\d+\\.\\d+(-SNAPSHOT)?"), version);
        assertEquals(version, Outwind.version());
        assertEquals("outwind " + version, printed.toString().strip());
        assertTrue(Outwind.json(Outwind.judge(Outwind.read(SAMPLE))).contains("\"version\" : \"" + version + "\""));
        assertTrue(Files.readString(Path.of("src/site/markdown/changes.md")).contains("\n## " + version + "\n"));
    }

    /** Compiled and run as a module of its own: it sees no package that is not exported. */
    @Test
    void sampleProgramRuns(@TempDir Path folder) throws IOException, InterruptedException {
        String program = samples().get(1);
        assertEquals(List.of(), compiled(folder, program));

        Process run = new ProcessBuilder(Path.of(System.getProperty("java.home"), "bin", "java").toString(),
            "-XX:TieredStopAtLevel=1", "-Duser.language=en", "--module-path",
            modulePath() + File.pathSeparator + folder, "--module", "sample/sample.Shelf")
            .redirectErrorStream(true).start();
        List<String> lines = new String(run.getInputStream().readAllBytes(), StandardCharsets.UTF_8).lines().toList();

        assertEquals(0, run.waitFor(), lines.toString());
        Board shelf = Board.builder("shelf", 900, 200).thickness(27.4).target(22)
            .reading(20, 20, 0.0).reading(450, 20, 0.9).reading(880, 20, 0.1)
            .reading(20, 180, 0.8).reading(450, 180, 1.2).reading(880, 180, -0.6).build();
        Judgement judgement = Outwind.judge(shelf);
        assertTrue(lines.get(0).startsWith(String.format(Locale.ROOT, "%s: finishes at %.1f mm", judgement.verdict(),
            judgement.outlook().levelled().median())), lines.toString());
        assertEquals(judgement.setup().shims().size() + 2, lines.size(), lines.toString());
    }

    @Test
    void threeLinesCompile(@TempDir Path folder) throws IOException {
        assertEquals(List.of(), compiled(folder, """
            import java.nio.file.Path;
            import outwind.Outwind;
            import outwind.board.Board;
            import outwind.judge.Judgement;
            public final class Shelf {
                public static void main(String[] args) throws java.io.IOException {
            """ + samples().get(0) + "}}"));
    }

    @Test
    void hiddenPackagesAreHidden(@TempDir Path folder) throws IOException {
        List<String> faults = compiled(folder, "public final class Shelf { outwind.scan.file.ScanFile hidden; }");

        assertEquals(1, faults.size());
        assertTrue(faults.get(0).contains("outwind.scan.file"), faults.get(0));
    }

    /** The programs in the package's own description. */
    private static List<String> samples() throws IOException {
        return Pattern.compile("<pre>\\{@code\\n(.*?)\\n \\* }</pre>", Pattern.DOTALL)
            .matcher(Files.readString(Path.of("src/main/java/outwind/package-info.java"))).results()
            .map(sample -> sample.group(1).replaceAll("(?m)^ \\* ?", "")).toList();
    }

    /** Compiles a class Shelf into a module that requires this one; returns what is wrong with it. */
    private static List<String> compiled(Path folder, String program) throws IOException {
        Path sources = Files.createDirectories(folder.resolve("sources/sample"));
        Path module = Files.writeString(folder.resolve("sources/module-info.java"),
            "module sample { requires outwind; }");
        Path shelf = Files.writeString(sources.resolve("Shelf.java"), "package sample;\n" + program);
        JavaCompiler compiler = ToolProvider.getSystemJavaCompiler();
        DiagnosticCollector<JavaFileObject> faults = new DiagnosticCollector<>();
        compiler.getTask(null, null, faults, List.of("-proc:none", "-d", folder.toString(), "--module-path",
            modulePath()), null, compiler.getStandardFileManager(null, null, null).getJavaFileObjects(module, shelf))
            .call();
        return faults.getDiagnostics().stream().filter(fault -> fault.getKind() == Diagnostic.Kind.ERROR)
            .map(fault -> fault.getMessage(Locale.ROOT)).toList();
    }

    /** The classes as built, and the libraries that they require. */
    private static String modulePath() {
        List<String> needed = List.of("commons-math3", "ejml-", "xchart", "picocli",
            "jackson-core", "jackson-databind", "jackson-annotations",
            "fastdoubleparser", "jline-", "qrcodegen");
        return Stream.concat(Stream.of(Path.of("target/classes").toAbsolutePath().toString()),
            Arrays.stream(System.getProperty("java.class.path").split(File.pathSeparator))
                .filter(entry -> needed.stream().anyMatch(name -> Path.of(entry).getFileName().toString().startsWith(name))))
            .distinct().collect(Collectors.joining(File.pathSeparator));
    }
}
