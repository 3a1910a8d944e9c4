package fuelwright.handover;

import java.util.List;

/** Cautions that hold for every engine, whatever the rides say. Common practice, no source. */
final class UsualWords {

    static final List<String> CAUTIONS = List.of(
            "A mixture that is lean under load can destroy an engine within seconds. Lift off at once if the reading goes lean.",
            "Ride the first pulls on the new table with somebody watching the mixture, or on a dyno.",
            "A wideband reads exhaust, not fuel: misfires, leaks before the sensor and reversion at small throttle read lean.",
            "A fuel pump, filter or injector at its limit can't be tuned away: mind the injectors' duty cycle at high engine speed.",
            "The table is right for the fuel that was ridden; another fuel needs another look.",
            "Ignition is not touched here. Knock calls for less advance or better fuel, not only for a richer mixture.");

    private UsualWords() {}
}
