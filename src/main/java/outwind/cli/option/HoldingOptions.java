package outwind.cli.option;

import outwind.board.Units;
import outwind.forecast.JudgeOptions;
import outwind.setup.Push;
import outwind.shop.Wedge;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** What may be stated of shims and clamps, and of how firmly they are to hold. */
public final class HoldingOptions {

    @Spec(Spec.Target.MIXEE)
    private CommandSpec spec;

    @Option(names = "--clamp", paramLabel = "LENGTH", converter = LengthConverter.class,
        description = "Height of your clamps and stops above the bed. It warns if the cutter would meet them.")
    private LengthOption clamp;

    @Option(names = "--tapered-shim", paramLabel = "LENGTHxBUTT", converter = WedgeConverter.class,
        description = "Your tapered shims, as 150mmx12mm. It says how far to slide each in.")
    private TwoLengths wedge;

    @Option(names = "--push", paramLabel = "FORCE", converter = ForceConverter.class,
        description = "Push that the board must stand anywhere (usually 50 N; 11 lbf).")
    private Double push;

    @Option(names = "--max-flex", paramLabel = "LENGTH", converter = LengthConverter.class,
        description = "Greatest movement under that push (usually 0.1 mm).")
    private LengthOption give;

    /** The request with this board held so. */
    public JudgeOptions held(JudgeOptions asked, Units own) {
        try {
            JudgeOptions request = asked.standing(new Push(push == null ? asked.push().force() : push,
                LengthOption.in(own, give).orElse(Push.USUAL.give())));
            request = wedge == null ? request
                : request.withWedges(new Wedge(wedge.first().in(own), wedge.second().in(own)));
            return clamp == null ? request : request.withClamps(clamp.in(own));
        } catch (IllegalArgumentException e) {
            throw new ParameterException(spec.commandLine(), e.getMessage());
        }
    }
}
