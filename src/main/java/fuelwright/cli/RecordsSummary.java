package fuelwright.cli;

import fuelwright.airflow.Machine;
import fuelwright.airflow.ThrottleBody;
import fuelwright.estimate.HighLoadCells;
import fuelwright.issue.Loaded;
import fuelwright.job.Job;
import fuelwright.job.Results;
import fuelwright.power.BeyondBore;
import fuelwright.power.Breathing;
import fuelwright.work.EnginesLike;
import fuelwright.work.GainBands;
import fuelwright.work.JobFacts;
import fuelwright.work.JobRecord;
import fuelwright.work.JobsCompared;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** What a folder of jobs says: for a person, or the same for a script. */
final class RecordsSummary {

    private static final String EXPECT =
            "To expect, not to type in: what other engines showed is no evidence about this one.";

    private final Path folder;
    private final PrintWriter out;
    private final boolean json;

    RecordsSummary(Path folder, PrintWriter out, boolean json) {
        this.folder = folder;
        this.out = out;
        this.json = json;
    }

    private void print(Map<String, Object> more, List<String> lines) {
        if (json) {
            Map<String, Object> map = new LinkedHashMap<>();
            map.put("command", "records");
            map.put("exit", Exit.DONE);
            map.put("folder", folder.toString());
            map.putAll(more);
            out.println(Json.write(map));
        } else {
            lines.forEach(out::println);
        }
    }

    /** @param all how many jobs the folder holds */
    void list(List<JobRecord> found, int all) {
        List<String> lines = new ArrayList<>();
        lines.add(count(found.size(), "job") + " in " + folder
                + (found.size() < all ? ", of " + all + " altogether" : ""));
        for (JobRecord each : found) {
            lines.add("");
            lines.add(each.place() + (each.stored().isPresent() ? ": " + each.name() : ""));
            if (found.size() > 1 || each.stored().isEmpty()) {
                lines.add("  " + JobFacts.line(each));
            } else {
                JobFacts.of(each).forEach(f -> lines.add("  " + padded(f.what(), 26) + f.figure()));
            }
        }
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("all", all);
        map.put("jobs", found.stream().map(RecordsSummary::asMap).toList());
        print(map, lines);
    }

    void compared(JobRecord first, JobRecord second, JobsCompared compared) {
        List<String> lines = new ArrayList<>();
        lines.add("1  " + first.place() + ": " + first.name());
        lines.add("2  " + second.place() + ": " + second.name());
        for (JobsCompared.Row row : compared.rows()) {
            lines.add("");
            lines.add(row.what() + (row.same() ? ", the same" : ""));
            lines.add("  1  " + row.first());
            if (!row.same()) {
                lines.add("  2  " + row.second());
            }
        }
        lines.add("");
        bands(first, second, lines);
        lines.add(compared.difference()
                .map(d -> "Known in both: " + count(d.knownCells(), "cell") + " of "
                        + d.axes().cells() + "; --json has the difference cell by cell")
                .orElse("The two can't be laid over each other: one isn't known, or load isn't the same thing"));
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("first", asMap(first));
        map.put("second", asMap(second));
        map.put(
                "difference",
                compared.difference()
                        .map(d -> d.points().stream().map(Json::number).toList())
                        .orElse(null));
        print(map, lines);
    }

    private static void bands(JobRecord first, JobRecord second, List<String> lines) {
        Map<GainBands.Band, String[]> bands = new LinkedHashMap<>();
        int column = 0;
        for (JobRecord job : List.of(first, second)) {
            for (GainBands.Gain gain : job.gain().value().map(GainBands::of).orElse(List.of())) {
                bands.computeIfAbsent(gain.band(), b -> new String[] {"nothing known", "nothing known"})[column] =
                        signed(gain.meanPercent()) + " % in " + count(gain.cells(), "cell");
            }
            column++;
        }
        if (!bands.isEmpty()) {
            lines.add("Air that the part gave, on average");
            bands.forEach((band, figures) ->
                    lines.add("  " + padded(band.words(), 32) + "1  " + padded(figures[0], 24) + "2  " + figures[1]));
        }
    }

    void like(EnginesLike.Question question, EnginesLike answer) {
        List<String> lines = new ArrayList<>();
        lines.add("Engines like: " + question.words());
        lines.add(
                answer.counted().isEmpty()
                        ? "No job counts"
                        : count(answer.counted().size(), "job")
                                + (answer.counted().size() == 1 ? " counts: " : " count: ")
                                + String.join(
                                        ", ",
                                        answer.counted().stream()
                                                .map(JobRecord::place)
                                                .toList()));
        if (answer.counted().size() < EnginesLike.FEW && !answer.counted().isEmpty()) {
            lines.add("Fewer than " + EnginesLike.FEW + " jobs are examples, not a range");
        }
        for (EnginesLike.Band band : answer.bands()) {
            lines.add("  " + padded(band.band().words(), 32)
                    + (band.jobs() == 1
                            ? signed(band.middlePercent()) + " % fuel needed, one job"
                            : signed(band.leastPercent()) + " to " + signed(band.mostPercent())
                                    + " % fuel needed, middle "
                                    + signed(band.middlePercent()) + " %, " + count(band.jobs(), "job")
                                    + (band.isFew() ? ": few" : "")));
        }
        answer.left().forEach(l -> lines.add("  left out  " + l.job().place() + ": " + l.why()));
        lines.add(EXPECT);
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("question", question.words());
        map.put("counted", answer.counted().stream().map(JobRecord::place).toList());
        map.put("bands", answer.bands().stream().map(RecordsSummary::asMap).toList());
        map.put(
                "leftOut",
                answer.left().stream()
                        .map(l -> Map.of("job", l.job().place(), "why", l.why()))
                        .toList());
        map.put("remark", EXPECT);
        print(map, lines);
    }

