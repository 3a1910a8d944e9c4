package fuelwright.handover;

import fuelwright.airflow.InjectorSet;
import fuelwright.airflow.Machine;
import fuelwright.airflow.ThrottleBody;
import fuelwright.estimate.CellNeed;
import fuelwright.estimate.CellProposal;
import fuelwright.estimate.Estimate;
import fuelwright.estimate.ExpectedMixture;
import fuelwright.estimate.SensorModel;
import fuelwright.estimate.Standing;
import fuelwright.estimate.TipIn;
import fuelwright.estimate.Validation;
import fuelwright.issue.Issue;
import fuelwright.issue.Loaded;
import fuelwright.job.FirstStart;
import fuelwright.job.Job;
import fuelwright.job.PartGain;
import fuelwright.power.BeyondBore;
import fuelwright.power.Breathing;
import fuelwright.safety.Caution;
import fuelwright.safety.UsualCautions;
import fuelwright.screen.Screen;
import fuelwright.screen.ScreenedRide;
import fuelwright.table.Axis;
import fuelwright.table.Quantity;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;

/** What the report says, as words and figures ready for the template. */
final class ReportContent {

    private static final int MOST_MOMENTS = 5;
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMMM uuuu", Locale.ENGLISH);

    private ReportContent() {}

    static Map<String, Object> of(Handed handed) {
        ReportMaps maps = new ReportMaps(handed);
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("name", handed.job().title());
        map.put("about", about(handed));
        map.put("stops", handed.stops().stream().map(c -> caution(handed, c)).toList());
        map.put(
                "cautions",
                handed.cautions().stream()
                        .filter(c -> !c.isStop())
                        .map(c -> caution(handed, c))
                        .toList());
        map.put("machine", machine(handed.job()));
        map.put("summary", summary(handed));
        map.put("range", maps.changeRange());
        map.put("changeMap", maps.change());
        map.put("changeScale", ReportMaps.changeScale(maps.changeRange(), "less fuel", "more fuel"));
        map.put("unknown", handed.proposal().cells().stream().anyMatch(CellLook::unknown));
        map.put("tableScale", maps.tableScale());
        map.put("readingsScale", maps.readingsScale());
        map.put("beforeMap", maps.before());
        map.put("afterMap", maps.after());
        map.put("readingsMap", maps.readings());
        gain(handed, maps, map);
        map.put("tableWords", handed.proposal().before().quantity().words());
        map.put("tableUnit", handed.proposal().before().quantity().unit());
        map.put("rides", rides(handed));
        map.put("screens", screens(handed));
        map.put("sensor", sensor(handed.estimate()));
        map.put("validation", validation(handed));
        map.put("leftOutMap", judged(handed).map(maps::leftOut).orElse(""));
        map.put("leftOutScale", judged(handed).map(ReportMaps::leftOutScale).orElse(""));
        map.put("expected", expected(handed));
        map.put("tipIn", tipIn(handed.estimate().tipIn()));
        map.put("tipInLeftOut", handed.estimate().tipIn().leftOut());
        map.put("settings", settings(handed));
        map.put("next", next(handed));
        map.put("toRide", toRide(handed));
        map.put("rideToRide", handed.rideToRide().map(ReportContent::sentence).orElse(""));
        map.put("usual", UsualCautions.sentences());
        map.put(
                "remarks",
                handed.estimate().remarks().stream().map(CellLook::joined).toList());
        return map;
    }

    private static void gain(Handed handed, ReportMaps maps, Map<String, Object> map) {
        Loaded<Breathing> gain = PartGain.of(handed.job(), CellNeed.of(handed.estimate()));
        map.put("gainUnknown", gain.issues().stream().map(Issue::what).toList());
        gain.value().ifPresent(g -> {
            Optional<BeyondBore> beyond = BeyondBore.of(handed.job().machine(), g);
            map.put("gainMap", maps.gain(g, beyond.map(BeyondBore::cells).orElse(new TreeSet<>())));
            map.put("gainRange", ReportMaps.gainRange(g));
            map.put("gainScale", ReportMaps.changeScale(ReportMaps.gainRange(g), "less", "more"));
            map.put(
                    "gainBeyond",
                    beyond.map(BeyondBore::sentence)
                            .map(ReportContent::sentence)
                            .orElse(""));
            map.put(
                    "gainBelow",
                    switch (g.amount()) {
                        case EFFICIENCY -> "below each figure the volumetric efficiency before and now, %";
                        case RELATIVE ->
                            "below each figure the air before and now, where 100 is the most that a known cell drew before";
                        case UNKNOWN ->
                            "how much air that is, a "
                                    + handed.proposal().before().quantity().words() + " doesn’t tell";
                    });
        });
    }

