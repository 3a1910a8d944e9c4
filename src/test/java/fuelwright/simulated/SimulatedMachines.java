package fuelwright.simulated;

import fuelwright.simulated.ControlUnit.Fuel;
import fuelwright.simulated.ControlUnit.Index;
import fuelwright.simulated.ControlUnit.Loop;
import fuelwright.simulated.Recorder.Mixture;
import java.util.ArrayList;
import java.util.List;

/** Invented machines, as different as workshops see them. None has a real model behind it. */
public final class SimulatedMachines {
    private static final Sensor SLOW = new Sensor(0.16, false, 0.65, 1.4, 0.004, 0.012, 0);
    private static final Sensor NOISY = new Sensor(0.09, false, 0.65, 1.4, 0.012, 0.025, 0);
    private static final Recorder LAMBDA_20 = new Recorder(20, Mixture.LAMBDA, 0.001, true);

    private SimulatedMachines() {}

    /** The demo: 720 cc, two cylinders in V, 38 mm bodies replaced by 44 mm, a lean hole in the table at full throttle. */
    public static Machine vTwin720() {
        return twin("720 cc V-twin")
                .speedsRpm(List.of(
                        900.0, 1200.0, 1600.0, 2000.0, 2500.0, 3000.0, 3500.0, 4000.0, 4500.0, 5000.0, 5600.0, 6200.0,
                        6800.0, 7500.0, 8200.0))
                .throttlesPct(List.of(0.0, 2.0, 4.0, 6.0, 9.0, 13.0, 18.0, 25.0, 35.0, 50.0, 70.0, 85.0, 100.0))
                .flaw(new TableFlaw(0.012, 0.125, 5500, 7000, 80, 100))
                .sensor(new Sensor(0.08, false, 0.65, 1.4, 0.004, 0.012, 12))
                .build();
    }

    private static MachineBuilder twin(String name) {
        return new MachineBuilder(name, new Engine(720, 2, 1150, 8500, 9), new ThrottleBodies(2, 38, 8, 5, 85), 44);
    }

    private static MachineBuilder single(String name) {
        return new MachineBuilder(name, new Engine(390, 1, 1500, 9500, 7), new ThrottleBodies(1, 40, 8, 6, 84), 46);
    }

    private static MachineBuilder four(String name) {
        return new MachineBuilder(name, new Engine(600, 4, 1300, 13000, 13), new ThrottleBodies(4, 34, 7, 7, 86), 38);
    }

    private static MachineBuilder bigTwin(String name) {
        return new MachineBuilder(name, new Engine(1250, 2, 1000, 6500, 14), new ThrottleBodies(2, 45, 10, 5, 85), 50);
    }

    private static MachineBuilder triple(String name) {
        return new MachineBuilder(name, new Engine(820, 3, 1200, 10500, 12), new ThrottleBodies(3, 40, 8, 5, 83), 45);
    }

    /** Sixteen machines: every cylinder count, both ways of indexing, all table quantities, all kinds of trouble that a machine brings. */
    public static List<Machine> all() {
        List<Machine> machines = new ArrayList<>();
        machines.add(twin("twin, 38 to 44 mm").build());
        machines.add(single("single, 40 to 46 mm, slow sensor").sensor(SLOW).build());
        machines.add(four("four, 34 to 38 mm").build());
        machines.add(bigTwin("big twin, 45 to 50 mm, sensor far down the pipe")
                .exhaust(new Exhaust(0.03, 1.0, 0.9, 0))
                .build());
        machines.add(triple("triple, 40 to 45 mm, noisy sensor").sensor(NOISY).build());
        machines.add(twin("twin, exhaust leak")
                .exhaust(new Exhaust(0.02, 0.9, 0.25, 0.05))
                .build());
        machines.add(four("four, pulse table, 25 Hz")
                .fuel(Fuel.PULSE)
                .recorder(new Recorder(25, Mixture.LAMBDA, 0.001, false))
                .build());
        machines.add(bigTwin("big twin, trim table, AFR display")
                .fuel(Fuel.TRIM)
                .recorder(LAMBDA_20.with(Mixture.AFR))
                .build());
        machines.add(triple("triple, closed loop with trims in the log")
                .loop(Loop.CLOSED_LOGGED)
                .build());
        machines.add(single("single, no pressure sensor, coarse display, 10 Hz")
                .recorder(new Recorder(10, Mixture.LAMBDA, 0.01, false))
                .build());
        machines.add(twin("twin, cams and head changed, pressure-indexed")
                .index(Index.PRESSURE)
                .breathingAfter(cammed(8500))
                .build());
        machines.add(four("four, cams changed as well, high ground")
                .ambient(new Ambient(90_500, 285))
                .breathingAfter(cammed(13000))
                .build());
        machines.add(twin("twin, a sensor for each cylinder, one lean")
                .recorder(LAMBDA_20.with(Mixture.LAMBDA_EACH_CYLINDER))
                .cylinderShare(1.03, 0.97)
                .build());
        machines.add(triple("triple, lag in lambda, long fixed delay")
                .sensor(new Sensor(0.12, true, 0.70, 1.40, 0.006, 0.015, 0))
                .exhaust(new Exhaust(0.09, 0.75, 0.15, 0))
                .build());
        machines.add(bigTwin("big twin, lean hole")
                .flaw(new TableFlaw(0.015, 0.10, 4200, 5600, 70, 100))
                .build());
        machines.add(
                single("single, poor old table").flaw(TableFlaw.wobble(0.04)).build());
        return List.copyOf(machines);
    }

    /** Narrow resonances, with the old bodies as with the new, and a table that has them right: what stands out in it is no fault. */
    public static Machine resonant() {
        List<Breathing.Hump> humps = new ArrayList<>();
        for (int i = 0; i < 9; i++) {
            humps.add(new Breathing.Hump(2100 * StrictMath.pow(1.19, i), 0.05, i % 2 == 0 ? 0.05 : -0.05));
        }
        return single("single, uneven where the engine is")
                .breathing(new Breathing(0.93, 6800, 0.5, 10.8, humps))
                .flaw(TableFlaw.wobble(0))
                .build();
    }

    /** Filling with other cams: less below, more above. */
    private static Breathing cammed(double redlineRpm) {
        return new Breathing(
                0.945,
                0.78 * redlineRpm,
                0.5,
                11.2,
                List.of(
                        new Breathing.Hump(0.40 * redlineRpm, 0.22, 0.01),
                        new Breathing.Hump(0.60 * redlineRpm, 0.16, 0.04),
                        new Breathing.Hump(0.85 * redlineRpm, 0.15, 0.06)));
    }
}
