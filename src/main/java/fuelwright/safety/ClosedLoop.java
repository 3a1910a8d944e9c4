package fuelwright.safety;

import fuelwright.ride.Role;
import fuelwright.screen.ClosedLoopSign;
import fuelwright.screen.LoggedTrims;
import fuelwright.screen.Screen;
import fuelwright.table.Axis;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.TreeSet;

/**
 * Asks whether a closed loop works with its trims not logged ({@link ClosedLoopSign}). Readings that it has made worthless are screened out;
 * the question stays, since the sign is a contrast and no proof.
 */
final class ClosedLoop implements Rule {

    @Override
    public List<Caution> judge(Dossier d) {
        List<Caution> out = new ArrayList<>();
        for (int r = 0; r < d.rides(); r++) {
            RideRows rows = d.rows(r);
            LoggedTrims trims = LoggedTrims.of(rows.ride);
            if (trims != LoggedTrims.TOLD && !rows.ride.mixtures().isEmpty()) {
                int from = out.size();
                ride(d, rows, trims, out);
                Say.about(out, from, rows.ride.name());
            }
        }
        return out;
    }

    private static void ride(Dossier d, RideRows rows, LoggedTrims trims, List<Caution> out) {
        double[] asked = new double[rows.size];
        boolean byThrottle = d.target.load().kind() == Axis.Kind.THROTTLE;
        Locator targets = new Locator(d.target);
        double[] commanded = rows.values(Role.COMMANDED_LAMBDA);
        for (int i = 0; i < rows.size; i++) {
            asked[i] = ClosedLoopSign.asked(
                    targets.value(rows.speedRpm[i], byThrottle ? rows.throttlePercent[i] : rows.pressureKpa[i]),
                    commanded[i]);
        }
        ClosedLoopSign sign = ClosedLoopSign.of(
                rows.timeS,
                rows.speedRpm,
                rows.load,
                rows.mixture(rows.ride.firstEvidence()),
                asked,
                i -> rows.isEvidence(i) || rows.isScreened(i, Screen.CLOSED_LOOP_UNLOGGED));
        if (!trims.isOdd(sign)) {
            return;
        }
        out.add(
                trims == LoggedTrims.SHORT_ABOUT_NOTHING
                        ? new Caution(
                                "long-trim-unlogged",
                                Caution.Level.CHECK,
                                "Is there a learnt trim?",
                                "In " + rows.ride.name()
                                        + " a closed loop works, its short trim is about nothing and no long trim is in the log. Either the table is right there, or a learnt long trim"
                                        + " holds what it lacks: such readings don't count",
                                "Log the long trim as well, or have the learnt trims reset and ride again; if the unit learns none, switch the screen '"
                                        + Screen.CLOSED_LOOP_UNLOGGED.words() + "' off",
                                new TreeSet<>(),
                                List.of())
                        : new Caution(
                                "closed-loop-unlogged",
                                Caution.Level.CHECK,
                                "Is a closed loop at work?",
                                what(rows, sign),
                                "Switch the closed loop off or log its trims on the next ride; if there is none, nothing is wrong here",
                                new TreeSet<>(),
                                List.of()));
    }

    private static String what(RideRows rows, ClosedLoopSign sign) {
        String hugs = String.format(
                Locale.ROOT,
                "In %s the mixture keeps within %.1f %% of its target in %d steady stretches at light load",
                rows.ride.name(),
                100 * sign.lightLog(),
                sign.stretches());
        return sign.isControlled()
                ? hugs
                        + String.format(
                                Locale.ROOT,
                                " of 4 s, though half a second of them is %.1f %% off: something takes the departures away, as a closed loop without its trims in the log does. What"
                                        + " the table lacks there isn't known, and such readings don't count",
                                100 * sign.halfLog())
                : hugs
                        + String.format(
                                Locale.ROOT,
                                ", though where the target is rich it is %.0f %% off. A closed loop without its trims in the log would look like that, and hide the table's error",
                                100 * sign.openLog());
    }
}
