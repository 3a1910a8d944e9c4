package fuelwright.work;

import fuelwright.job.Job;
import fuelwright.safety.Caution;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;

/** Asks what dead time the pulses of the fuel table contain, where nobody told it. */
final class DeadTimeUntold {

    private DeadTimeUntold() {}

    static Optional<Caution> of(Job job) {
        return job.asksForDeadTime()
                ? Optional.of(new Caution(
                        "dead-time-untold",
                        Caution.Level.CHECK,
                        "What dead time the pulses contain isn't known",
                        "Whether the pulses of the fuel table contain the injectors' dead time can't be seen, and nobody said it. Until it is said fuel is added as if they contained none, which is too much, most of all to short pulses, where they do; and no pulse is shortened",
                        "Find out whether the control unit adds the dead time itself, and say what the pulses contain, also where it is nothing (--dead-time MS)",
                        new TreeSet<>(),
                        List.of()))
                : Optional.empty();
    }
}