    /** Job, machine and day, as far as they are known. */
    private static List<String> about(Handed handed) {
        List<String> about = new ArrayList<>();
        about.add(handed.job().title());
        Machine machine = handed.job().machine();
        List<String> engine = new ArrayList<>();
        machine.displacementCc().ifPresent(cc -> engine.add(Figures.trimmed(cc, 1) + "\u202fcm³"));
        if (machine.before().isPresent() && machine.after().isPresent()) {
            engine.add("bodies "
                    + Figures.trimmed(machine.before().get().boreMm(), 2) + " → "
                    + Figures.trimmed(machine.after().get().boreMm(), 2) + "\u202fmm");
        }
        if (!engine.isEmpty()) {
            about.add(String.join(", ", engine));
        }
        handed.day().ifPresent(day -> about.add(DAY.format(day)));
        return about;
    }

    /** The report is for the owner too: how it is said on a command line stays out. */
    private static String withoutOptions(String todo) {
        return todo.replaceAll(" \\(--[^)]*\\)", "");
    }

    private static Map<String, Object> caution(Handed handed, Caution caution) {
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("level", caution.level().words());
        map.put("title", caution.title());
        map.put("what", StopNotes.ended(caution.what()));
        map.put("todo", StopNotes.ended(withoutOptions(caution.todo())));
        boolean throttle = handed.proposal().before().load().kind() == Axis.Kind.THROTTLE;
        List<String> moments = caution.moments().stream()
                .limit(MOST_MOMENTS)
                .map(m -> m.rideName() + " at " + Figures.moment(m.startS()) + ": " + m.worstWords() + " for "
                        + Figures.plain(m.lengthS(), 1) + " s at " + Figures.plain(m.speedRpm(), 0) + " rpm, "
                        + Figures.plain(m.load(), 0) + (throttle ? " % throttle" : " kPa"))
                .toList();
        map.put("moments", moments);
        map.put("more", Math.max(0, caution.moments().size() - MOST_MOMENTS));
        map.put("cells", caution.cells().size());
        map.put(
                "answers",
                handed.job().answers().stream()
                        .filter(a -> a.isFor(caution))
                        .map(a -> a.words(caution)
                                + (a.note().isBlank() ? "" : ": " + a.note().strip()))
                        .toList());
        return map;
    }

    /** A heading and its figure. */
    private static List<String> row(String what, String figure) {
        return List.of(what, figure);
    }

    private static String flow(double cm3PerMin) {
        return Figures.trimmed(cm3PerMin, 1) + " cm³/min";
    }

    private static List<List<String>> machine(Job job) {
        Machine machine = job.machine();
        List<List<String>> rows = new ArrayList<>();
        machine.displacementCc().ifPresent(cc -> rows.add(row("Displacement", Figures.trimmed(cc, 1) + " cm³")));
        if (machine.before().isPresent() && machine.after().isPresent()) {
            rows.add(row(
                    "Throttle bodies",
                    machine.bodies().isPresent()
                            ? Integer.toString(machine.bodies().getAsInt())
                            : "number not known"));
            rows.add(row("Before", body(machine.before().get())));
            rows.add(row("Now", body(machine.after().get())));
        }
        rows.add(row(
                "Fuel",
                machine.fuel().words() + ", stoichiometric at "
                        + Figures.trimmed(machine.fuel().stoichiometricRatio(), 2) + " : 1"));
        machine.redlineRpm().ifPresent(rpm -> rows.add(row("Redline", Figures.trimmed(rpm, 0) + " rpm")));
        InjectorSet injectors = machine.injectors();
        injectors.count().ifPresent(count -> rows.add(row("Injectors", Integer.toString(count))));
        injectors.beforeCm3PerMin().ifPresent(flow -> rows.add(row("Injector before", flow(flow))));
        injectors.afterCm3PerMin().ifPresent(flow -> rows.add(row("Injector now", flow(flow))));
        injectors.deadTimeMs().ifPresent(ms -> rows.add(row("Injector dead time", Figures.trimmed(ms, 3) + " ms")));
        machine.altitudeM().ifPresent(m -> rows.add(row("Altitude", Figures.trimmed(m, 0) + " m")));
        if (!job.firstStart().isEmpty()) {
            rows.add(row("Before the first start", FirstStart.words(job.firstStart())));
        }
        if (!job.beforeFirstStart().isEmpty()) {
            rows.add(row("Not ticked off", FirstStart.words(job.beforeFirstStart())));
        }
        if (!machine.hasBodyChange()) {
            rows.add(row("Bore forecast", "not possible: displacement, number of bodies and both bores must be known"));
        }
        return rows;
    }

