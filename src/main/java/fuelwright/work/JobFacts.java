package fuelwright.work;

import fuelwright.airflow.Machine;
import fuelwright.airflow.ThrottleBody;
import fuelwright.estimate.CellNeed;
import fuelwright.estimate.Standing;
import fuelwright.issue.Issue;
import fuelwright.job.Job;
import fuelwright.job.PastTable;
import fuelwright.job.Results;
import fuelwright.job.StoredJob;
import fuelwright.power.Breathing;
import fuelwright.unit.Measured;
import fuelwright.unit.Sentence;
import fuelwright.unit.Unit;
import java.util.ArrayList;
import java.util.DoubleSummaryStatistics;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;

/** A job in a few lines: machine, what was changed, how far it got, what it gave. What isn't known is said so. */
public final class JobFacts {

    private static final String UNKNOWN = "not known";

    private JobFacts() {}

    /**
     * One line.
     *
     * @param what what it is about
     * @param figure what is known
     */
    public record Fact(String what, Sentence figure) {
        Fact(String what, String figure) {
            this(what, Sentence.text(figure));
        }
    }

    /** Always the same lines in the same order, so that two jobs can stand side by side; none of a job that can't be read. */
    public static List<Fact> of(JobRecord record) {
        List<Fact> facts = new ArrayList<>();
        record.stored().ifPresent(s -> {
            machine(s.job().machine(), facts);
            work(s, facts);
            results(record, facts);
        });
        return facts;
    }

    /** The most telling of them on one line; of a job that can't be read, why. */
    public static String line(JobRecord record) {
        if (record.stored().isEmpty()) {
            return "can't be read: " + record.trouble().map(Issue::what).orElse("");
        }
        StoredJob stored = record.stored().get();
        List<String> parts = new ArrayList<>();
        Machine machine = stored.job().machine();
        machine.displacementCc().ifPresent(cc -> parts.add(figure(cc) + " cm³"));
        if (machine.hasBodyChange()) {
            parts.add(bore(machine.before()) + " → " + bore(machine.after()) + " mm");
        }
        parts.add(stored.rides().size() + (stored.rides().size() == 1 ? " ride" : " rides"));
        record.results().ifPresent(r -> {
            r.errorPercent().ifPresent(e -> parts.add(said("error %.1f %%%s", e, r.done() ? ", done" : "")));
            if (r.stops() > 0) {
                parts.add(r.stops() + " Stop");
            }
        });
        parts.add(record.gain().value().map(g -> "part gave " + mean(g)).orElseGet(record::whyNoGain));
        SameJob.also(record).ifPresent(parts::add);
        return String.join(", ", parts);
    }

    private static String mean(Breathing gain) {
        double mean = IntStream.range(0, gain.cells())
                .filter(gain::isKnown)
                .mapToDouble(gain::gainPercent)
                .average()
                .orElseThrow();
        return signed(mean) + " % air on average";
    }

    private static void machine(Machine machine, List<Fact> facts) {
        facts.add(new Fact(
                "Displacement",
                machine.displacementCc().isPresent()
                        ? figure(machine.displacementCc().getAsDouble()) + " cm³"
                        : UNKNOWN));
        facts.add(new Fact(
                "Throttle bodies",
                machine.bodies().isPresent() ? Integer.toString(machine.bodies().getAsInt()) : UNKNOWN));
        facts.add(new Fact(
                "Bore",
                machine.before().isPresent() || machine.after().isPresent()
                        ? bore(machine.before()) + " → " + bore(machine.after()) + " mm"
                        : UNKNOWN));
        facts.add(new Fact("Fuel", machine.fuel().words()));
        facts.add(new Fact(
                "Redline",
                machine.redlineRpm().isPresent() ? figure(machine.redlineRpm().getAsDouble()) + " rpm" : UNKNOWN));
    }

    private static String bore(java.util.Optional<ThrottleBody> body) {
        return body.map(b -> figure(b.boreMm())).orElse("?");
    }

