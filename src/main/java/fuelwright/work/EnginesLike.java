package fuelwright.work;

import fuelwright.airflow.Machine;
import fuelwright.airflow.ThrottleBody;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.stream.Stream;

/**
 * What parts like this one gave on engines like this one, from the jobs of a folder. What other engines showed is no evidence about this
 * one: it says what to expect, and never goes into a table.
 *
 * @param counted the jobs that count, in the folder's order
 * @param left the others, each with the reason
 * @param bands what they gave, by bands of load
 */
public record EnginesLike(List<JobRecord> counted, List<Left> left, List<Band> bands) {

    /** Fewer jobs than this show examples, not a range (common practice, no source). */
    public static final int FEW = 3;

    /** Bores so far apart still count as the same, mm. */
    public static final double BORE_MM = 1;

    /** Displacements so far apart still count as alike, %. */
    public static final double DISPLACEMENT_PERCENT = 25;

    /**
     * What counts as alike; what is empty isn't asked for.
     *
     * @param displacementCc cm³, within {@code withinPercent}
     * @param withinPercent how far displacement may be off, %
     * @param bodies number of throttle bodies
     * @param boreBeforeMm within {@link #BORE_MM}
     * @param boreAfterMm within {@link #BORE_MM}
     * @param itself a job that must not answer for itself
     */
    public record Question(
            OptionalDouble displacementCc,
            double withinPercent,
            OptionalInt bodies,
            OptionalDouble boreBeforeMm,
            OptionalDouble boreAfterMm,
            Optional<Path> itself) {

        /** Engines and changes like that of a machine. */
        public static Question of(Machine machine, Optional<Path> itself) {
            return new Question(
                    machine.displacementCc(),
                    DISPLACEMENT_PERCENT,
                    machine.hasBodyChange() ? machine.bodies() : OptionalInt.empty(),
                    bore(machine.before()),
                    bore(machine.after()),
                    itself);
        }

        /** Whether anything at all is asked for. */
        public boolean asks() {
            return displacementCc.isPresent()
                    || bodies.isPresent()
                    || boreBeforeMm.isPresent()
                    || boreAfterMm.isPresent();
        }

        /** In words. */
        public String words() {
            List<String> parts = new ArrayList<>();
            displacementCc.ifPresent(
                    cc -> parts.add(JobFacts.figure(cc) + " cm³ ±" + JobFacts.figure(withinPercent) + " %"));
            bodies.ifPresent(n -> parts.add(n + (n == 1 ? " body" : " bodies")));
            if (boreBeforeMm.isPresent() || boreAfterMm.isPresent()) {
                parts.add("bore " + figure(boreBeforeMm) + " → " + figure(boreAfterMm) + " mm ±"
                        + JobFacts.figure(BORE_MM));
            }
            return parts.isEmpty() ? "any engine" : String.join(", ", parts);
        }

        private static String figure(OptionalDouble bore) {
            return bore.isPresent() ? JobFacts.figure(bore.getAsDouble()) : "any";
        }
    }

    /**
     * A job that doesn't count.
     *
     * @param why a clause
     */
    public record Left(JobRecord job, String why) {}

    /**
     * What the jobs gave in a band of load: each job counts once, with the mean of its known cells there.
     *
     * @param jobs how many know anything there, at least one
     * @param leastPercent least of the jobs' means
     * @param middlePercent their median
     * @param mostPercent most of them
     */
    public record Band(GainBands.Band band, int jobs, double leastPercent, double middlePercent, double mostPercent) {

        /** Whether these are examples rather than a range. */
        public boolean isFew() {
            return jobs < FEW;
        }
    }

    public EnginesLike {
        counted = List.copyOf(counted);
        left = List.copyOf(left);
        bands = List.copyOf(bands);
    }