    private static String body(ThrottleBody body) {
        return Figures.trimmed(body.boreMm(), 2) + " mm bore, " + Figures.trimmed(body.shaftMm(), 2)
                + " mm shaft, plate " + Figures.trimmed(body.closedAngleDeg(), 1) + "° closed to "
                + Figures.trimmed(body.openAngleDeg(), 1) + "° open";
    }

    private static List<List<String>> summary(Handed handed) {
        List<CellProposal> cells = handed.proposal().cells();
        double least =
                cells.stream().mapToDouble(CellProposal::changePercent).min().orElse(0);
        double most =
                cells.stream().mapToDouble(CellProposal::changePercent).max().orElse(0);
        long more = cells.stream().filter(c -> c.changePercent() > 0.05).count();
        long less = cells.stream().filter(c -> c.changePercent() < -0.05).count();
        List<List<String>> rows = new ArrayList<>();
        Job job = handed.job();
        job.targetTable()
                .filter(t -> t.quantity() == Quantity.AFR)
                .ifPresent(t -> rows.add(row(
                        "Target table",
                        "AFR, divided by " + Figures.trimmed(job.usedTargetRatio(), 3)
                                + (job.asksForTargetRatio() ? ", as nobody has said another ratio" : ""))));
        rows.add(row("Proposed change", Figures.signed(least, 1) + " to " + Figures.signed(most, 1) + " % fuel"));
        rows.add(row("Cells with more fuel", more + " of " + cells.size()));
        rows.add(row("Cells with less fuel", less + " of " + cells.size()));
        for (Standing standing : Standing.values()) {
            long count = cells.stream().filter(c -> c.standing() == standing).count();
            rows.add(row("Cells " + standing.words(), Long.toString(count)));
        }
        long byHand = cells.stream().filter(c -> c.decision().isPresent()).count();
        if (byHand > 0) {
            rows.add(row("Cells held or set by hand", Long.toString(byHand)));
        }
        return rows;
    }

    private static List<List<String>> rides(Handed handed) {
        List<List<String>> rows = new ArrayList<>();
        for (int i = 0; i < handed.screened().size(); i++) {
            ScreenedRide ride = handed.screened().get(i);
            int size = ride.ride().size();
            rows.add(List.of(
                    ride.ride().name(),
                    Figures.plain(ride.ride().durationS() / 60, 1) + " min",
                    Integer.toString(size),
                    ride.kept() + (size > 0 ? " (" + Figures.plain(100.0 * ride.kept() / size, 0) + " %)" : ""),
                    handed.job().rides().get(i).madeWith().isPresent() ? "another table" : "the table before"));
        }
        return rows;
    }

    private static List<List<String>> screens(Handed handed) {
        List<List<String>> rows = new ArrayList<>();
        for (Screen screen : Screen.values()) {
            int count =
                    handed.screened().stream().mapToInt(r -> r.count(screen)).sum();
            boolean off = !handed.job().screens().isOn(screen);
            if (count > 0 || off) {
                rows.add(List.of(screen.words(), off ? "switched off" : Integer.toString(count), screen.why()));
            }
        }
        return rows;
    }

    private static List<List<String>> sensor(Estimate estimate) {
        SensorModel model = estimate.sensor().model();
        List<List<String>> rows = new ArrayList<>();
        rows.add(row(
                "Delay of the reading",
                Figures.trimmed(model.fixedS() * 1000, 0) + " ms + " + Figures.trimmed(model.cycles(), 2)
                        + " engine cycles + " + Figures.trimmed(model.gasG(), 2) + " g of gas"
                        + plusMinus(estimate.sensor().delayErrorS())));
        rows.add(row(
                "Lag of the sensor",
                Figures.trimmed(model.lagS() * 1000, 0) + " ms"
                        + plusMinus(estimate.sensor().lagErrorS())));
        if (!estimate.sensor().words().toString().isBlank()) {
            rows.add(row(
                    "In short",
                    CellLook.joined(sentence(estimate.sensor().words().toString()))));
        }
        return rows;
    }

    private static String plusMinus(double errorS) {
        return Double.isFinite(errorS) ? " (±" + Figures.trimmed(errorS * 1000, 0) + "\u202fms)" : "";
    }

