package fuelwright.safety;

import fuelwright.ride.Ride;
import fuelwright.table.Axis;
import fuelwright.table.Table;
import fuelwright.unit.Measured;
import fuelwright.unit.Unit;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Locale;

/** Figures and places as sentences have them. */
final class Say {

    private Say() {}

    /** Names what the cautions of a list from an index on are about. */
    static void about(List<Caution> cautions, int from, String what) {
        cautions.subList(from, cautions.size()).replaceAll(c -> c.about(what));
    }

    /** A sensor of a ride by name: the ride alone where it has one sensor. */
    static String sensor(Ride ride, int sensor) {
        return ride.mixtures().size() > 1 ? ride.mixtures().get(sensor).heading() + " in " + ride.name() : ride.name();
    }

    /** What a rule has to say of one sensor of a ride. */
    interface OfSensor {
        void judge(int ride, int sensor, List<Caution> out);
    }

    /** What a rule has to say of every sensor of every ride, each caution about its sensor. */
    static List<Caution> bySensor(Dossier d, OfSensor rule) {
        List<Caution> out = new ArrayList<>();
        for (int r = 0; r < d.rides(); r++) {
            for (int s = 0; s < d.ride(r).mixtures().size(); s++) {
                int from = out.size();
                rule.judge(r, s, out);
                about(out, from, sensor(d.ride(r), s));
            }
        }
        return out;
    }

    static Measured lambda(double lambda) {
        return Measured.of(lambda, Unit.LAMBDA, 2);
    }

    /** A lambda beyond a limit, with as many decimals as it takes to be seen beyond it. */
    static Measured lambdaBeyond(double lambda, double limit) {
        boolean same = lambda(lambda).canonical().equals(lambda(limit).canonical());
        int decimals = !same ? 2 : Math.abs(lambda - limit) < 0.0005 ? 4 : 3;
        return Measured.of(lambda, Unit.LAMBDA, decimals);
    }

    static Measured celsius(double celsius) {
        return Measured.of(celsius, Unit.CELSIUS, 0);
    }

    /** A limit with its unit; of mixture the unit stands behind. */
    static Measured limit(Limit limit, double value) {
        Measured m = limit.measured(value);
        int decimals = Math.max(
                0,
                BigDecimal.valueOf(Math.rint(value * 1e4) / 1e4)
                        .stripTrailingZeros()
                        .scale());
        boolean behind = m.difference() || m.unit() == Unit.LAMBDA;
        return new Measured(value, m.unit(), decimals, behind, m.unit() != Unit.ONE);
    }

    /** A limit without zeros at its end. */
    static String figure(double value) {
        return BigDecimal.valueOf(Math.rint(value * 1e4) / 1e4)
                .stripTrailingZeros()
                .toPlainString();
    }

    static String percent(double percent) {
        return String.format(Locale.ROOT, "%.0f %%", percent);
    }

    static String signed(double percent) {
        return String.format(Locale.ROOT, "%+.0f %%", percent).replace('-', '−');
    }

    static String seconds(double seconds) {
        return String.format(Locale.ROOT, "%.1f s", seconds);
    }

    /** A time of a ride, {@code 14:44.8}; from one hour on with hours. */
    static String minutes(double seconds) {
        long tenths = Math.round(seconds * 10);
        long length = Math.abs(tenths) / 10;
        String rest = String.format(Locale.ROOT, ":%02d.%d", length % 60, Math.abs(tenths) % 10);
        String clock = length < 3600
                ? length / 60 + rest
                : String.format(Locale.ROOT, "%d:%02d%s", length / 3600, length / 60 % 60, rest);
        return tenths < 0 ? "−" + clock : clock;
    }

    static String rpm(double rpm) {
        return String.format(Locale.ROOT, "%.0f rpm", rpm);
    }

    static String load(double load, Axis.Kind kind) {
        return kind == Axis.Kind.THROTTLE
                ? String.format(Locale.ROOT, "%.0f %% throttle", load)
                : String.format(Locale.ROOT, "%.0f kPa", load);
    }

    /** A cell by its place: {@code 4000 rpm, 60 % throttle}. */
    static String cell(Table table, int cell) {
        return rpm(table.speedAt(cell)) + ", "
                + load(table.loadAt(cell), table.load().kind());
    }

    static String cells(int count) {
        return count == 1 ? "1 cell" : count + " cells";
    }

    /** The stretch of engine speeds that some cells take. */
    static String speeds(Table table, Collection<Integer> cells) {
        double least = cells.stream().mapToDouble(table::speedAt).min().orElse(0);
        double most = cells.stream().mapToDouble(table::speedAt).max().orElse(0);
        return least == most ? "at " + rpm(least) : String.format(Locale.ROOT, "from %.0f to %.0f rpm", least, most);
    }
}
