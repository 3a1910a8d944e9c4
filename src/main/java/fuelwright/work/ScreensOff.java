package fuelwright.work;

import fuelwright.job.Job;
import fuelwright.safety.Caution;
import fuelwright.screen.Screen;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import java.util.stream.Collectors;

/** Names the screens that the user has switched off: what they would keep out counts as evidence. */
final class ScreensOff {

    private ScreensOff() {}

    static Optional<Caution> of(Job job) {
        List<Screen> off = job.screens().off().stream().sorted().toList();
        if (off.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(new Caution(
                "screen-off",
                Caution.Level.NOTE,
                off.size() == 1 ? "A screen is off" : "Screens are off",
                off.stream().map(s -> "'" + s.words() + "' (" + s.why() + ")").collect(Collectors.joining("; "))
                        + ": what " + (off.size() == 1 ? "it keeps" : "they keep")
                        + " out otherwise counts as evidence",
                "Switch it on again on the stage Rides, unless you know why those readings are the table's doing",
                new TreeSet<>(),
                List.of()));
    }
}
