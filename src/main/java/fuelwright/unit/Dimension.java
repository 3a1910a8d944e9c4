package fuelwright.unit;

/** What a unit measures. Each dimension has one canonical unit, the one that columns hold in memory. */
public enum Dimension {
    ENGINE_SPEED,
    PERCENTAGE,
    PRESSURE,
    TEMPERATURE,
    TIME,
    ROAD_SPEED,
    /** Air to fuel, canonically lambda: 1 is stoichiometric, above 1 is lean. */
    MIXTURE,
    VOLTAGE,
    MASS_FLOW,
    ANGLE,
    TORQUE,
    POWER,
    LENGTH,
    VOLUME,
    MASS,
    AREA,
    DENSITY,
    /** Engine speed over road speed. */
    GEARING,
    NUMBER;

    /** Whether logs and tables may hold it; what isn't is only typed and shown. */
    public boolean isLogged() {
        return this != LENGTH && this != VOLUME && this != MASS && this != AREA && this != DENSITY && this != GEARING;
    }
}
