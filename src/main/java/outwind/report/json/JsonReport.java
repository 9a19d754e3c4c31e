package outwind.report.json;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Locale;
import java.util.Optional;
import outwind.board.Board;
import outwind.board.Face;
import outwind.board.Reading;
import outwind.cutting.Cut;
import outwind.cutting.FaceBCheck;
import outwind.flatten.NextReading;
import outwind.flatten.PlaneName;
import outwind.flatten.ReadingsAlone;
import outwind.flatten.ReferencePlane;
import outwind.judge.Doubt;
import outwind.judge.Judgement;
import outwind.judge.Planned;
import outwind.setup.BedContact;
import outwind.setup.Corner;
import outwind.setup.Setup;
import outwind.setup.Shim;
import outwind.surface.ZeroDrift;
import outwind.surface.trend.Term;
import outwind.surface.trend.TrendFit;
import outwind.surface.trend.Warp;

/**
 * The judged board for scripts: one JSON object, lengths in mm, volumes in mm³, slopes in mm per mm, shares from 0 to
 * 1. What is unknown is null. The schema
 * {@code outwind-1.json} of the site names every key.
 */
public final class JsonReport {

    private static final String AS_MEASURED = "asMeasured";

    private final Judgement judgement;
    private final ObjectNode root = JsonText.root("judge");

    private JsonReport(Judgement judgement) {
        this.judgement = judgement;
    }

    /** Writes a judged board as JSON, with a line end after it. */
    public static String of(Judgement judgement) {
        JsonReport report = new JsonReport(judgement);
        report.root.put("seed", judgement.request().seed());
        report.board();
        report.fits();
        report.warp();
        report.readings();
        report.planes();
        report.thickness();
        report.setup();
        report.cuts();
        return JsonText.of(report.root);
    }

    private void board() {
        Board board = judgement.board();
        ObjectNode node = root.putObject("board");
        node.put("name", board.name());
        node.put("length", board.length());
        node.put("width", board.width());
        node.putNull("thickness");
        board.thickness().ifPresent(thickness -> node.put("thickness", thickness));
        node.put("readings", board.pointsOnFaceA());
        node.put("readingsOnFaceB", board.readingsOf(Face.B).size());
        ArrayNode remarks = node.putArray("remarks");
        board.remarks().forEach(remarks::add);
    }

    private void fits() {
        ArrayNode fits = root.putArray("fits");
        for (TrendFit fit : judgement.fits().all()) {
            ObjectNode node = fits.addObject();
            node.put("model", JsonText.code(fit.model()));
            ArrayNode terms = node.putArray("terms");
            fit.terms().stream().map(Term::symbol).forEach(terms::add);
            putAll(node.putArray("coefficients"), fit.fit().coefficients());
            node.putNull("standardErrors");
            fit.fit().standardErrors().ifPresent(errors -> putAll(node.putArray("standardErrors"), errors));
            node.putNull("residualStandardDeviation");
            fit.fit().residualStandardDeviation().ifPresent(sd -> node.put("residualStandardDeviation", sd));
            node.put("rSquared", fit.fit().rSquared());
            node.put("degreesOfFreedom", fit.fit().degreesOfFreedom());
        }
    }

    private static void putAll(ArrayNode array, double[] values) {
        for (double value : values) {
            array.add(value);
        }
    }

    private void warp() {
        ObjectNode node = root.putObject("warp");
        put(node, "twist", judgement.warp().twist());
        put(node, "bow", judgement.warp().bow());
        put(node, "cup", judgement.warp().cup());
    }

    private static void put(ObjectNode node, String name, Optional<Warp.Amount> amount) {
        node.putNull(name);
        node.putNull(name + "StandardError");
        amount.ifPresent(known -> {
            node.put(name, known.value());
            known.standardError().ifPresent(error -> node.put(name + "StandardError", error));
        });
    }

    private void readings() {
        ReadingsAlone readings = judgement.readings();
        ObjectNode node = root.putObject("readings");
        put(node.putObject("highest"), readings.highest());
        put(node.putObject("lowest"), readings.lowest());
        node.put("spread", readings.spread());
        node.putNull("zeroDrift");
        ZeroDrift.of(judgement.board()).ifPresent(drift -> node.put("zeroDrift", drift.total()));
        ObjectNode zone = node.putObject("minimumZone");
        zone.put("width", readings.minimumZone().width());
        zone.put("slopeX", readings.minimumZone().middle().slopeX());
        zone.put("slopeY", readings.minimumZone().middle().slopeY());
        ArrayNode suspects = node.putArray("suspects");
        for (Doubt doubt : judgement.doubts()) {
            ObjectNode suspect = suspects.addObject();
            put(suspect, doubt.suspect().reading());
            suspect.put("line", doubt.suspect().reading().line());
            suspect.put("expected", doubt.suspect().expected());
            suspect.put("standardised", doubt.suspect().standardised());
            suspect.putNull("studentised");
            doubt.suspect().studentised().ifPresent(t -> suspect.put("studentised", t));
            suspect.put("levelledWithout", doubt.without().median());
        }
    }

