package fuelwright.simulated;

import java.util.ArrayList;
import java.util.List;

/** Trials to measure accuracy on: every machine on an ordinary ride, and the same kind of machines on rides that teach less. */
public final class StudyRides {

    private StudyRides() {}

    public static List<Trial> all() {
        List<Trial> trials = new ArrayList<>();
        long seed = 1;
        for (Machine machine : SimulatedMachines.all()) {
            RideProfile road = RideProfile.road(18);
            trials.add(Trial.withOldTable(machine.name(), machine, seed, seed % 3 == 0 ? road.cold(20) : road));
            seed++;
        }
        Machine resonant = SimulatedMachines.resonant();
        trials.add(Trial.withOldTable(resonant.name(), resonant, 40, RideProfile.road(18)));
        Machine twin = SimulatedMachines.vTwin720();
        trials.add(Trial.withOldTable("demo machine, 14 minutes", twin, 41, RideProfile.road(14)));
        trials.add(Trial.withOldTable(
                "demo machine, two rides", twin, 42, RideProfile.road(14).cold(15), RideProfile.road(14)));
        trials.add(Trial.withOldTable(
                "demo machine, never above 30 %", twin, 43, RideProfile.road(16).sparse(30, 0.7)));
        trials.add(Trial.withOldTable(
                "demo machine, road and dyno",
                twin,
                44,
                RideProfile.road(12),
                RideProfile.dyno(100.0, 100.0, 70.0, 50.0, 35.0, 25.0, 18.0)));
        trials.add(Trial.withOldTable(
                "demo machine, misfires and a frozen sensor",
                twin,
                45,
                RideProfile.road(18).with(RideFlaws.NONE.withMisfires(1.5).withFrozen(400, 430))));
        return List.copyOf(trials);
    }
}
