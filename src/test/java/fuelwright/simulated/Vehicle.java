package fuelwright.simulated;

import java.util.ArrayList;
import java.util.List;

/** What the engine has to move. Ratios are engine speed over wheel speed, first gear first. */
public record Vehicle(double massKg, double dragAreaM2, double wheelRadiusM, List<Double> ratios) {
    private static final double[] USUAL = {14.2, 10.4, 8.2, 6.9, 6.1, 5.5};

    public Vehicle {
        ratios = List.copyOf(ratios);
    }

    /** A solo machine with rider, geared for what the engine can give. */
    public static Vehicle solo(Engine engine) {
        double strength = engine.displacementCc() * engine.redlineRpm() / (720 * 8500);
        double pace = StrictMath.cbrt(strength);
        List<Double> ratios = new ArrayList<>();
        for (double ratio : USUAL) {
            ratios.add(ratio * engine.redlineRpm() / 8500 / pace);
        }
        return new Vehicle(180 + 0.15 * engine.displacementCc(), 0.55, 0.31, ratios);
    }

    int gears() {
        return ratios.size();
    }

    /** Engine speed at a road speed with the clutch closed, rpm; gear 1 is first. */
    double speedRpm(double roadSpeedMPerS, int gear) {
        return roadSpeedMPerS / wheelRadiusM * ratios.get(gear - 1) * 60 / (2 * Math.PI);
    }

    double roadSpeedMPerS(double speedRpm, int gear) {
        return speedRpm * 2 * Math.PI / 60 * wheelRadiusM / ratios.get(gear - 1);
    }

    double resistanceN(double roadSpeedMPerS, double slope) {
        double rolling = roadSpeedMPerS > 0.2 ? 0.018 : 0;
        return massKg * 9.81 * (rolling + slope) + 0.5 * 1.2 * dragAreaM2 * roadSpeedMPerS * roadSpeedMPerS;
    }
}
