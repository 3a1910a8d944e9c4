package fuelwright.work;

import fuelwright.estimate.NextRide;
import fuelwright.safety.Caution;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;

/** Says that the logged road speed isn't used for gears where it doesn't go with the engine speed as a machine's gears would make it. */
final class RoadSpeedDoubt {

    private RoadSpeedDoubt() {}

    static Optional<Caution> of(NextRide next) {
        return next.roadSpeedDoubtful()
                ? Optional.of(new Caution(
                        "road-speed-doubtful",
                        Caution.Level.NOTE,
                        "The road speed doesn't fit the engine speed",
                        "Road speed over engine speed shows no clear gears, or more of them than a machine has. The next ride is therefore told without gear and road speed",
                        "See on the stage Rides whether the column is the road speed, and in the unit that was taken",
                        new TreeSet<>(),
                        List.of()))
                : Optional.empty();
    }
}
