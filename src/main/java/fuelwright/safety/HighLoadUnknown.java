package fuelwright.safety;

import fuelwright.airflow.HighLoad;
import fuelwright.table.Axis;
import fuelwright.unit.Sentence;
import java.util.Arrays;
import java.util.List;
import java.util.TreeSet;

/** Says that nobody knows where high load begins: neither the engine nor its manifold pressure is known. */
final class HighLoadUnknown implements Rule {

    @Override
    public List<Caution> judge(Dossier d) {
        if (d.fuel.load().kind() != Axis.Kind.THROTTLE || d.file.highLoad().basis() != HighLoad.Basis.THROTTLE) {
            return List.of();
        }
        boolean byTarget = Arrays.stream(d.target.speed().toArray())
                .anyMatch(rpm -> HighLoadOfRides.turnsRichPercent(d.target, rpm) < HighLoad.THROTTLE_PERCENT);
        return List.of(new Caution(
                "high-load-unknown",
                Caution.Level.CHECK,
                "High load isn't known",
                Sentence.of(
                        "Neither the engine is described nor does a ride show where its manifold pressure gets high: high load is taken as"
                                + " %s throttle and more%s. With big bodies a third of the throttle is full load at low speed: a lean mixture there would be called light load",
                        Say.percent(HighLoad.THROTTLE_PERCENT),
                        byTarget
                                ? Sentence.of(
                                        ", and as where the target turns %s or richer",
                                        Say.lambda(HighLoadOfRides.RICH_LAMBDA))
                                : ""),
                "Give displacement, bodies and bore (--displacement, --bodies, --bore-after, or the stage Machine), or log manifold pressure",
                new TreeSet<>(),
                List.of()));
    }
}
