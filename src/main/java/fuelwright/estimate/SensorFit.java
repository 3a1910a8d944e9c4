package fuelwright.estimate;

/**
 * Delay and lag, and where they come from.
 *
 * @param model what was used
 * @param identified whether the rides could tell; where not, these are the defaults
 * @param delayErrorS standard error of the dead time at the rides' middle engine speed, s; NaN where not identified
 * @param lagErrorS standard error of the lag, s; NaN where not identified
 * @param words one sentence for the user
 */
public record SensorFit(SensorModel model, boolean identified, double delayErrorS, double lagErrorS, String words) {}
