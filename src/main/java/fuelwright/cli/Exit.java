package fuelwright.cli;

/** Exit codes. */
public final class Exit {

    /** Done. */
    public static final int DONE = 0;
    /** The entry check found a difference. */
    public static final int DIFFERENCE = 1;
    /** Wrong usage. */
    public static final int USAGE = 2;
    /** An input can't be used, or an output can't be written. */
    public static final int INPUT = 3;
    /** Done, with at least one Stop caution. */
    public static final int STOP = 4;

    private Exit() {}
}
