package fuelwright.estimate;

import fuelwright.unit.Sentence;

/**
 * Delay and lag, and where they come from.
 *
 * @param model what was used
 * @param identified whether the rides could tell the lag; where not, it is mostly the default
 * @param delayErrorS standard error of the delay at the speed and flow that {@code words} name, s
 * @param lagErrorS standard error of the lag, s
 * @param words one sentence for the user
 */
public record SensorFit(SensorModel model, boolean identified, double delayErrorS, double lagErrorS, Sentence words) {}
