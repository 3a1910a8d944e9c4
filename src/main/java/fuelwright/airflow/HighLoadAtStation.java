package fuelwright.airflow;

/** A rule with a barometer for moments that have none of their own. */
record HighLoadAtStation(HighLoad rule, double stationKpa) implements HighLoad {

    @Override
    public boolean at(double speedRpm, double throttlePercent, double pressureKpa, double barometerKpa) {
        return rule.at(speedRpm, throttlePercent, pressureKpa, barometerKpa > 0 ? barometerKpa : stationKpa);
    }

    @Override
    public Basis basis() {
        return rule.basis();
    }
}
