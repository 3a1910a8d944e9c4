package fuelwright.cli;

import java.util.OptionalDouble;
import picocli.CommandLine.Option;

/** What an AFR in the target table is divided by; the displays of the rides have an option of their own. */
final class TargetRatioOption {

    @Option(
            names = "--target-ratio",
            paramLabel = "RATIO",
            description = "the ratio that the figures of an AFR target mean at lambda 1 (14.7 until told)")
    private Double ratio;

    OptionalDouble ratio() {
        return ReadingOptions.ratio("--target-ratio", ratio);
    }
}