    private static void work(StoredJob stored, List<Fact> facts) {
        Job job = stored.job();
        facts.add(new Fact(
                "Fuel table",
                job.fuelTable()
                        .map(t ->
                                t.quantity().words() + " by " + t.load().kind().words() + ", "
                                        + t.speed().size() + " × " + t.load().size())
                        .orElse("none")));
        facts.add(new Fact("Tables before it", Integer.toString(job.past().size())));
        facts.add(new Fact("Rides", Integer.toString(stored.rides().size())));
        facts.add(new Fact(
                "Cells fixed by hand",
                Integer.toString(job.proposal().decisions().size())));
        facts.add(new Fact(
                "Promised error",
                job.past().stream()
                        .reduce((a, b) -> b)
                        .map(PastTable::promisedErrorPercent)
                        .filter(Double::isFinite)
                        .map(p -> said("%.1f %%", p))
                        .orElse(UNKNOWN)));
    }

    private static void results(JobRecord record, List<Fact> facts) {
        java.util.Optional<Results> results = record.results();
        facts.add(new Fact(
                "Error of the newest ride",
                results.filter(r -> r.errorPercent().isPresent())
                        .map(r -> said("%.1f %%%s", r.errorPercent().getAsDouble(), r.done() ? ", done" : ""))
                        .orElse(UNKNOWN)));
        facts.add(new Fact("Shortfall left", results.map(JobFacts::left).orElse(UNKNOWN)));
        facts.add(new Fact(
                "Stop cautions", results.map(r -> Integer.toString(r.stops())).orElse(UNKNOWN)));
        facts.add(new Fact("Most power", results.map(JobFacts::power).orElse(Sentence.text(UNKNOWN))));
        facts.add(new Fact(
                "What the part gave",
                record.gain().value().map(JobFacts::gain).orElseGet(() -> UNKNOWN + ": " + record.whyNoGain())));
    }

    /** Of measured cells. */
    private static String left(Results results) {
        DoubleSummaryStatistics left = results.cells().stream()
                .filter(c -> c.standing() == Standing.MEASURED)
                .mapToDouble(CellNeed::shortfallPercent)
                .summaryStatistics();
        return left.getCount() == 0
                ? "no cell measured"
                : signed(left.getMin()) + " to " + signed(left.getMax()) + " % in " + left.getCount()
                        + " measured cells";
    }

    private static Sentence power(Results results) {
        if (results.peaks().isEmpty()) {
            return Sentence.text("no pull with logged power or torque");
        }
        List<Sentence> peaks = results.peaks().stream()
                .map(p -> Sentence.of(
                        "%s ±%s at %.0f rpm (%s)",
                        Measured.of(p.powerKw(), Unit.KILOWATT, 1).alone(),
                        Measured.of(p.errorKw(), Unit.KILOWATT, 1),
                        p.rpm(),
                        p.ride()))
                .toList();
        return Sentence.joined(", then ", peaks);
    }

    private static String gain(Breathing gain) {
        DoubleSummaryStatistics all = IntStream.range(0, gain.cells())
                .filter(gain::isKnown)
                .mapToDouble(gain::gainPercent)
                .summaryStatistics();
        return signed(all.getMin()) + " to " + signed(all.getMax()) + " % air, " + signed(all.getAverage())
                + " % on average, in " + all.getCount() + " of " + gain.cells() + " cells";
    }

    static String figure(double value) {
        return value == Math.rint(value) ? Long.toString((long) value) : Double.toString(value);
    }

    /** With one decimal, a sign and a true minus. */
    static String signed(double percent) {
        String text = said("%+.1f", percent);
        return text.equals("-0.0") || text.equals("+0.0") ? "0.0" : text.replace('-', '−');
    }

    private static String said(String format, Object... figures) {
        return String.format(Locale.ROOT, format, figures);
    }
}
