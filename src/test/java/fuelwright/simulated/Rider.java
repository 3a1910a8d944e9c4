package fuelwright.simulated;

/** Whoever works throttle, clutch, gears and brake. */
interface Rider {

    /** Looks at the machine and sets its controls for the next {@code dtS}. */
    void ride(Drive drive, double timeS, double dtS);
}
