package fuelwright.cli;

import java.util.OptionalDouble;
import picocli.CommandLine.Option;

/** The injectors' dead time; only a table of pulses needs it, and it can't be seen in one. */
final class DeadTimeOption {

    @Option(
            names = "--dead-time",
            paramLabel = "MS",
            description =
                    "injector dead time contained in a pulse table, ms; 0 if it isn't contained; asked for with pulses")
    private Double deadTimeMs;

    /** Empty where the user hasn't said. */
    OptionalDouble ms() {
        if (deadTimeMs == null) {
            return OptionalDouble.empty();
        }
        if (!(deadTimeMs >= 0 && deadTimeMs < 100)) {
            throw CommandFailed.usage("--dead-time " + deadTimeMs + " must be from 0 to 100 ms");
        }
        return OptionalDouble.of(deadTimeMs);
    }
}
