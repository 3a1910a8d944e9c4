package fuelwright.safety;

import fuelwright.screen.ClosedLoopSign;
import fuelwright.screen.Screen;
import fuelwright.table.Axis;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
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
            if (!rows.ride.hasTrims() && !rows.ride.mixtures().isEmpty()) {
                int from = out.size();
                ride(d, rows, out);
                Say.about(out, from, rows.ride.name());
            }
        }
        return out;
    }

    private static void ride(Dossier d, RideRows rows, List<Caution> out) {
        double[] target = new double[rows.size];
        boolean byThrottle = d.target.load().kind() == Axis.Kind.THROTTLE;
        Locator targets = new Locator(d.target);
        for (int i = 0; i < rows.size; i++) {
            target[i] = targets.value(rows.speedRpm[i], byThrottle ? rows.throttlePercent[i] : rows.pressureKpa[i]);
        }
        Optional<ClosedLoopSign> sign = ClosedLoopSign.of(
                rows.timeS,
                rows.speedRpm,
                rows.mixture(rows.ride.firstEvidence()),
                target,
                i -> rows.isEvidence(i) || rows.isScreened(i, Screen.CLOSED_LOOP_UNLOGGED));
        sign.filter(ClosedLoopSign::isLikely).ifPresent(s -> {
            out.add(new Caution(
                    "closed-loop-unlogged",
                    Caution.Level.CHECK,
                    "Is a closed loop at work?",
                    String.format(
                            Locale.ROOT,
                            "In %s the mixture keeps within %.1f %% of its target in %d steady stretches at light load, though"
                                    + " where the target is rich it is %.0f %% off. A closed loop without its trims in the log"
                                    + " would look like that, and hide the table's error",
                            rows.ride.name(),
                            100 * s.lightLog(),
                            s.stretches(),
                            100 * s.openLog()),
                    "Switch the closed loop off or log its trims on the next ride; if there is none, nothing is wrong here",
                    new TreeSet<>(),
                    List.of()));
        });
    }
}
