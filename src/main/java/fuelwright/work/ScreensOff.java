package fuelwright.work;

import fuelwright.job.Job;
import fuelwright.safety.Caution;
import fuelwright.screen.Screen;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;

/** Names the screens that the user has switched off: what they would keep out counts as evidence. */
final class ScreensOff {

    /** What these keep out reads lean or rich for reasons of its own, and richer readings lean the table; the others only scatter. */
    private static final Set<Screen> HARMLESS =
            EnumSet.of(Screen.SPIKE, Screen.GEAR_CHANGE, Screen.SPEED_MOVING, Screen.OUTSIDE_TABLE);

    private ScreensOff() {}

    static Optional<Caution> of(Job job) {
        List<Screen> off = job.screens().off().stream().sorted().toList();
        if (off.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(new Caution(
                "screen-off",
                HARMLESS.containsAll(off) ? Caution.Level.NOTE : Caution.Level.CHECK,
                off.size() == 1 ? "A screen is off" : "Screens are off",
                off.stream().map(s -> "'" + s.words() + "' (" + s.why() + ")").collect(Collectors.joining("; "))
                        + ": what " + (off.size() == 1 ? "it keeps" : "they keep")
                        + " out otherwise counts as evidence"
                        + (HARMLESS.containsAll(off) ? "" : ", and may lean the table"),
                "Switch it on again on the stage Rides, unless you know why those readings are the table's doing",
                new TreeSet<>(),
                List.of()));
    }
}
