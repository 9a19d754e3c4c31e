package outwind.cli.option;

import outwind.board.Units;
import outwind.forecast.JudgeOptions;
import outwind.setup.Push;
import outwind.shop.Wedge;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** What may be told of shims and clamps, and of how firmly they are to hold. */
public final class HoldingOptions {

    @Spec(Spec.Target.MIXEE)
    private CommandSpec spec;

    @Option(names = "--clamp", paramLabel = "LENGTH", converter = LengthConverter.class,
        description = "Height of your clamps and stops above the bed; warned of if the cutter would meet them.")
    private LengthOption clamp;

    @Option(names = "--wedge", paramLabel = "LENGTHxBUTT", converter = WedgeConverter.class,
        description = "Tapered shims of this length and thickness, as 150mmx12mm: how far to slide each in.")
    private TwoLengths wedge;

    @Option(names = "--push", paramLabel = "NEWTON", converter = ForceConverter.class,
        description = "Push that the board has to stand anywhere (usually 50).")
    private Double push;

    @Option(names = "--give", paramLabel = "LENGTH", converter = LengthConverter.class,
        description = "How far such a push may move it (usually 0.1 mm).")
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
