package fuelwright.airflow;

/**
 * The four-cylinder engine model of Crossley and Cook, IEE International Conference Control 91, as reproduced (coefficients seen) in
 * public examples of modelling tools and in the Modelica Standard Library 4. A reference that shares nothing with the program. The
 * cubic coefficient of the throttle polynomial is 0.00063 in both copies; the paper is said to print 0.0063, which gives negative areas.
 * Angles in degrees, pressures in bar, flows in g/s, speeds in rad/s, torque in N·m.
 */
final class CrossleyCook {

    private CrossleyCook() {}

    static double throttleInfluence(double thetaDeg) {
        return 2.821 - 0.05231 * thetaDeg + 0.10299 * thetaDeg * thetaDeg - 0.00063 * thetaDeg * thetaDeg * thetaDeg;
    }

    static double pressureInfluence(double manifoldBar, double ambientBar) {
        if (manifoldBar <= ambientBar / 2) {
            return 1;
        }
        return manifoldBar <= ambientBar
                ? 2 / ambientBar * Math.sqrt(manifoldBar * ambientBar - manifoldBar * manifoldBar)
                : -2 / manifoldBar * Math.sqrt(manifoldBar * ambientBar - ambientBar * ambientBar);
    }

    static double airIn(double thetaDeg, double manifoldBar) {
        return throttleInfluence(thetaDeg) * pressureInfluence(manifoldBar, 1);
    }

    static double airOut(double speed, double bar) {
        return -0.366 + 0.08979 * speed * bar - 0.0337 * speed * bar * bar + 0.0001 * speed * speed * bar;
    }

    static double airPerHalfTurnG(double speed, double bar) {
        return airOut(speed, bar) * Math.PI / speed;
    }

    static double torque(double airG, double airFuelRatio, double sparkDeg, double speed) {
        return -181.3
                + 379.36 * airG
                + 21.91 * airFuelRatio
                - 0.85 * airFuelRatio * airFuelRatio
                + 0.26 * sparkDeg
                - 0.0028 * sparkDeg * sparkDeg
                + 0.027 * speed
                - 0.000107 * speed * speed
                + 0.00048 * speed * sparkDeg
                + 2.55 * sparkDeg * airG
                - 0.05 * sparkDeg * sparkDeg * airG;
    }

    /** Manifold pressure where what the plate passes, times a factor on its area, is what the cylinders take, by halving. */
    static double steadyBar(double thetaDeg, double speed, double areaFactor) {
        double low = 0.05;
        double high = 1;
        for (int i = 0; i < 80; i++) {
            double middle = (low + high) / 2;
            if (areaFactor * airIn(thetaDeg, middle) > airOut(speed, middle)) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return (low + high) / 2;
    }

    /** Engine speed at which torque balances a load, by halving. */
    static double steadySpeed(double thetaDeg, double loadNm) {
        double low = 100;
        double high = 700;
        for (int i = 0; i < 80; i++) {
            double middle = (low + high) / 2;
            double air = airPerHalfTurnG(middle, steadyBar(thetaDeg, middle, 1));
            if (torque(air, 14.6, 15, middle) > loadNm) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return (low + high) / 2;
    }
}
