package fuelwright.safety;

import fuelwright.estimate.BurntTrace;
import fuelwright.table.Table;
import fuelwright.unit.Sentence;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.TreeSet;

/**
 * Lean moments at high load that would still be beyond their limit with the proposed table: what the sensor showed there, divided by the fuel
 * that the proposal adds. A hole narrower than the sensor can follow, or readings that come late, leave such moments although each cell looks right.
 */
final class StillLean implements Rule {

    /** Readings on either side of the worst one that are taken with it, so that noise isn't the worst. */
    private static final int BESIDE = 2;

    /** @param leftPercent fuel missing against the target, % */
    private record Left(LeanEvent event, double lambda, double limit, double leftPercent) {}

    @Override
    public boolean looksAtProposal() {
        return true;
    }

    @Override
    public List<Caution> judge(Dossier d) {
        if (d.proposal().isEmpty()) {
            return List.of();
        }
        List<LeanEvent> table = d.moments().of(LeanEvent.Kind.TABLE);
        Table proposed = d.proposal().get().corrected();
        List<Left> left = new ArrayList<>();
        for (LeanEvent event : table) {
            Table then = d.file.rides().get(event.ride()).madeWith();
            double lambda = around(d, event) / LeanMoments.factor(d, then, proposed, event);
            double limit = d.limitOf(event, event.target());
            double percent = 100 * (lambda / event.target() - 1);
            if (lambda > limit && percent > d.limits.of(Limit.LEFT_LEAN)) {
                left.add(new Left(event, lambda, limit, percent));
            }
        }
        if (left.isEmpty()) {
            return List.of();
        }
        Left worst =
                left.stream().max(Comparator.comparingDouble(Left::leftPercent)).orElseThrow();
        TreeSet<Integer> cells = new TreeSet<>();
        left.forEach(l -> cells.add(l.event.cell()));
        LeanEvent e = worst.event;
        return List.of(new Caution(
                "lean-after-proposal",
                left.stream().anyMatch(l -> d.isWellInside(l.event.cell())) ? Caution.Level.STOP : Caution.Level.CHECK,
                "Still lean with the proposal",
                Sentence.of(
                        "%d of %d %s at high load would be beyond the limit with the proposed table too. Worst: %s, limit %s, %s short"
                                + " of fuel at %s, %s, %s at %s",
                        left.size(),
                        table.size(),
                        table.size() == 1 ? "lean moment" : "lean moments",
                        Say.lambdaBeyond(worst.lambda, worst.limit),
                        Say.lambda(worst.limit).alone(),
                        Say.percent(worst.leftPercent),
                        Say.rpm(e.speedRpm()),
                        Say.load(e.load(), d.fuel.load().kind()),
                        d.ride(e.ride()).name(),
                        Say.minutes(e.startS())),
                "Look at the moment: a quick opening wants accel enrichment; else set those cells richer by that much, or don't load the engine there until a slower pull has shown how lean they are",
                cells,
                left.stream()
                        .sorted(Comparator.comparingDouble(Left::leftPercent).reversed())
                        .map(l -> new Caution.Moment(
                                l.event.ride(),
                                d.ride(l.event.ride()).name(),
                                l.event.startS(),
                                l.event.lengthS(),
                                l.lambda,
                                l.event.speedRpm(),
                                l.event.load()))
                        .toList()));
    }

    /** What the sensor showed around a moment's worst reading, lambda. */
    private static double around(Dossier d, LeanEvent event) {
        BurntTrace trace = d.traces().stream()
                .filter(t -> t.ride() == event.ride() && t.sensor() == event.sensor())
                .findFirst()
                .orElseThrow()
                .burnt();
        int at = SamePlace.reading(trace, event.row());
        double sum = 0;
        int n = 0;
        for (int k = Math.max(0, at - BESIDE); k <= Math.min(trace.size() - 1, at + BESIDE); k++) {
            sum += trace.lambda(k);
            n++;
        }
        return Math.min(sum / n, event.leanest());
    }
}
