package fuelwright.safety;

import fuelwright.ride.Role;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.TreeSet;

/**
 * A trim that stands still at high load, far from nothing. Logged trims are taken as applied wherever they are logged; many units run open loop at full
 * throttle and don't apply there what they go on showing (common practice, no source).
 */
final class TrimsAtHighLoad implements Rule {

    private static final int LEAST_ROWS = 40;
    /** Of a long ride so many rows, spread evenly, are looked at. */
    private static final int MOST_ROWS = 300_000;

    private static final double FAR_PERCENT = 3;
    private static final double STILL_PERCENT = 0.5;
    private static final double OUTERMOST = 0.05;

    @Override
    public List<Caution> judge(Dossier d) {
        List<Caution> out = new ArrayList<>();
        for (int r = 0; r < d.rides(); r++) {
            for (Role trim : List.of(Role.LONG_TRIM, Role.SHORT_TRIM)) {
                ride(d, r, trim, out);
            }
        }
        return out;
    }

    private static void ride(Dossier d, int r, Role trim, List<Caution> out) {
        RideRows rows = d.rows(r);
        if (rows.ride.column(trim).isEmpty()) {
            return;
        }
        double[] values = rows.values(trim);
        int stride = 1 + rows.size / MOST_ROWS;
        double[] high = java.util.stream.IntStream.range(0, rows.size)
                .filter(i -> i % stride == 0
                        && rows.isEvidence(i)
                        && Double.isFinite(values[i])
                        && d.isHighLoad(r, rows.speedRpm[i], rows.throttlePercent[i], rows.pressureKpa[i]))
                .mapToDouble(i -> values[i])
                .sorted()
                .toArray();
        if (high.length < LEAST_ROWS) {
            return;
        }
        double spread = high[(int) ((1 - OUTERMOST) * (high.length - 1))] - high[(int) (OUTERMOST * high.length)];
        double middle = high[high.length / 2];
        if (spread > STILL_PERCENT || Math.abs(middle) < FAR_PERCENT) {
            return;
        }
        boolean leaner = middle < 0;
        out.add(new Caution(
                        "trim-at-high-load",
                        leaner ? Caution.Level.CHECK : Caution.Level.NOTE,
                        "Is the trim applied at high load?",
                        String.format(
                                Locale.ROOT,
                                "In %s the %s stands at %s at high load. It is taken as applied there; a unit that runs open loop at"
                                        + " full throttle and only shows it would make the correction %.0f %% too %s",
                                rows.ride.name(),
                                trim.words(),
                                Say.signed(middle),
                                Math.abs(middle),
                                leaner ? "lean" : "rich"),
                        "See in the unit's papers whether it applies trims at full throttle, or reset the learnt trims and switch the closed loop off for the rides",
                        new TreeSet<>(),
                        List.of())
                .about(rows.ride.name() + ", " + trim.words()));
    }
}
