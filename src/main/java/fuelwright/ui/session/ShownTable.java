package fuelwright.ui.session;

/** Which table is looked at on stage Tables. */
public enum ShownTable {
    FUEL,
    TARGET,
    FIRST_RIDE
}
