package fuelwright.cli;

import fuelwright.estimate.CellProposal;
import fuelwright.estimate.ExpectedMixture;
import fuelwright.estimate.NextRide;
import fuelwright.estimate.Proposal;
import fuelwright.estimate.SensorFit;
import fuelwright.estimate.Standing;
import fuelwright.estimate.Validation;
import fuelwright.issue.Issue;
import fuelwright.safety.Caution;
import fuelwright.screen.Screen;
import fuelwright.screen.ScreenedRide;
import fuelwright.table.Table;
import fuelwright.work.Analysis;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** A short account of a proposal: for a person, or the same for a script. */
final class ProposalSummary {

    private final String command;
    private final Analysis analysis;
    private final List<ExpectedMixture.Summary> expected;
    private final List<Issue> remarks;
    private final Path folder;
    private final List<String> written;

    /** @param expected mixture of each ride with the proposed table */
    ProposalSummary(
            String command,
            Analysis analysis,
            List<ExpectedMixture.Summary> expected,
            List<Issue> remarks,
            Path folder,
            List<String> written) {
        this.command = command;
        this.analysis = analysis;
        this.expected = List.copyOf(expected);
        this.remarks = List.copyOf(remarks);
        this.folder = folder;
        this.written = written.stream().sorted().toList();
    }

    int exitCode() {
        return analysis.stops().isEmpty() ? Exit.DONE : Exit.STOP;
    }

    void print(PrintWriter out, PrintWriter err, boolean json) {
        if (json) {
            out.println(Json.write(asMap()));
        } else {
            lines().forEach(out::println);
        }
        Said.remarks(remarks, err);
        Said.stops(analysis.cautions(), err);
    }

    /** How many cells kept their old figure because nothing was to be leaned; empty where that wasn't asked for. */
    private Optional<Integer> notLeaned() {
        return Optional.of(analysis.proposal())
                .filter(p -> p.settings().leanNoCell())
                .map(Proposal::notLeaned);
    }

    private List<String> lines() {
        List<String> lines = new ArrayList<>();
        Table table = analysis.proposal().before();
        lines.add("Fuel table: " + table.quantity().words() + ", "
                + table.speed().size() + " engine speeds × " + table.load().size() + " loads"
                + (table.cylinder().isPresent()
                        ? ", feeds cylinder " + table.cylinder().getAsInt() + " alone"
                        : ""));
        for (ScreenedRide ride : analysis.screened()) {
            lines.add("Ride " + ride.ride().name() + ": " + ride.ride().size() + " rows, " + ride.kept() + " count"
                    + screenedOut(ride));
        }
        lines.add("Cells: " + count(Standing.MEASURED) + " measured, " + count(Standing.THIN) + " thin, "
                + count(Standing.INFERRED) + " inferred");
        lines.add("Proposed change: " + signed(leastChange()) + " to " + signed(mostChange()) + " %");
        notLeaned()
                .ifPresent(cells -> lines.add("Only richer: " + cells + (cells == 1 ? " cell" : " cells")
                        + " that would be leaned " + (cells == 1 ? "keeps its" : "keep their") + " old figure"));
        checked()
                .ifPresentOrElse(
                        v -> lines.add(validation(v)),
                        () -> lines.add("Kept-out check: the rides are too short for it"));
        lines.addAll(TipInWords.lines(analysis.estimate().tipIn()));
        for (int ride = 0; ride < analysis.screened().size(); ride++) {
            lines.add(expected(analysis.screened().get(ride).ride().name(), expected.get(ride)));
        }
        analysis.hardware().ifPresent(h -> {
            lines.add("Hardware's table: " + h.sentence());
            if (!h.standsOn().isEmpty()) {
                lines.add(h.standsOn());
            }
        });
        analysis.rideToRide()
                .ifPresent(r ->
                        lines.add("Ride to ride: " + r.words(!analysis.stops().isEmpty())));
        analysis.nextRide().regions().forEach(r -> lines.add("Next ride: " + r.words()));
        lines.add("Cautions: " + count(Caution.Level.STOP) + " Stop, " + count(Caution.Level.CHECK) + " Check, "
                + count(Caution.Level.NOTE) + " Note");
        lines.add("Written to " + folder + ": " + String.join(", ", written));
        return lines;
    }

    private static String screenedOut(ScreenedRide ride) {
        List<String> parts = new ArrayList<>();
        for (Screen screen : Screen.values()) {
            if (ride.count(screen) > 0) {
                parts.add(screen.words() + " " + ride.count(screen));
            }
        }
        return parts.isEmpty() ? "" : " (screened out: " + String.join(", ", parts) + ")";
    }

