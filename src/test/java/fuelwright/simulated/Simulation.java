package fuelwright.simulated;

import fuelwright.simulated.RideFlaws.Starvation;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/** Rides a machine with a table in its unit. The same arguments give the same bytes, everywhere. */
public final class Simulation {
    private static final double STEP_S = 0.005;

    private final MachineTables tables;
    private final Machine machine;
    private final RideProfile profile;
    private final Random misfire;
    private final Random noise;
    private final Random unrest;
    private final Drive drive;
    private final Fuelling fuelling;
    private final Rider rider;
    private final RideWriter writer;
    private final List<SensorChain> sensors = new ArrayList<>();
    private final List<Moment> moments = new ArrayList<>();

    private double misfireLeftS;
    private double missing;

    private Simulation(MachineTables tables, Grid table, RideProfile profile, long seed) {
        this.tables = tables;
        this.machine = tables.machine();
        this.profile = profile;
        // One stream a purpose: a flaw more or less must not change the road.
        misfire = new Random(seed * 31 + 1);
        noise = new Random(seed * 31 + 2);
        unrest = new Random(seed * 31 + 3);
        drive = new Drive(machine, tables.airAfter(), profile.startCoolantC());
        fuelling = new Fuelling(tables, table);
        Starvation starvation = profile.flaws().starvation();
        missing = -starvation.reserveS() * starvation.sharePerS();
        rider = profile.kind() == RideProfile.Kind.DYNO
                ? new DynoRider(profile)
                : new RoadRider(profile, new Random(seed * 31 + 4));
        writer = new RideWriter(machine, profile.brake());
        for (int i = 0; i < writer.sensors(); i++) {
            sensors.add(new SensorChain(machine, profile.flaws(), new Random(seed * 31 + 10 + i), STEP_S));
        }
    }

    /** @param table in the unit, of the kind and with the axes of the machine's own tables */
    public static SimulatedRide ride(MachineTables tables, Grid table, RideProfile profile, long seed) {
        return new Simulation(tables, table, profile, seed).run();
    }

    private SimulatedRide run() {
        int every = (int) Math.rint(1 / machine.recorder().rateHz() / STEP_S);
        long steps = (long) (profile.durationS() / STEP_S);
        WallFilm film = null;
        for (long i = 0; i < steps; i++) {
            double timeS = i * STEP_S;
            rider.ride(drive, timeS, STEP_S);
            drive.step(STEP_S, unrest.nextGaussian());
            double cycleShareG = machine.fullChargeG() * drive.speedRpm / 120;
            double fuel = fuelling.step(drive, timeS, sensors.get(0).unloggedLambda(), STEP_S);
            missing = profile.flaws().starvation().next(missing, drive.flowGPerS(), STEP_S);
            double injected = fuel * (1 - Math.max(0, missing)) * cycleShareG;
            film = film == null ? fuelling.film(injected) : film;
            double equivalence = film.step(injected, STEP_S) / drive.flowGPerS();
            boolean misfiring = misfiring();
            for (int s = 0; s < sensors.size(); s++) {
                double seen = equivalence * share(s) * (misfiring ? 0.75 : 1);
                sensors.get(s).step(seen, drive.speedRpm, drive.flowGPerS());
            }
            if (i % every == 0) {
                log(timeS, equivalence, misfiring, fuel);
            }
        }
        return new SimulatedRide(tables, writer.csv(), moments);
    }

    /** A sensor for all cylinders sees their mean; one for each sees its own. */
    private double share(int sensor) {
        List<Double> shares = machine.cylinderShare();
        if (shares.isEmpty()) {
            return 1;
        }
        return sensors.size() > 1
                ? shares.get(sensor)
                : shares.stream().mapToDouble(Double::doubleValue).average().orElse(1);
    }

    private boolean misfiring() {
        misfireLeftS -= STEP_S;
        if (misfire.nextDouble() < profile.flaws().misfiresPerMinute() / 60 * STEP_S && !drive.fuelCut) {
            misfireLeftS = 0.2 + 0.3 * misfire.nextDouble();
        }
        return misfireLeftS > 0;
    }

    private void log(double timeS, double equivalence, boolean misfiring, double fuel) {
        double[] shown = sensors.stream().mapToDouble(s -> s.read(timeS)).toArray();
        double noiseRpm = 3 * noise.nextGaussian();
        double noisePct = 0.05 * noise.nextGaussian();
        double noisePa = 250 * noise.nextGaussian();
        if (RideFlaws.within(profile.flaws().gaps(), timeS)) {
            return;
        }
        writer.row(timeS, drive, noiseRpm, noisePct, noisePa, shown, fuelling, tables.pulseMs(fuel));
        boolean warm = fuelling.enrichment() < 1.002;
        boolean on = !drive.fuelCut;
        moments.add(new Moment(
                timeS,
                drive.speedRpm,
                drive.throttlePct,
                drive.pressurePa,
                fuelling.load(drive),
                steadyCharge(),
                1 / Math.max(equivalence, 1e-9),
                fuelling.target(drive),
                on,
                warm,
                on && warm && !misfiring && missing <= 0 && !fuelling.trimmed()));
    }

    private double steadyCharge() {
        boolean byPressure = machine.unit().index() == ControlUnit.Index.PRESSURE;
        double pressurePa = byPressure ? drive.pressurePa : drive.air.pressurePa(drive.speedRpm, drive.throttlePct);
        return drive.air.charge(drive.speedRpm, pressurePa);
    }
}
