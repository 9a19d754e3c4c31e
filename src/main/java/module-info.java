/**
 * From heights touched off on a rough board to what it will finish at and how to cut it. Start with
 * {@link outwind.Outwind}; what is not exported may change with every release.
 */
@SuppressWarnings({"requires-automatic", "opens"})
module outwind {
    exports outwind;
    exports outwind.board;
    exports outwind.cutting;
    exports outwind.flatten;
    exports outwind.forecast;
    exports outwind.judge;
    exports outwind.numeric.plane;
    exports outwind.setup;
    exports outwind.shop;
    exports outwind.surface.trend;

    requires java.desktop;
    requires jdk.httpserver;
    requires ch.randelshofer.fastdoubleparser;
    requires com.fasterxml.jackson.databind;
    requires commons.math3;
    requires info.picocli;
    requires io.nayuki.qrcodegen;
    requires ejml.core;
    requires ejml.ddense;
    requires org.jline.reader;
    requires org.jline.terminal;
    requires xchart;

    // Options are fields that the reader of the command line fills in.
    opens outwind.cli to info.picocli;
    opens outwind.cli.option to info.picocli;
}
