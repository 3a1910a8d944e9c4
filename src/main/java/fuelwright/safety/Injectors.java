package fuelwright.safety;

import fuelwright.estimate.CellProposal;
import fuelwright.ride.Column;
import fuelwright.ride.Ride;
import fuelwright.ride.Role;
import fuelwright.table.Axis;
import fuelwright.table.Quantity;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.TreeSet;

/**
 * Injector duty: the share of the engine's cycle, two turns, that the injector is open. With the full pulse, dead time included, duty in
 * % is rpm · pulse[ms] / 1200 for one pulse a cycle of a four-stroke (15 ms at 3000 rpm is 37.5 %: worked figure of a published
 * calculation). Beyond the limit more percent in the table can't deliver more fuel.
 */
final class Injectors implements Rule {

    private static final double CYCLE_MS_RPM = 120_000;
    private static final double SUSTAINED_S = 0.2;
    private static final int READINGS = 3;

    /** The highest duty that lasted, and where. */
    private record Peak(double duty, int ride, double timeS, double lengthS, double speedRpm, double load) {
        static final Peak NONE = new Peak(0, -1, 0, 0, 0, 0);
    }

    @Override
    public boolean looksAtProposal() {
        return true;
    }

    @Override
    public List<Caution> judge(Dossier d) {
        List<Caution> out = new ArrayList<>();
        boolean byPulse = d.fuel.quantity() == Quantity.INJECTOR_PULSE;
        boolean logged = false;
        Peak now = Peak.NONE;
        Peak then = Peak.NONE;
        for (int r = 0; r < d.rides(); r++) {
            if (hasPulse(d.ride(r))) {
                logged = true;
                now = worse(now, peak(d, r, null));
                if (d.proposal().isPresent()) {
                    then = worse(then, peak(d, r, factors(d)));
                }
            }
        }
        say(d, now, "now", out);
        if (then.duty > now.duty + 0.5) {
            say(d, then, "with the proposal", out);
        }
        if (byPulse) {
            byTable(d, out);
        } else if (!logged) {
            out.add(InjectorSize.notLogged(d));
        }
        InjectorSize.changed(d).ifPresent(out::add);
        return out;
    }

    /** Duty in %. */
    static double dutyPercent(double speedRpm, double pulseMs, double injectionsPerCycle) {
        return 100 * speedRpm * pulseMs * injectionsPerCycle / CYCLE_MS_RPM;
    }

    private static boolean hasPulse(Ride ride) {
        return ride.column(Role.INJECTOR_PULSE).isPresent()
                && ride.column(Role.ENGINE_SPEED).isPresent();
    }

    /** Factors on delivered fuel of the proposal, interpolated as the unit does. */
    private static Locator factors(Dossier d) {
        double[] factors = d.proposal().get().cells().stream()
                .mapToDouble(c -> TypedFigures.isSlipped(d, c) ? 1 : c.factor())
                .toArray();
        return new Locator(d.fuel.with(Quantity.MULTIPLIER, factors));
    }

    /** The highest duty that lasted; {@code factors} null for the ride as it was. */
    private static Peak peak(Dossier d, int r, Locator factors) {
        Ride ride = d.ride(r);
        Column time = ride.timeS();
        Column pulse = ride.column(Role.INJECTOR_PULSE).orElseThrow();
        Column speed = ride.column(Role.ENGINE_SPEED).orElseThrow();
        boolean byThrottle = d.fuel.load().kind() == Axis.Kind.THROTTLE;
        Column load =
                ride.column(byThrottle ? Role.THROTTLE : Role.MANIFOLD_PRESSURE).orElse(null);
        double perCycle = d.limits.of(Limit.INJECTIONS_PER_CYCLE);
        double deadMs = d.injectorDeadTimeMs;
        double[] last = new double[READINGS];
        int[] rows = new int[READINGS];
        int n = 0;
        Peak peak = Peak.NONE;
        for (int i = 0; i < ride.size(); i++) {
            double ms = 1000 * pulse.at(i);
            double rpm = speed.at(i);
            if (!(ms > 0 && rpm > 0)) {
                continue;
            }
            double loadNow = load == null ? Double.NaN : load.at(i);
            if (factors != null) {
                double factor = Double.isNaN(loadNow) ? 1 : factors.value(rpm, loadNow);
                ms = ms > deadMs ? deadMs + (ms - deadMs) * factor : ms;
            }
            last[n % READINGS] = dutyPercent(rpm, ms, perCycle);
            rows[n % READINGS] = i;
            n++;
            int first = rows[n % READINGS];
            double lasted = time.at(i) - time.at(first);
            double least = Math.min(last[0], Math.min(last[1], last[2]));
            if (n >= READINGS && least > peak.duty && lasted > 0 && lasted < 1) {
                peak = new Peak(least, r, time.at(first), Math.max(lasted, SUSTAINED_S), rpm, loadNow);
            }
        }
        return peak;
    }

