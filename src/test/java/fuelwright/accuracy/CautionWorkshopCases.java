package fuelwright.accuracy;

import static fuelwright.safety.Caution.Level.STOP;

import fuelwright.screen.Screen;
import fuelwright.simulated.ControlUnit.Fuel;
import fuelwright.simulated.Engine;
import fuelwright.simulated.MachineBuilder;
import fuelwright.simulated.RideProfile;
import fuelwright.simulated.TableFlaw;
import fuelwright.simulated.ThrottleBodies;
import java.util.ArrayList;
import java.util.List;

/** Cases of {@link CautionStudy} as a workshop's job brings them: rides and pulls together, from cold, and a table with a hole. */
final class CautionWorkshopCases {

    private static final String FADING = "fuel-supply-fading";
    private static final RideProfile THREE_PULLS = RideProfile.dyno(100.0, 80.0, 100.0);
    private static final TableFlaw HOLE = new TableFlaw(0.012, 0.12, 5500, 7000, 80, 100);

    private CautionWorkshopCases() {}

    private static MachineBuilder twin() {
        return new MachineBuilder(
                        "720 twin", new Engine(720, 2, 1150, 8500, 9), new ThrottleBodies(2, 40, 8, 5, 85), 44)
                .speedsRpm(List.of(
                        900.0, 1200.0, 1600.0, 2000.0, 2500.0, 3000.0, 3500.0, 4000.0, 4500.0, 5000.0, 5500.0, 6000.0,
                        6500.0, 7000.0, 7500.0, 8200.0))
                .throttlesPct(List.of(0.0, 2.0, 4.0, 6.0, 9.0, 13.0, 18.0, 25.0, 35.0, 50.0, 65.0, 80.0, 100.0))
                .fuel(Fuel.PULSE);
    }

    private static CautionCase of(String name, MachineBuilder machine, long seed, RideProfile... profiles) {
        return new CautionCase(name, machine.build(), seed, profiles);
    }

    /** The table of the smaller bodies, with a hole at full throttle. */
    private static CautionCase hole(String name, long seed, RideProfile... profiles) {
        return of(name, twin().flaw(HOLE), seed, profiles)
                .old()
                .wants("lean-under-load", STOP)
                .never(FADING, STOP);
    }

    static List<CautionCase> faulty() {
        List<CautionCase> all = new ArrayList<>();
        RideProfile cold = RideProfile.road(12).cold(16);
        for (long seed = 1401; seed < 1403; seed++) {
            all.add(hole(
                    "hole in a pulse table, cold, and pulls " + seed, seed, cold, RideProfile.road(10), THREE_PULLS));
            all.add(hole("hole in a pulse table, cold counts " + seed, seed, cold, RideProfile.road(10), THREE_PULLS)
                    .told(j -> j.withScreens(j.screens().with(Screen.TOO_COLD, false))));
        }
        return all;
    }
}
