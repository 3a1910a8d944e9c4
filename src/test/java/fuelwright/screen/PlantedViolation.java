package fuelwright.screen;

import fuelwright.work.Progress;

/** Breaks an arrow on purpose, so that a test can see the rule fail. */
final class PlantedViolation {
    private PlantedViolation() {}

    static Progress upwards() {
        return Progress.NONE;
    }
}