    private static String validation(Validation v) {
        return String.format(
                Locale.ROOT,
                "Kept-out check: mixture error %.1f %% before, %.1f %% after, on %d readings kept out of the fit;"
                        + " larger than before in %d of %d cells",
                v.errorBeforePercent(),
                v.errorAfterPercent(),
                v.readings(),
                v.worse(),
                v.cells().size());
    }

    private static String expected(String ride, ExpectedMixture.Summary e) {
        if (e.readings() == 0) {
            return "Expected mixture of " + ride + ": no reading counts";
        }
        String leanest = e.highLoadReadings() == 0
                ? "; no reading at high load"
                : "; leanest reading at high load " + signed(e.leanestPercent()) + " % from its target";
        return String.format(
                Locale.ROOT,
                "Expected mixture of %s with the proposed table: error %.1f %% instead of %.1f %%%s",
                ride,
                e.errorAfterPercent(),
                e.errorBeforePercent(),
                leanest);
    }

    private static Map<String, Object> asMap(ExpectedMixture.Summary e) {
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("readings", e.readings());
        map.put("errorBeforePercent", rounded(e.errorBeforePercent()));
        map.put("errorAfterPercent", rounded(e.errorAfterPercent()));
        map.put("highLoadReadings", e.highLoadReadings());
        map.put("leanestAtHighLoadPercent", rounded(e.leanestPercent()));
        return map;
    }

    private static Map<String, Object> asMap(NextRide next) {
        List<Object> regions = new ArrayList<>();
        for (NextRide.Region r : next.regions()) {
            Map<String, Object> one = new LinkedHashMap<>();
            one.put("speedFromRpm", rounded(r.speedFromRpm()));
            one.put("speedToRpm", rounded(r.speedToRpm()));
            one.put("load", r.load().words());
            one.put("loadFrom", rounded(r.loadFrom()));
            one.put("loadTo", rounded(r.loadTo()));
            one.put("seconds", r.seconds());
            one.put("highLoad", r.highLoad());
            one.put("pulls", r.pulls());
            r.gear().ifPresent(g -> {
                one.put("gear", g.number());
                one.put("gearsSeen", g.seen());
                one.put("roadSpeedKmh", rounded(g.roadSpeedKmh()));
            });
            one.put("uncertaintyPercent", rounded(r.uncertaintyPercent()));
            one.put("uncertaintyAfterPercent", rounded(r.uncertaintyAfterPercent()));
            regions.add(one);
        }
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("uncertaintyPercent", rounded(next.uncertaintyPercent()));
        map.put("uncertaintyAfterPercent", rounded(next.uncertaintyAfterPercent()));
        map.put("regions", regions);
        return map;
    }