    /** From which duty on something is said: a Stop limit set below that of the Check still counts. */
    private static double least(Dossier d) {
        return Math.min(d.limits.of(Limit.DUTY_CHECK), d.limits.of(Limit.DUTY_STOP));
    }

    private static Peak worse(Peak a, Peak b) {
        return b.duty > a.duty ? b : a;
    }

    private static void say(Dossier d, Peak peak, String when, List<Caution> out) {
        if (peak.duty < least(d)) {
            return;
        }
        boolean stop = peak.duty >= d.limits.of(Limit.DUTY_STOP);
        TreeSet<Integer> cells = new TreeSet<>();
        String place = Say.rpm(peak.speedRpm);
        if (!Double.isNaN(peak.load)) {
            cells.add(d.nearestCell(peak.speedRpm, peak.load));
            place += ", " + Say.load(peak.load, d.fuel.load().kind());
        }
        out.add(new Caution(
                when.equals("now") ? "injector-duty" : "injector-duty-proposed",
                stop ? Caution.Level.STOP : Caution.Level.CHECK,
                stop ? "Injectors at their end" : "Injectors near their end",
                String.format(
                        Locale.ROOT,
                        "Duty %s reaches %.0f %% at %s in %s: %s",
                        when,
                        peak.duty,
                        place,
                        d.ride(peak.ride).name(),
                        stop ? "more percent in the table can't deliver more fuel" : "little is left to add"),
                "Fit larger injectors or see to the fuel pressure before more load or engine speed",
                cells,
                List.of(new Caution.Moment(
                        peak.ride,
                        d.ride(peak.ride).name(),
                        peak.timeS,
                        peak.lengthS,
                        peak.duty,
                        peak.speedRpm,
                        peak.load,
                        "%"))));
    }

    /** A pulse table says for each cell what it asks for, ridden or not; without dead time where that isn't in the table. */
    private static void byTable(Dossier d, List<Caution> out) {
        double top = d.file.machine().redlineRpm().orElse(Double.POSITIVE_INFINITY);
        double perCycle = d.limits.of(Limit.INJECTIONS_PER_CYCLE);
        // The unit adds what the table was said not to contain.
        boolean told = d.proposal()
                .filter(p -> p.settings().deadTimeToldMs().isPresent())
                .isPresent();
        double outside = told ? Math.max(0, d.injectorDeadTimeMs - d.deadTimeMs) : 0;
        TreeSet<Integer> check = new TreeSet<>();
        TreeSet<Integer> stop = new TreeSet<>();
        double most = 0;
        int worst = -1;
        for (int c = 0; c < d.fuel.cells(); c++) {
            int cell = c;
            double pulse = Math.max(
                    d.fuel.at(c),
                    d.proposal()
                            .map(p -> p.cell(cell))
                            .filter(p -> !TypedFigures.isSlipped(d, p))
                            .map(CellProposal::after)
                            .orElse(0.0));
            double duty = dutyPercent(d.fuel.speedAt(c), pulse + outside, perCycle);
            if (d.fuel.speedAt(c) > top || duty < least(d)) {
                continue;
            }
            (duty >= d.limits.of(Limit.DUTY_STOP) ? stop : check).add(c);
            if (duty > most) {
                most = duty;
                worst = c;
            }
        }
        if (worst >= 0) {
            TreeSet<Integer> cells = stop.isEmpty() ? check : stop;
            out.add(new Caution(
                    "injector-duty-table",
                    stop.isEmpty() ? Caution.Level.CHECK : Caution.Level.STOP,
                    "The table asks more than the injectors have",
                    String.format(
                            Locale.ROOT,
                            "%s of the pulse table %s for a duty of %.0f %% or more; most: %.0f %% at %s",
                            Say.cells(cells.size()),
                            cells.size() == 1 ? "asks" : "ask",
                            d.limits.of(stop.isEmpty() ? Limit.DUTY_CHECK : Limit.DUTY_STOP),
                            most,
                            Say.cell(d.fuel, worst)),
                    "Fit larger injectors or see to the fuel pressure: more percent in the table can't deliver more fuel",
                    cells,
                    List.of()));
        }
    }
}
