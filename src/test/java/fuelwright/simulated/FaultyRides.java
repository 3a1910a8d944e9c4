package fuelwright.simulated;

import fuelwright.simulated.RideFlaws.Starvation;
import java.util.List;

/** Trials with one trouble each, for whoever has to notice it. The table is the old one unless the trouble is elsewhere. */
public final class FaultyRides {
    private static final Machine TWIN = SimulatedMachines.vTwin720().withFlaw(TableFlaw.wobble(0.012));
    private static final TableFlaw NEARLY_RIGHT = TableFlaw.wobble(0.008);

    private FaultyRides() {}

    /** The table is right, yet full throttle leans out more from second to second. */
    public static Trial failingSupply() {
        Starvation pump = new Starvation(0.55 * TWIN.greatestFlowGPerS(), 0.06);
        RideProfile profile = RideProfile.road(12).with(RideFlaws.NONE.withStarvation(pump));
        return Trial.withNearlyRightTable("failing supply", TWIN, NEARLY_RIGHT, 401, profile);
    }

    /** Lean at full throttle in the upper middle of the speed range. */
    public static Trial leanHole() {
        return Trial.withOldTable("lean hole", SimulatedMachines.vTwin720(), 402, RideProfile.road(12));
    }

    /** Reads lean at small flow; the table is right. */
    public static Trial exhaustLeak() {
        Machine leaking = TWIN.withExhaust(e -> e.withLeak(0.08));
        return Trial.withNearlyRightTable("exhaust leak", leaking, NEARLY_RIGHT, 403, RideProfile.road(12));
    }

    /** Closed loop at work and no trims in the log: light load looks right whatever the table says. */
    public static Trial hiddenClosedLoop() {
        Machine closed = TWIN.withUnit(u -> u.with(ControlUnit.Loop.CLOSED_UNLOGGED));
        return Trial.withOldTable("closed loop without trims in the log", closed, 404, RideProfile.road(15));
    }

    /** The display stands still for half a minute. */
    public static Trial frozenSensor() {
        RideProfile profile = RideProfile.road(12).with(RideFlaws.NONE.withFrozen(300, 330));
        return Trial.withOldTable("frozen sensor", TWIN, 405, profile);
    }

    /** Many bursts of misfire. */
    public static Trial misfires() {
        RideProfile profile = RideProfile.road(12).with(RideFlaws.NONE.withMisfires(5));
        return Trial.withNearlyRightTable("misfires", TWIN, NEARLY_RIGHT, 406, profile);
    }

    /** Nobody opened the throttle beyond a quarter. */
    public static Trial neverOpened() {
        return Trial.withOldTable(
                "never above 25 %", TWIN, 407, RideProfile.road(14).sparse(25, 0.6));
    }

    public static List<Trial> all() {
        return List.of(
                failingSupply(),
                leanHole(),
                exhaustLeak(),
                hiddenClosedLoop(),
                frozenSensor(),
                misfires(),
                neverOpened());
    }
}
