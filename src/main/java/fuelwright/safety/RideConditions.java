package fuelwright.safety;

import fuelwright.ride.Role;
import fuelwright.table.Table;
import fuelwright.unit.Measured;
import fuelwright.unit.Sentence;
import fuelwright.unit.Unit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.TreeSet;

/** Whether the rides were made in conditions that the figures may be taken from. */
final class RideConditions implements Rule {

    private static final double MOSTLY = 0.5;
    private static final double OFTEN = 0.1;
    private static final double HOT_SHARE = 0.05;
    private static final double OUTSIDE_SHARE = 0.01;
    private static final double BEYOND = 1.03;
    private static final double OUTERMOST = 0.02;
    private static final double WARMING_PERCENT = 2;

    @Override
    public List<Caution> judge(Dossier d) {
        List<Caution> out = new ArrayList<>();
        double evidenceS = 0;
        for (int r = 0; r < d.rides(); r++) {
            RideRows rows = d.rows(r);
            evidenceS += rows.seconds(rows::isEvidence);
            int from = out.size();
            temperatures(d, rows, out);
            coolantUnknown(d, r, rows, out);
            battery(d, rows, out);
            outside(d, r, rows, out);
            climbs(d, rows, out);
            Say.about(out, from, rows.ride.name());
        }
        apart(d, Role.INTAKE_AIR, Limit.INTAKE_APART, "intake air", Unit.CELSIUS, out);
        apart(d, Role.BAROMETER, Limit.BAROMETER_APART, "the barometer", Unit.KILOPASCAL, out);
        if (d.rides() > 0 && evidenceS < d.limits.of(Limit.RIDE_LEAST)) {
            add(
                    out,
                    "ride-short",
                    "Little evidence",
                    String.format(
                            Locale.ROOT,
                            "Only %.0f s of all rides count as evidence; %.0f s is the least to go by",
                            evidenceS,
                            d.limits.of(Limit.RIDE_LEAST)),
                    "Ride longer, warm and steady; see what the screens kept out");
        }
        return out;
    }

    private static void add(List<Caution> out, String rule, String title, String what, String todo) {
        add(out, rule, title, Sentence.text(what), todo);
    }

    private static void add(List<Caution> out, String rule, String title, Sentence what, String todo) {
        out.add(new Caution(rule, Caution.Level.CHECK, title, what, todo, new TreeSet<>(), List.of()));
    }

    /** Share of the running time in which a channel is below or above a figure. */
    private static double share(RideRows rows, double[] values, double figure, boolean above) {
        double running = rows.seconds(i -> rows.isRunning(i) && !Double.isNaN(values[i]));
        double bad = rows.seconds(i -> rows.isRunning(i) && (above ? values[i] > figure : values[i] < figure));
        return running > 0 ? bad / running : 0;
    }

    private static void temperatures(Dossier d, RideRows rows, List<Caution> out) {
        String ride = rows.ride.name();
        double least = d.limits.of(Limit.COOLANT_LEAST);
        double most = d.limits.of(Limit.COOLANT_MOST);
        double[] coolant = rows.values(Role.COOLANT);
        double cold = share(rows, coolant, least, false);
        if (cold > MOSTLY) {
            add(
                    out,
                    "mostly-cold",
                    "Mostly too cold",
                    Sentence.of(
                            "The coolant is below %s for %.0f %% of %s: warm-up enrichment isn't the table's doing",
                            Say.celsius(least), 100 * cold, ride),
                    "Warm the engine before the ride that counts");
        }
        double hot = share(rows, coolant, most, true);
        if (hot > HOT_SHARE) {
            add(
                    out,
                    "heat-soaked",
                    "Too hot",
                    Sentence.of("The coolant is above %s for %.0f %% of %s", Say.celsius(most), 100 * hot, ride),
                    "Find out why before loading the engine, and ride again when it is cool");
        }
        double warmest = d.limits.of(Limit.INTAKE_MOST);
        double soaked = share(rows, rows.values(Role.INTAKE_AIR), warmest, true);
        if (soaked > OFTEN) {
            add(
                    out,
                    "intake-hot",
                    "Intake heat-soaked",
                    Sentence.of(
                            "Intake air is above %s for %.0f %% of %s: the air is thinner than on the road",
                            Say.celsius(warmest), 100 * soaked, ride),
                    "Ride with air over the engine, or leave out the stretches at a standstill");
        }
    }

