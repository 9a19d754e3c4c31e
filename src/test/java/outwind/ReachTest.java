package outwind;

import static com.tngtech.archunit.core.domain.JavaCall.Predicates.target;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.equivalentTo;
import static com.tngtech.archunit.core.domain.properties.HasName.Predicates.nameMatching;
import static com.tngtech.archunit.core.domain.properties.HasOwner.Predicates.With.owner;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;

import com.tngtech.archunit.core.domain.JavaClasses;
import java.io.ObjectInputStream;
import org.junit.jupiter.api.Test;

/**
 * A file that somebody sends can make this program do nothing but read it: the code has no means for more. Only the page
 * at the bench listens, and only its command opens the browser, which is given nothing but the page's own address.
 */
class ReachTest {

    private static final JavaClasses CLASSES = PackageArrowsTest.CLASSES;

    @Test
    void nothingIsAskedOfTheNetwork() {
        noClasses().that().resideOutsideOfPackage("outwind.web").and().doNotHaveSimpleName("BenchCommand")
            .should().dependOnClassesThat().resideInAnyPackage("java.net..", "javax.net..", "java.rmi..",
            "java.nio.channels.spi..", "javax.naming..").check(CLASSES);
        noClasses().should().dependOnClassesThat().haveNameMatching(
            "java\\.nio\\.channels\\.(Asynchronous)?(Server)?(Socket|Datagram).*").check(CLASSES);
    }

    @Test
    void noOtherProcessIsStarted() {
        noClasses().that().doNotHaveSimpleName("BenchCommand")
            .should().dependOnClassesThat().haveNameMatching("java\\.lang\\.ProcessBuilder.*")
            .orShould().callMethodWhere(target(owner(equivalentTo(Runtime.class)))
                .and(target(nameMatching("exec|load.*"))))
            .check(CLASSES);
    }

    @Test
    void onlyTheBenchListens() {
        noClasses().that().resideOutsideOfPackage("outwind.web").and().doNotHaveSimpleName("BenchCommand")
            .should().dependOnClassesThat().resideInAPackage("outwind.web").check(CLASSES);
    }

    @Test
    void noClassIsNamedAtRunTimeAndNoObjectIsReadFromBytes() {
        noClasses().should().dependOnClassesThat().resideInAnyPackage("java.lang.reflect..", "javax.script..")
            .orShould().dependOnClassesThat().areAssignableTo(ObjectInputStream.class)
            .orShould().dependOnClassesThat().areAssignableTo(ClassLoader.class)
            .orShould().callMethod(Class.class, "forName", String.class)
            .orShould().callMethod(Class.class, "forName", String.class, boolean.class, ClassLoader.class)
            .check(CLASSES);
    }
}
