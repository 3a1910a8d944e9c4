package fuelwright.estimate;

/**
 * How the proposal does on parts of the rides that it hadn't seen: blocks are left out in turn.
 *
 * @param blocks how many blocks were left out in turn
 * @param readings readings judged
 * @param errorBeforePercent root-mean-square mixture error with the table as ridden, %
 * @param errorAfterPercent the same readings with the table fitted without them, %
 */
public record Validation(int blocks, int readings, double errorBeforePercent, double errorAfterPercent) {}