    private static List<List<String>> validation(Handed handed) {
        return judged(handed)
                .map(v -> List.of(
                        row("Parts of the rides kept out in turn", Integer.toString(v.blocks())),
                        row("Readings judged", Integer.toString(v.readings())),
                        row("Mixture error with the table as ridden", Figures.plain(v.errorBeforePercent(), 1) + " %"),
                        row(
                                "Mixture error with the proposal made without them",
                                Figures.plain(v.errorAfterPercent(), 1) + " %"),
                        row(
                                "Cells with enough readings kept out",
                                Integer.toString(v.cells().size())),
                        row("of them with a larger error than as ridden", Long.toString(v.worse()))))
                .orElse(List.of());
    }

    private static Optional<Validation> judged(Handed handed) {
        return handed.validation().filter(v -> v.readings() > 0 && Double.isFinite(v.errorAfterPercent()));
    }

    /** Opening rate, engine speed, openings, mean and worst deviation. */
    private static List<List<String>> tipIn(TipIn tipIn) {
        return tipIn.bins().stream()
                .map(b -> List.of(
                        b.rateWords(),
                        b.speedWords(),
                        Integer.toString(b.openings()),
                        CellLook.plusMinus(b.meanPercent(), b.uncertaintyPercent()),
                        (b.atLimit() > 0 ? "beyond " : "") + Figures.signed(b.worstPercent(), 1)))
                .toList();
    }

    /** Ride, readings, error before and after, the leanest reading at high load. */
    private static List<List<String>> expected(Handed handed) {
        List<List<String>> rows = new ArrayList<>();
        for (int i = 0; i < handed.expected().size(); i++) {
            ExpectedMixture.Summary e = handed.expected().get(i);
            rows.add(List.of(
                    handed.screened().get(i).ride().name(),
                    Integer.toString(e.readings()),
                    Figures.plain(e.errorBeforePercent(), 1) + " %",
                    Figures.plain(e.errorAfterPercent(), 1) + " %",
                    e.highLoadReadings() == 0
                            ? "no readings at high load"
                            : Figures.plain(Math.abs(e.leanestPercent()), 1) + " % "
                                    + (e.leanestPercent() >= 0 ? "lean" : "rich") + " of target"));
        }
        return rows;
    }

    private static List<List<String>> settings(Handed handed) {
        var settings = handed.proposal().settings();
        List<List<String>> rows = new ArrayList<>();
        rows.add(row("Most added in one pass", Figures.trimmed(settings.maxAddPercent(), 1) + " %"));
        rows.add(row("Most taken away in one pass", Figures.trimmed(settings.maxCutPercent(), 1) + " %"));
        if (settings.step() > 0) {
            rows.add(row(
                    "Rounded to steps of",
                    Figures.trimmed(settings.step(), 4) + " "
                            + handed.proposal().before().quantity().unit()
                            + ", up at high load and where a cell isn't measured"));
        }
        handed.hardware().ifPresent(hardware -> {
            rows.add(row(
                    "What the hardware holds", handed.job().hardware().holds().words()));
            rows.add(row("On the hardware's cells", hardware.sentence()));
        });
        if (handed.proposal().before().quantity() == Quantity.INJECTOR_PULSE) {
            double ms = settings.deadTimeMs();
            rows.add(row(
                    "Dead time in the pulses",
                    settings.deadTimeToldMs().isEmpty()
                            ? "not told: added as if none, no pulse shortened"
                            : ms > 0 ? Figures.trimmed(ms, 3) + " ms" : "none"));
        }
        return rows;
    }

    private static List<String> next(Handed handed) {
        List<String> steps = new ArrayList<>();
        if (!handed.stops().isEmpty()) {
            steps.add("Deal with every Stop caution above before the engine is loaded again.");
        }
        steps.add("Type " + (handed.hardware().isPresent() ? Exports.HARDWARE : Exports.CORRECTED)
                + " into the hardware, then compare what it holds with what was meant (entry check).");
        steps.add("Have the control unit's learnt trims reset, or they count twice.");
        steps.add(
                "Ride again, gently at first, with the mixture logged; mind the hatched cells, which are inferred and not measured.");
        steps.add(
                "Bring that ride back with the table it was made with. Stop when the error is within what the sensor can tell.");
        return steps;
    }

    private static List<String> toRide(Handed handed) {
        return handed.nextRide().regions().stream()
                .map(r -> sentence(r.words()))
                .toList();
    }

    private static String sentence(String words) {
        return StopNotes.ended(words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1));
    }
}