    private static void put(ObjectNode node, Reading reading) {
        node.put("x", reading.x());
        node.put("y", reading.y());
        node.put("z", reading.z());
    }

    private void planes() {
        ArrayNode planes = root.putArray("planes");
        for (ReferencePlane plane : judgement.planes().all()) {
            ObjectNode node = planes.addObject();
            node.put("name", JsonText.code(plane.name()));
            node.put("slopeX", plane.slab().faceA().slopeX());
            node.put("slopeY", plane.slab().faceA().slopeY());
            node.put("deepestCut", plane.deepestCut());
            node.put("removed", plane.removed());
            node.put("thickness", plane.thickness());
        }
        root.put("chosenPlane", JsonText.code(judgement.planes().chosen().name()));
        root.putNull("withoutLiftLimit");
        judgement.planes().freer().ifPresent(plane -> root.putObject("withoutLiftLimit")
            .put("thickness", plane.thickness()).put("lift", judgement.limit().liftFor(plane.slab().faceA())));
    }

    private void thickness() {
        ObjectNode node = root.putObject("thickness");
        node.put("atReadings", judgement.readings().promise());
        node.put("asMeasured", judgement.outlook().asMeasured().median());
        node.put("asMeasuredLow", judgement.outlook().asMeasured().low());
        node.put("asMeasuredHigh", judgement.outlook().asMeasured().high());
        node.put("levelled", judgement.outlook().levelled().median());
        node.put("low", judgement.outlook().levelled().low());
        node.put("high", judgement.outlook().levelled().high());
        node.putNull("target");
        node.putNull("chance");
        judgement.board().target().ifPresent(target -> node.put("target", target));
        judgement.chance().ifPresent(chance -> node.put("chance", chance));
        ArrayNode next = root.putArray("nextReadings");
        for (NextReading reading : judgement.next()) {
            next.addObject().put("x", reading.x()).put("y", reading.y())
                .put("tool", reading.tool().name().toLowerCase(Locale.ROOT)).put("rangeLeft", reading.left());
        }
        root.put("verdict", judgement.verdict().word());
    }

    private void setup() {
        ObjectNode chosen = root.putObject("setup");
        describe(chosen, judgement.lifts() ? "levelled" : AS_MEASURED, judgement.setup());
        describe(chosen.putObject("other"), judgement.lifts() ? AS_MEASURED : "levelled",
            judgement.lifts() ? judgement.asMeasured() : judgement.levelled());
    }

    private void describe(ObjectNode node, String choice, Setup setup) {
        node.put("choice", choice);
        node.put("rocks", judgement.faceDown().rocks());
        node.put("rocksChance", judgement.faceDown().rockingShare());
        ArrayNode contacts = node.putArray("contacts");
        for (BedContact contact : judgement.pose().contacts()) {
            contacts.addObject().put("x", contact.x()).put("y", contact.y()).put("load", contact.load());
        }
        ArrayNode shims = node.putArray("shims");
        for (Shim shim : setup.shims()) {
            shims.addObject().put("x", shim.x()).put("y", shim.y()).put("height", shim.height())
                .put("plusMinus", setup.errorOf(shim));
        }
        ArrayNode checks = node.putArray("paperChecks");
        setup.places().stream().filter(place -> !place.isNeeded())
            .forEach(place -> checks.addObject().put("x", place.x()).put("y", place.y()));
        node.putObject("spanLimit").put("along", setup.held().limit().along())
            .put("across", setup.held().limit().across()).put("overhang", setup.held().limit().overhang());
        node.put("holds", setup.held().holds());
        node.putNull("movement");
        if (Double.isFinite(setup.held().movement())) {
            node.put("movement", setup.held().movement());
        }
        ArrayNode corners = node.putArray("corners");
        for (Corner corner : setup.corners()) {
            corners.addObject().put("x", corner.x()).put("y", corner.y()).put("gap", corner.gap());
        }
    }

    private void cuts() {
        root.put("planned", JsonText.code(judgement.planned()));
        ArrayNode cuts = root.putArray("cuts");
        ArrayNode machining = root.putArray("machining");
        ArrayNode checks = root.putArray("faceBChecks");
        if (judgement.planned() == Planned.NONE) {
            return;
        }
        for (Cut cut : judgement.plannedCuts()) {
            cuts.add(FinishJson.cut(cut, judgement.machining().stream().findFirst()));
        }
        machining.addAll(FinishJson.machining(judgement.machining()));
        for (FaceBCheck check : judgement.checks()) {
            checks.addObject().put("x", check.x()).put("y", check.y()).put("height", check.height())
                .put("tolerance", check.tolerance());
        }
    }
}