    /** Without a coolant temperature nobody knows whether warm-up enrichment was at work; a mixture that is richer early looks like it. */
    private static void coolantUnknown(Dossier d, int r, RideRows rows, List<Caution> out) {
        if (Arrays.stream(rows.values(Role.COOLANT)).anyMatch(Double::isFinite)
                || rows.ride.mixtures().isEmpty()) {
            return;
        }
        double richer = rows.size == 0 ? 0 : CellMeans.thirds(d, r).leanerPercent();
        add(
                out,
                "coolant-not-logged",
                "Coolant isn't logged",
                rows.ride.name()
                        + " has no coolant temperature: readings of a cold engine, which warm-up enrichment makes richer, can't be"
                        + " kept out, and the table would be made leaner for them"
                        + (richer >= WARMING_PERCENT
                                ? String.format(
                                        Locale.ROOT,
                                        ". The same cells do read %.0f %% richer in the first third than in the last, as"
                                                + " warm-up has it",
                                        richer)
                                : "")
                        + CoolantCandidate.in(rows.ride)
                                .map(heading -> ". The column '" + heading + "' warms up as a coolant does")
                                .orElse(""),
                CoolantCandidate.in(rows.ride).isPresent()
                        ? "If that column is the coolant, give it that role on the stage Rides"
                        : "Log the coolant temperature; otherwise leave out the ride unless the engine was warm from its first row on");
    }

    private static void battery(Dossier d, RideRows rows, List<Caution> out) {
        double least = d.limits.of(Limit.BATTERY_LEAST);
        double low = share(rows, rows.values(Role.BATTERY), least, false);
        if (low > OFTEN) {
            add(
                    out,
                    "battery-low",
                    "Battery low",
                    String.format(
                            Locale.ROOT,
                            "Below %.1f V for %.0f %% of %s with the engine running: injectors open late and the pump is weak",
                            least,
                            100 * low,
                            rows.ride.name()),
                    "See to battery and charging before judging the mixture");
        }
    }

    private static void outside(Dossier d, int r, RideRows rows, List<Caution> out) {
        Table table = d.fuel;
        double speed = table.speed().last() * BEYOND;
        double load = table.load().last() * BEYOND;
        double running = rows.seconds(i -> rows.isRunning(i) && !rows.isOverrun(i));
        double beyond = rows.seconds(
                i -> rows.isRunning(i) && !rows.isOverrun(i) && (rows.speedRpm[i] > speed || rows.load[i] > load));
        if (running > 0 && beyond > OUTSIDE_SHARE * running) {
            add(
                    out,
                    "outside-table",
                    "The ride leaves the table",
                    String.format(
                            Locale.ROOT,
                            "For %.0f s %s is beyond the table's last breakpoints (%.0f rpm, %s): the unit goes on with the edge there",
                            beyond,
                            rows.ride.name(),
                            table.speed().last(),
                            Say.load(table.load().last(), table.load().kind())),
                    "Check that this is the right table, and whether its breakpoints should reach further");
        }
    }

    /** The barometer's own spread within a ride, without its outermost readings. */
    private static void climbs(Dossier d, RideRows rows, List<Caution> out) {
        double[] there = Arrays.stream(rows.values(Role.BAROMETER))
                .filter(Double::isFinite)
                .sorted()
                .toArray();
        if (there.length == 0) {
            return;
        }
        double least = there[(int) (OUTERMOST * there.length)];
        double most = there[(int) ((1 - OUTERMOST) * (there.length - 1))];
        if (most - least > d.limits.of(Limit.BAROMETER_APART)) {
            add(
                    out,
                    "barometer-moves",
                    "A ride through different air",
                    Sentence.of(
                            "In %s the barometer goes from %s to %s, more than %s",
                            rows.ride.name(),
                            Measured.of(least, Unit.KILOPASCAL, 0).alone(),
                            Measured.of(most, Unit.KILOPASCAL, 0),
                            Measured.step(d.limits.of(Limit.BAROMETER_APART), Unit.KILOPASCAL, 0)),
                    "See whether the unit corrects for height; if not, ride at one height for the evidence that counts");
        }
    }

    private static void apart(Dossier d, Role role, Limit limit, String name, Unit unit, List<Caution> out) {
        double least = Double.POSITIVE_INFINITY;
        double most = Double.NEGATIVE_INFINITY;
        for (int r = 0; r < d.rides() && d.rides() > 1; r++) {
            double median = Dossier.median(d.ride(r), role);
            if (!Double.isNaN(median)) {
                least = Math.min(least, median);
                most = Math.max(most, median);
            }
        }
        if (most - least > d.limits.of(limit)) {
            add(
                    out,
                    role == Role.BAROMETER ? "barometer-apart" : "intake-apart",
                    "Rides in different air",
                    Sentence.of(
                            "Between rides %s goes from %s to %s, more than %s",
                            name,
                            Measured.of(least, unit, 0).alone(),
                            Measured.of(most, unit, 0),
                            Measured.step(d.limits.of(limit), unit, 0)),
                    "See whether the unit corrects for it; if not, judge the rides by themselves");
        }
    }
}