    /**
     * What the jobs of a folder answer.
     *
     * @param records the jobs, those that can't be read among them
     */
    public static EnginesLike of(List<JobRecord> records, Question question) {
        List<JobRecord> counted = new ArrayList<>();
        List<Left> left = new ArrayList<>();
        for (JobRecord each : records) {
            if (question.itself().filter(f -> same(f, each.file())).isPresent()) {
                continue;
            }
            Optional<String> why = why(each, question);
            if (why.isPresent()) {
                left.add(new Left(each, why.get()));
            } else {
                counted.add(each);
            }
        }
        return new EnginesLike(counted, left, bands(counted));
    }

    private static boolean same(Path one, Path other) {
        return one.toAbsolutePath().normalize().equals(other.toAbsolutePath().normalize());
    }

    private static Optional<String> why(JobRecord record, Question question) {
        if (record.stored().isEmpty()) {
            return Optional.of("can't be read");
        }
        Machine machine = record.stored().get().job().machine();
        return displacement(machine, question)
                .or(() -> question.bodies().isPresent() && !machine.bodies().equals(question.bodies())
                        ? Optional.of(bodies(machine))
                        : Optional.empty())
                .or(() -> bore("before", machine.before(), question.boreBeforeMm()))
                .or(() -> bore("after", machine.after(), question.boreAfterMm()))
                .or(() -> record.gain().value().isPresent() ? Optional.empty() : Optional.of(record.whyNoGain()));
    }

    private static String bodies(Machine machine) {
        if (machine.bodies().isEmpty()) {
            return "number of bodies not known";
        }
        int bodies = machine.bodies().getAsInt();
        return "has " + bodies + (bodies == 1 ? " body" : " bodies");
    }

    private static Optional<String> displacement(Machine machine, Question question) {
        if (question.displacementCc().isEmpty()) {
            return Optional.empty();
        }
        if (machine.displacementCc().isEmpty()) {
            return Optional.of("its displacement isn't known");
        }
        double cc = machine.displacementCc().getAsDouble();
        double asked = question.displacementCc().getAsDouble();
        return Math.abs(cc - asked) <= asked * question.withinPercent() / 100 * (1 + 1e-9)
                ? Optional.empty()
                : Optional.of("has " + JobFacts.figure(cc) + " cm³");
    }

    private static Optional<String> bore(String when, Optional<ThrottleBody> body, OptionalDouble asked) {
        if (asked.isEmpty()) {
            return Optional.empty();
        }
        OptionalDouble mm = bore(body);
        if (mm.isEmpty()) {
            return Optional.of("its bore " + when + " isn't known");
        }
        return Math.abs(mm.getAsDouble() - asked.getAsDouble()) <= BORE_MM + 1e-9
                ? Optional.empty()
                : Optional.of("had " + JobFacts.figure(mm.getAsDouble()) + " mm " + when);
    }

    private static OptionalDouble bore(Optional<ThrottleBody> body) {
        return body.isPresent() ? OptionalDouble.of(body.get().boreMm()) : OptionalDouble.empty();
    }

    private static List<Band> bands(List<JobRecord> counted) {
        List<GainBands.Gain> gains = counted.stream()
                .flatMap(r -> GainBands.of(r.gain().value().orElseThrow()).stream())
                .toList();
        return Stream.of(fuelwright.table.Axis.Kind.THROTTLE, fuelwright.table.Axis.Kind.MANIFOLD_PRESSURE)
                .flatMap(kind -> GainBands.bands(kind).stream())
                .map(band -> band(
                        band,
                        gains.stream()
                                .filter(g -> g.band().equals(band))
                                .mapToDouble(GainBands.Gain::meanPercent)
                                .sorted()
                                .toArray()))
                .filter(b -> b.jobs() > 0)
                .toList();
    }

    private static Band band(GainBands.Band band, double[] sorted) {
        int n = sorted.length;
        double middle = n == 0 ? Double.NaN : (sorted[(n - 1) / 2] + sorted[n / 2]) / 2;
        return new Band(
                band,
                n,
                Arrays.stream(sorted).min().orElse(Double.NaN),
                middle,
                Arrays.stream(sorted).max().orElse(Double.NaN));
    }
}
