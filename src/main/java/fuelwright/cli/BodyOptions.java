package fuelwright.cli;

import fuelwright.airflow.InjectorSet;
import fuelwright.airflow.Machine;
import fuelwright.airflow.ThrottleBody;
import fuelwright.mixture.Fuel;
import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.stream.Collectors;
import picocli.CommandLine.Option;

/** What is known of the machine and its throttle bodies. */
final class BodyOptions {

    private static final double USUAL_SHAFT_MM = 8;
    private static final double USUAL_CLOSED_DEG = 5;
    private static final double USUAL_OPEN_DEG = 85;

    @Option(names = "--displacement", paramLabel = "CC", description = "displacement of the whole engine, cm³")
    private Double displacementCc;

    @Option(names = "--bodies", paramLabel = "N", description = "number of throttle bodies")
    private Integer bodies;

    @Option(names = "--bore-before", paramLabel = "MM", description = "bore that the table was made for, mm")
    private Double boreBeforeMm;

    @Option(names = "--bore-after", paramLabel = "MM", description = "bore that is fitted now, mm")
    private Double boreAfterMm;

    @Option(names = "--shaft", paramLabel = "MM", description = "throttle shaft, mm (8)")
    private Double shaftMm;

    @Option(names = "--shaft-after", paramLabel = "MM", description = "shaft of the new body, mm (as --shaft)")
    private Double shaftAfterMm;

    @Option(names = "--closed-angle", paramLabel = "DEG", description = "plate angle when closed, degrees (5)")
    private Double closedAngleDeg;

    @Option(names = "--open-angle", paramLabel = "DEG", description = "plate angle at full throttle, degrees (85)")
    private Double openAngleDeg;

    @Option(names = "--fuel", paramLabel = "NAME", description = "petrol, E5, E10, E85, ethanol or methanol (petrol)")
    private String fuel;

    @Option(names = "--redline", paramLabel = "RPM", description = "highest engine speed, rpm")
    private Double redlineRpm;

    /** The machine, of which nothing need be known. */
    Machine machine() {
        positive("--displacement", displacementCc);
        positive("--redline", redlineRpm);
        if (bodies != null && bodies < 1) {
            throw CommandFailed.usage("--bodies " + bodies + " must be at least 1");
        }
        boolean one = boreBeforeMm == null ^ boreAfterMm == null;
        if (one) {
            throw CommandFailed.usage(
                    "--bore-before and --bore-after belong together: give both, or neither where nothing was changed there");
        }
        if (displacementCc != null && boreBeforeMm != null && bodies == null) {
            throw CommandFailed.usage(
                    "--bodies is missing: the bore forecast needs to know how many throttle bodies share the displacement");
        }
        if (displacementCc == null && boreBeforeMm != null) {
            throw CommandFailed.usage(
                    "--displacement is missing: without it and --bodies the bores would have no effect");
        }
        boolean shape = shaftMm != null || shaftAfterMm != null || closedAngleDeg != null || openAngleDeg != null;
        if (shape && boreBeforeMm == null) {
            throw CommandFailed.usage(
                    "--shaft and the plate's angles mean nothing without --bore-before and --bore-after");
        }
        Optional<ThrottleBody> before = Optional.empty();
        Optional<ThrottleBody> after = Optional.empty();
        if (boreBeforeMm != null) {
            before = Optional.of(body("--bore-before", boreBeforeMm, "--shaft", or(shaftMm, USUAL_SHAFT_MM)));
            after = Optional.of(body(
                    "--bore-after",
                    boreAfterMm,
                    shaftAfterMm == null ? "--shaft" : "--shaft-after",
                    or(shaftAfterMm, or(shaftMm, USUAL_SHAFT_MM))));
        }
        return new Machine(
                optional(displacementCc),
                bodies == null ? OptionalInt.empty() : OptionalInt.of(bodies),
                before,
                after,
                fuel(),
                optional(redlineRpm),
                InjectorSet.UNKNOWN,
                OptionalDouble.empty());
    }

    /** The machine with everything that a bore forecast needs. */
    Machine machineWithBodies() {
        if (displacementCc == null || bodies == null || boreBeforeMm == null || boreAfterMm == null) {
            throw CommandFailed.usage(
                    "The bore forecast needs --displacement, --bodies, --bore-before and --bore-after: give all four");
        }
        return machine();
    }

    private ThrottleBody body(String boreOption, double boreMm, String shaftOption, double shaft) {
        range(boreOption, boreMm, 5, 200, "mm");
        if (!(shaft >= 0 && shaft < boreMm)) {
            throw CommandFailed.usage(shaftOption + " " + shaft + " mm must be from 0 to the bore, " + boreMm + " mm");
        }
        double closed = or(closedAngleDeg, USUAL_CLOSED_DEG);
        double open = or(openAngleDeg, USUAL_OPEN_DEG);
        range("--closed-angle", closed, 0, 45, "degrees");
        range("--open-angle", open, Math.nextUp(closed), 90, "degrees");
        return new ThrottleBody(boreMm, shaft, closed, open);
    }

    private Fuel fuel() {
        if (fuel == null) {
            return Fuel.PETROL;
        }
        String wanted = fuel.strip().toLowerCase(Locale.ROOT);
        return Arrays.stream(Fuel.values())
                .filter(f -> f.words().toLowerCase(Locale.ROOT).equals(wanted))
                .findFirst()
                .orElseThrow(() -> CommandFailed.usage("--fuel " + fuel + " isn't known. Known are "
                        + Arrays.stream(Fuel.values()).map(Fuel::words).collect(Collectors.joining(", "))));
    }

    private static void positive(String option, Double value) {
        if (value != null && !(value > 0 && Double.isFinite(value))) {
            throw CommandFailed.usage(option + " " + value + " must be above 0");
        }
    }

    private static void range(String option, double value, double least, double most, String unit) {
        if (!(value >= least && value <= most)) {
            throw CommandFailed.usage(option + " " + value + " " + unit + " must be from " + Math.round(least) + " to "
                    + Math.round(most));
        }
    }

    private static double or(Double value, double usual) {
        return value == null ? usual : value;
    }

    private static OptionalDouble optional(Double value) {
        return value == null ? OptionalDouble.empty() : OptionalDouble.of(value);
    }
}
