package fuelwright.safety;

import fuelwright.estimate.CellProposal;
import fuelwright.ride.Ride;
import fuelwright.unit.Sentence;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;

/** One table that feeds several sensors is corrected by their mean: what that leaves the leaner cylinder at high load. */
final class LeanerCylinder implements Rule {

    private static final double APART_LOG = Math.log(1.05);

    @Override
    public boolean looksAtProposal() {
        return true;
    }

    @Override
    public List<Caution> judge(Dossier d) {
        List<Caution> out = new ArrayList<>();
        for (int r = 0; r < d.rides() && d.proposal().isPresent(); r++) {
            int from = out.size();
            if (d.spread(r).isPresent() && d.spread(r).get().apartLog() > APART_LOG) {
                ride(d, d.ride(r), d.spread(r).get(), out);
            }
            Say.about(out, from, d.ride(r).name());
        }
        return out;
    }

    private static void ride(Dossier d, Ride ride, SensorSpread spread, List<Caution> out) {
        TreeSet<Integer> cells = new TreeSet<>();
        double most = 0;
        int worst = -1;
        for (CellProposal cell : d.proposal().orElseThrow().cells()) {
            double left = Math.log(cell.neededFactor() / cell.factor()) + spread.log(spread.leanest(), cell.cell());
            if (d.isHigh(cell.cell()) && 100 * Math.expm1(left) > d.limits.of(Limit.LEFT_LEAN)) {
                cells.add(cell.cell());
                if (left > most) {
                    most = left;
                    worst = cell.cell();
                }
            }
        }
        if (worst < 0) {
            return;
        }
        String leaner = ride.mixtures().get(spread.leanest()).heading();
        out.add(new Caution(
                "leaner-cylinder-left",
                Caution.Level.STOP,
                "The leaner cylinder stays lean",
                Sentence.of(
                        "One table feeds the cylinders of %d sensors in %s, and at high load %s reads %.0f %% leaner than %s. The"
                                + " table goes by their mean: with the correction that cylinder is still up to %.0f %% lean, %s for a"
                                + " target of %s at %s",
                        spread.sensors(),
                        ride.name(),
                        leaner,
                        100 * Math.expm1(spread.apartLog()),
                        ride.mixtures().get(spread.richest()).heading(),
                        100 * Math.expm1(most),
                        Say.lambda(d.targetAt(worst) * Math.exp(most)),
                        Say.lambda(d.targetAt(worst)).alone(),
                        Say.cell(d.fuel, worst)),
                "Swap the sensors to see whether it is the cylinder; if it is, correct by the leaner one alone (--role \"COLUMN=other\" for the rest), or give each cylinder a table of its own (--cylinder)",
                cells,
                List.of()));
    }
}