    private Map<String, Object> asMap() {
        Map<String, Object> map = new LinkedHashMap<>();
        Table table = analysis.proposal().before();
        map.put("command", command);
        map.put("exit", exitCode());
        Map<String, Object> shape = new LinkedHashMap<>();
        shape.put("quantity", table.quantity().words());
        shape.put("engineSpeeds", table.speed().size());
        shape.put("loads", table.load().size());
        table.cylinder().ifPresent(n -> shape.put("cylinder", n));
        map.put("table", shape);
        List<Object> rides = new ArrayList<>();
        for (ScreenedRide ride : analysis.screened()) {
            Map<String, Integer> reasons = new LinkedHashMap<>();
            for (Screen screen : Screen.values()) {
                if (ride.count(screen) > 0) {
                    reasons.put(screen.words(), ride.count(screen));
                }
            }
            Map<String, Object> one = new LinkedHashMap<>();
            one.put("name", ride.ride().name());
            one.put("rows", ride.ride().size());
            one.put("count", ride.kept());
            one.put("screenedOut", reasons);
            one.put("expectedMixture", asMap(expected.get(rides.size())));
            rides.add(one);
        }
        map.put("rides", rides);
        Map<String, Object> cells = new LinkedHashMap<>();
        for (Standing standing : Standing.values()) {
            cells.put(standing.words(), count(standing));
        }
        map.put("cells", cells);
        Map<String, Object> change = new LinkedHashMap<>();
        change.put("leastPercent", rounded(leastChange()));
        change.put("mostPercent", rounded(mostChange()));
        map.put("change", change);
        notLeaned().ifPresent(n -> map.put("onlyRicher", Map.of("cellsKept", n)));
        checked().ifPresent(v -> {
            Map<String, Object> check = new LinkedHashMap<>();
            check.put("blocks", v.blocks());
            check.put("readings", v.readings());
            check.put("errorBeforePercent", rounded(v.errorBeforePercent()));
            check.put("errorAfterPercent", rounded(v.errorAfterPercent()));
            check.put("cells", cells(v, table));
            map.put("leftOutCheck", check);
        });
        SensorFit fit = analysis.estimate().sensor();
        Map<String, Object> sensor = new LinkedHashMap<>();
        sensor.put("words", fit.words().toString());
        sensor.put("identified", fit.identified());
        sensor.put("lagS", Json.rounded(fit.model().lagS()));
        sensor.put("lagErrorS", Json.rounded(fit.lagErrorS()));
        sensor.put("delayErrorS", Json.rounded(fit.delayErrorS()));
        map.put("sensor", sensor);
        map.put("tipIn", TipInWords.asMap(analysis.estimate().tipIn()));
        analysis.hardware().ifPresent(h -> {
            Map<String, Object> hardware = new LinkedHashMap<>();
            hardware.put("quantity", h.table().quantity().words());
            hardware.put("engineSpeeds", h.table().speed().size());
            hardware.put("loads", h.table().load().size());
            if (!h.standsOn().isEmpty()) {
                hardware.put("standsOn", h.standsOn());
            }
            hardware.put("readings", h.readings());
            hardware.put("addedRmsPercent", rounded(h.addedRmsPercent()));
            hardware.put("addedWorstPercent", rounded(h.addedWorstPercent()));
            hardware.put("leanAtHighLoadPercent", rounded(h.leanAtHighLoadPercent()));
            map.put("hardware", hardware);
        });
        analysis.rideToRide().ifPresent(r -> {
            Map<String, Object> one = new LinkedHashMap<>();
            one.put("ride", r.ride());
            one.put("errorPercent", rounded(r.errorPercent()));
            r.errorBeforePercent().ifPresent(e -> one.put("errorBeforePercent", rounded(e)));
            r.promisedPercent().ifPresent(e -> one.put("promisedPercent", rounded(e)));
            r.asPromised().ifPresent(kept -> one.put("asPromised", kept));
            one.put("cellsLeft", r.cellsLeft());
            one.put("done", r.done());
            RecordsSummary.highLoad(Optional.of(r.highLoad()), one);
            map.put("rideToRide", one);
        });
        map.put(
                "partGave",
                RecordsSummary.asMap(
                        analysis.partGain(), Optional.of(analysis.job().machine())));
        map.put("nextRide", asMap(analysis.nextRide()));
        map.put("cautions", analysis.cautions().stream().map(Said::asMap).toList());
        map.put("remarks", remarks.stream().map(Said::asMap).toList());
        map.put("folder", folder.toString());
        map.put("written", written);
        return map;
    }

    private static List<Object> cells(Validation validation, Table table) {
        List<Object> cells = new ArrayList<>();
        validation.cells().forEach((cell, v) -> {
            Map<String, Object> one = new LinkedHashMap<>();
            one.put("speedRpm", rounded(table.speedAt(cell)));
            one.put("load", rounded(table.loadAt(cell)));
            one.put("blocks", v.blocks());
            one.put("independentReadings", rounded(v.independentReadings()));
            one.put("errorBeforePercent", rounded(v.errorBeforePercent()));
            one.put("errorAfterPercent", rounded(v.errorAfterPercent()));
            cells.add(one);
        });
        return cells;
    }

    /** The left-out check where there was anything to check. */
    private Optional<Validation> checked() {
        return analysis.validation().filter(v -> v.readings() > 0 && Double.isFinite(v.errorAfterPercent()));
    }

    private long count(Standing standing) {
        return analysis.proposal().cells().stream()
                .filter(c -> c.standing() == standing)
                .count();
    }

    private long count(Caution.Level level) {
        return analysis.cautions().stream().filter(c -> c.level() == level).count();
    }

    private double leastChange() {
        return analysis.proposal().cells().stream()
                .mapToDouble(CellProposal::changePercent)
                .min()
                .orElse(0);
    }

    private double mostChange() {
        return analysis.proposal().cells().stream()
                .mapToDouble(CellProposal::changePercent)
                .max()
                .orElse(0);
    }

    private static String signed(double value) {
        return String.format(Locale.ROOT, "%+.1f", value).replace('-', '−');
    }

    private static Double rounded(double value) {
        return Json.rounded(value);
    }
}
