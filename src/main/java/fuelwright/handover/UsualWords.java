package fuelwright.handover;

import java.util.List;

/** Cautions that hold for every engine, whatever the rides say. Common practice, no source. */
final class UsualWords {

    static final List<String> CAUTIONS = List.of(
            "A mixture that is lean under load can destroy an engine within seconds. Lift off at once if the reading goes lean.",
            "High load belongs on a dynamometer or a closed course, never into traffic.",
            "Never watch a screen while riding: record, stop, then look.",
            "Run an engine only with the exhaust led outside. Carbon monoxide can't be seen or smelt.",
            "Exhaust, fan, chain and rear wheel don't wait; a rich exhaust can burn after the engine stops.",
            "A wideband reads exhaust, not fuel: misfires, leaks before the sensor and pulses at small throttle read lean.",
            "A fuel pump, filter or injector at its limit can't be tuned away.",
            "The table is right for the fuel that was ridden; another fuel needs another look.",
            "Ignition is not touched here. Knock calls for less advance or better fuel, not only for a richer mixture.",
            "In many places a changed engine may not be ridden on public roads, and work on it may need a licensed person. Find out first.");

    private UsualWords() {}
}
