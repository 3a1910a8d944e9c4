package fuelwright.screen;

/** A reason to keep a reading out of the evidence. Order is precedence: a row is counted under the first that applies. */
public enum Screen {
    NO_READING("no reading", "mixture, engine speed or load is missing", false),
    TIME_BASE("unstable time base", "time stands still, jumps or has a gap here", false),
    NOT_RUNNING("not running", "engine speed is below idle", true),
    TOO_COLD("too cold", "coolant is below the working temperature: warm-up enrichment is not the table's doing", true),
    FUEL_CUT("fuel cut", "fuel is cut or the throttle is closed on the overrun", true),
    AFTER_FUEL_CUT("after fuel cut", "the exhaust is still clearing of air", true),
    SENSOR_LIMIT("sensor limit", "the reading is at the end of what the sensor can show", true),
    SENSOR_FROZEN("sensor frozen", "the reading has not moved for too long", true),
    SPIKE("spike", "a sudden lean reading that looks like a misfire", true),
    GEAR_CHANGE("gear change", "gear or clutch is moving", true),
    THROTTLE_MOVING("throttle moving", "the throttle moves faster than the table can be blamed for", true),
    SPEED_MOVING("engine speed moving", "engine speed moves faster than the table can be blamed for", true),
    CLOSED_LOOP_UNLOGGED("closed loop, trims not logged", "the control unit hides the table's error here", true),
    OUTSIDE_TABLE("outside the table", "far outside the breakpoints: the edge cell would take the blame", true),
    HELD_VALUE("held value", "the logger repeated an old reading; it counts once", false);

    private final String words;
    private final String why;
    private final boolean canBeOff;

    Screen(String words, String why, boolean canBeOff) {
        this.words = words;
        this.why = why;
        this.canBeOff = canBeOff;
    }

    /** The short name. */
    public String words() {
        return words;
    }

    /** Why such readings don't count, a sentence without capital and full stop. */
    public String why() {
        return why;
    }

    /** Whether the user may switch it off. */
    public boolean canBeOff() {
        return canBeOff;
    }
}
