package fuelwright.simulated;

/**
 * The truth at one row of a ride's log, just as it was in the cylinder at that time (the log shows it later).
 *
 * @param load what the control unit looked its table up with
 * @param charge air per cycle as a share of the displacement full of ambient air, if the throttle stood still
 * @param lambda what burnt; infinite in fuel cut
 * @param tableAlone whether the table alone was to blame for the mixture: fuel on, warm, no trims, nothing starved or misfiring
 */
public record Moment(
        double timeS,
        double speedRpm,
        double throttlePct,
        double pressurePa,
        double load,
        double charge,
        double lambda,
        double target,
        boolean fuelOn,
        boolean warm,
        boolean tableAlone) {}