    private static Map<String, Object> asMap(EnginesLike.Band band) {
        Map<String, Object> map = asMap(band.band());
        map.put("jobs", band.jobs());
        map.put("few", band.isFew());
        map.put("leastPercent", rounded(band.leastPercent()));
        map.put("middlePercent", rounded(band.middlePercent()));
        map.put("mostPercent", rounded(band.mostPercent()));
        return map;
    }

    private static Map<String, Object> asMap(GainBands.Band band) {
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("load", band.kind().words());
        map.put("from", band.from());
        map.put("to", Json.number(band.to()));
        return map;
    }

    private static Map<String, Object> asMap(JobRecord job) {
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("place", job.place());
        map.put("name", job.name());
        job.stored().ifPresent(s -> {
            Job of = s.job();
            machine(of.machine(), map);
            map.put("quantity", of.fuelTable().map(t -> t.quantity().words()).orElse(null));
            map.put("load", of.fuelTable().map(t -> t.load().kind().words()).orElse(null));
            map.put("tablesBefore", of.past().size());
            map.put("rides", s.rides().size());
        });
        job.results().ifPresent(r -> results(r, map));
        map.put("partGave", asMap(job.gain(), job.stored().map(s -> s.job().machine())));
        map.put("remarks", job.issues().stream().map(Said::asMap).toList());
        return map;
    }

    private static void machine(Machine machine, Map<String, Object> map) {
        map.put("displacementCc", number(machine.displacementCc()));
        map.put("bodies", machine.bodies().isPresent() ? machine.bodies().getAsInt() : null);
        map.put("boreBeforeMm", machine.before().map(ThrottleBody::boreMm).orElse(null));
        map.put("boreAfterMm", machine.after().map(ThrottleBody::boreMm).orElse(null));
        map.put("fuel", machine.fuel().words());
        map.put("redlineRpm", number(machine.redlineRpm()));
    }

    private static void results(Results r, Map<String, Object> map) {
        map.put("errorPercent", number(r.errorPercent()));
        map.put("done", r.done());
        highLoad(r.highLoad(), map);
        map.put("stops", r.stops());
        map.put("peaks", r.peaks());
    }

    /** 'Done' holds where it was ridden: how much of high load that leaves out. */
    static void highLoad(Optional<HighLoadCells> highLoad, Map<String, Object> map) {
        map.put("highLoadCells", highLoad.map(HighLoadCells::cells).orElse(null));
        map.put("highLoadNotMeasured", highLoad.map(HighLoadCells::notMeasured).orElse(null));
    }

    /** What a part gave, cell by cell, or why that isn't known. */
    static Map<String, Object> asMap(Loaded<Breathing> gain, Optional<Machine> machine) {
        return gain.value()
                .map(g -> asMap(g, machine.flatMap(m -> BeyondBore.of(m, g))))
                .orElseGet(() -> Map.of("unknown", gain.issues().get(0).what()));
    }

    private static Map<String, Object> asMap(Breathing gain, Optional<BeyondBore> beyond) {
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("knownCells", gain.knownCells());
        map.put("cells", gain.cells());
        map.put("amount", gain.amount().name().toLowerCase(Locale.ROOT));
        map.put("meaning", "fuel needed, as air if the old table met the same target");
        map.put(
                "beyondBore",
                beyond.map(b -> Map.of(
                                "cells", b.cells().size(),
                                "areaPercent", rounded(b.areaPercent()),
                                "worstPercent", rounded(b.worstPercent()),
                                "sentence", b.sentence()))
                        .orElse(null));
        List<Object> bands = new ArrayList<>();
        for (GainBands.Gain each : GainBands.of(gain)) {
            Map<String, Object> band = asMap(each.band());
            band.put("meanPercent", rounded(each.meanPercent()));
            band.put("leastPercent", rounded(each.leastPercent()));
            band.put("mostPercent", rounded(each.mostPercent()));
            band.put("cells", each.cells());
            bands.add(band);
        }
        map.put("bands", bands);
        List<Object> known = new ArrayList<>();
        for (int c = 0; c < gain.cells(); c++) {
            if (gain.isKnown(c)) {
                Map<String, Object> cell = new LinkedHashMap<>();
                cell.put("speedRpm", gain.axes().speedAt(c));
                cell.put("load", gain.axes().loadAt(c));
                cell.put(
                        "before",
                        gain.before(c).isPresent() ? rounded(gain.before(c).getAsDouble()) : null);
                cell.put(
                        "after",
                        gain.after(c).isPresent() ? rounded(gain.after(c).getAsDouble()) : null);
                cell.put("gainPercent", rounded(gain.gainPercent(c)));
                cell.put("uncertaintyPercent", rounded(gain.gainErrorPercent(c)));
                int number = c;
                cell.put(
                        "beyondBore",
                        beyond.filter(b -> b.cells().contains(number)).isPresent());
                known.add(cell);
            }
        }
        map.put("known", known);
        return map;
    }

    private static Double number(OptionalDouble value) {
        return value.isPresent() ? Double.valueOf(value.getAsDouble()) : null;
    }

    private static Double rounded(double value) {
        return Optional.of(value)
                .filter(Double::isFinite)
                .map(v -> Math.rint(100 * v) / 100)
                .orElse(null);
    }

    private static String count(int n, String what) {
        return n + " " + what + (n == 1 ? "" : "s");
    }

    private static String padded(String text, int width) {
        return text + " ".repeat(Math.max(1, width - text.length()));
    }

    /** With one decimal and a sign. */
    private static String signed(double percent) {
        return String.format(Locale.ROOT, "%+.1f", percent);
    }
}
