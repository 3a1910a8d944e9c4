package fuelwright.safety;

import java.util.ArrayList;
import java.util.List;

/** The lean stretches of one trace, and what each looks like with the whole trace seen. */
final class LeanEvents {

    private static final int LEAST_READINGS = 3;

    /**
     * @param eases whether the mixture was already on its way back
     * @param recovered whether the mixture came back while load stayed high
     */
    private record Seen(LeanEvent event, boolean eases, boolean recovered) {}

    private final LeanScan.Setting setting;
    private final double leanFor;
    private final List<Seen> all = new ArrayList<>();
    private final int[] inCell;

    LeanEvents(LeanScan.Setting setting, double leanFor) {
        this.setting = setting;
        this.leanFor = leanFor;
        inCell = new int[setting.cells().cells()];
    }

    void add(LeanEvent event, boolean eases, boolean recovered) {
        all.add(new Seen(event, eases, recovered));
        inCell[event.cell()]++;
    }

    /** Does the cell's fuel fade, is it lean each time, or was it once? */
    List<LeanEvent> named(CellHistory history) {
        return all.stream()
                .map(seen -> isTipIn(seen, history) ? seen.event : seen.event.with(kind(seen, history)))
                .toList();
    }

    private static boolean isTipIn(Seen seen, CellHistory history) {
        int cell = seen.event.cell();
        boolean fineOtherwise = history.fineReadings(cell) > history.leanReadings(cell);
        return seen.event.kind() == LeanEvent.Kind.TIP_IN && (fineOtherwise || seen.eases);
    }

    private LeanEvent.Kind kind(Seen seen, CellHistory history) {
        LeanEvent event = seen.event;
        int cell = event.cell();
        if (history.fineReadings(cell) < LEAST_READINGS) {
            return LeanEvent.Kind.TABLE;
        }
        boolean again = inCell[cell] > 1;
        boolean highFlow = event.speedRpm() >= setting.highFlowRpm()
                && setting.highLoad().isWellInside(event.speedRpm(), event.throttlePercent(), event.pressureKpa());
        if (highFlow && (!seen.recovered && history.fadesInStretch(cell) || again && history.fadesInRide(cell))) {
            return LeanEvent.Kind.SUPPLY;
        }
        return !again && history.leanReadings(cell) * 3 <= history.fineReadings(cell) && event.lengthS() < 2 * leanFor
                ? LeanEvent.Kind.ONCE
                : LeanEvent.Kind.TABLE;
    }
}
