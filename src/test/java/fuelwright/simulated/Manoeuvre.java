package fuelwright.simulated;

/**
 * A piece of a road ride.
 *
 * @param share what it aims at: throttle % (roll-on, open throttle part) or the share of the machine's top pace (cruise)
 * @param speedShare engine speed to begin with or to prefer, as a share of the redline
 * @param gear to begin a roll-on in; 0 where the rider chooses
 * @param slope of the road, rise over run
 */
record Manoeuvre(Kind kind, double seconds, double share, double speedShare, int gear, double slope) {

    enum Kind {
        /** Clutch in, throttle closed, standing. */
        STAND,
        /** A steady road speed. */
        CRUISE,
        /** From a low engine speed with one throttle opening up to the limit. */
        ROLL_ON,
        /** Throttle closed in gear, braking a little: fuel cut. */
        COAST,
        /** A winding road: the throttle is never still. */
        WIND
    }
}
