package fuelwright.simulated;

/** The log as CSV: headings with units, one row a sample, figures as coarse as a logger gives them. */
final class RideWriter {
    private final Recorder recorder;
    private final boolean trims;
    private final boolean torque;
    private final int sensors;
    private final StringBuilder text = new StringBuilder();

    /** @param torque whether torque is logged */
    RideWriter(Machine machine, boolean torque) {
        this.torque = torque;
        recorder = machine.recorder();
        trims = machine.unit().loop() == ControlUnit.Loop.CLOSED_LOGGED;
        sensors = recorder.mixture() == Recorder.Mixture.LAMBDA_EACH_CYLINDER
                ? machine.engine().cylinders()
                : 1;
        text.append("time [s],engine speed [rpm],throttle [%]");
        text.append(recorder.pressure() ? ",manifold pressure [kPa]" : "");
        for (int i = 1; i <= sensors; i++) {
            text.append(',').append(mixtureHeading(i));
        }
        text.append(trims ? ",short trim [%],long trim [%]" : "");
        text.append(",injector pulse [ms],coolant [°C],intake air [°C],road speed [km/h],gear [1]");
        text.append(torque ? ",torque [N·m]\n" : "\n");
    }

    private String mixtureHeading(int sensor) {
        switch (recorder.mixture()) {
            case AFR:
                return "AFR [1]";
            case LAMBDA_EACH_CYLINDER:
                return "lambda cylinder " + sensor + " [1]";
            default:
                return "lambda [1]";
        }
    }

    int sensors() {
        return sensors;
    }

    void row(
            double timeS,
            Drive drive,
            double noiseRpm,
            double noisePct,
            double noisePa,
            double[] lambda,
            Fuelling unit,
            double pulseMs) {
        figure(timeS, 2, false);
        figure(Math.rint(drive.speedRpm + noiseRpm), 0, true);
        figure(Math.min(100, Math.max(0, drive.throttlePct + noisePct)), 1, true);
        if (recorder.pressure()) {
            figure((drive.pressurePa + noisePa) / 1000, 1, true);
        }
        for (double shown : lambda) {
            boolean afr = recorder.mixture() == Recorder.Mixture.AFR;
            double step = recorder.lambdaStep() * (afr ? 10 : 1);
            double value = Math.rint(shown * (afr ? 14.7 : 1) / step) * step;
            figure(value, recorder.lambdaStep() < 0.005 && !afr ? 3 : 2, true);
        }
        if (trims) {
            figure(unit.shortTrimPct(), 1, true);
            figure(unit.longTrimPct(), 1, true);
        }
        figure(pulseMs, 2, true);
        figure(drive.coolantC, 0, true);
        figure(drive.machine.ambient().temperatureK() - 273.15 + 4, 0, true);
        figure(drive.roadSpeedMPerS * 3.6, 0, true);
        figure(drive.clutchOpen ? 0 : drive.gear, 0, true);
        if (torque) {
            figure(Math.max(0, drive.torqueNm()), 1, true);
        }
        text.append('\n');
    }

    private void figure(double value, int decimals, boolean comma) {
        if (comma) {
            text.append(',');
        }
        FixedPoint.append(text, value, decimals);
    }

    String csv() {
        return text.toString();
    }
}
