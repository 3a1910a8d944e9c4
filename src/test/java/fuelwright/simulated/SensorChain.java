package fuelwright.simulated;

import java.util.Random;

/** What the wideband shows of what burns: leak, transport delay, lag, noise, limits, and its freezing. */
final class SensorChain {
    private static final double LONGEST_DELAY_S = 3;

    private final Machine machine;
    private final RideFlaws flaws;
    private final Random random;
    private final double dtS;
    private final double[] burnt;
    private long steps;
    private double state = 1;
    private double scatter;
    private double shown = 1;
    private double frozenAt = Double.NaN;

    SensorChain(Machine machine, RideFlaws flaws, Random random, double dtS) {
        this.machine = machine;
        this.flaws = flaws;
        this.random = random;
        this.dtS = dtS;
        this.burnt = new double[(int) (LONGEST_DELAY_S / dtS) + 2];
        java.util.Arrays.fill(burnt, 1);
    }

    /** @param equivalence 1/lambda of the gas that leaves the cylinder now */
    void step(double equivalence, double speedRpm, double flowGPerS) {
        double cycleS = 120 / speedRpm;
        double keep = StrictMath.exp(-dtS / cycleS);
        Sensor sensor = machine.sensor();
        scatter = keep * scatter + StrictMath.sqrt(1 - keep * keep) * sensor.scatter() * random.nextGaussian();
        burnt[(int) (steps % burnt.length)] = machine.exhaust().diluted(equivalence * (1 + scatter), flowGPerS);
        double delay = Math.min(LONGEST_DELAY_S, machine.exhaust().delayS(speedRpm, flowGPerS));
        double arrived = back(delay / dtS);
        state = sensor.step(state, 1 / Math.max(arrived, 1e-6), dtS);
        steps++;
    }

    private double back(double delaySteps) {
        long whole = (long) delaySteps;
        double part = delaySteps - whole;
        return at(steps - whole) * (1 - part) + at(steps - whole - 1) * part;
    }

    private double at(long step) {
        return burnt[(int) (Math.max(0, step) % burnt.length)];
    }

    /** Lambda on the display at a row of the log. */
    double read(double timeS) {
        Sensor sensor = machine.sensor();
        double noisy = state * (1 + sensor.noise() * random.nextGaussian());
        double fresh = timeS < sensor.heatingS() ? sensor.highestLambda() : sensor.shown(noisy);
        if (RideFlaws.within(flaws.frozen(), timeS)) {
            frozenAt = Double.isNaN(frozenAt) ? shown : frozenAt;
        } else {
            frozenAt = Double.NaN;
        }
        shown = Double.isNaN(frozenAt) ? fresh : frozenAt;
        return shown;
    }

    /** What a control unit sees between the rows of the log. */
    double unloggedLambda() {
        return machine.sensor().shown(state);
    }
}
