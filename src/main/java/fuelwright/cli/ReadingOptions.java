package fuelwright.cli;

import fuelwright.ride.RideOptions;
import fuelwright.ride.Role;
import fuelwright.ride.WidebandScale;
import fuelwright.unit.Unit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import picocli.CommandLine.Option;

/** How rides are to be read. */
final class ReadingOptions {

    @Option(
            names = "--afr-scale",
            paramLabel = "RATIO",
            description = "the ratio that the AFR display was set to (14.7 until told)")
    private Double afrScale;

    @Option(
            names = "--role",
            paramLabel = "\"COLUMN=ROLE\"",
            description = "what a column of the rides means, for instance \"O2 front=lambda\"")
    private List<String> roles = new ArrayList<>();

    @Option(
            names = "--volts",
            paramLabel = "V=LAMBDA",
            description =
                    "lambda at a voltage of the wideband's output; twice, for instance --volts 0.5=0.7 --volts 4.5=1.3")
    private List<String> volts = new ArrayList<>();

    @Option(names = "--rate", paramLabel = "HZ", description = "rows a second of rides without a time column")
    private Double rateHz;

    @Option(
            names = "--unit",
            paramLabel = "\"COLUMN=UNIT\"",
            description = "the unit of a column's figures, for instance \"MAP=mbar\"; 0-1 for a fraction")
    private List<String> units = new ArrayList<>();

    @Option(
            names = "--delimiter",
            paramLabel = "SIGN",
            description = "what stands between fields: comma, semicolon, tab or bar")
    private String delimiter;

    @Option(names = "--decimal", paramLabel = "SIGN", description = "the decimal sign: point or comma")
    private String decimalSign;

    @Option(
            names = "--encoding",
            paramLabel = "NAME",
            description = "the encoding of the rides, for instance UTF-8, UTF-16LE or windows-1252")
    private String encoding;

    RideOptions rideOptions() {
        RideOptions options = RideOptions.defaults();
        OptionalDouble ratio = ratio("--afr-scale", afrScale);
        if (ratio.isPresent()) {
            options = options.withAfrScale(ratio.getAsDouble()).withSecondAfrScale(ratio);
        }
        if (rateHz != null) {
            if (!(rateHz > 0 && rateHz <= 2000)) {
                throw CommandFailed.usage("--rate " + rateHz + " must be above 0, at most 2000 rows a second");
            }
            options = options.withSampleRate(rateHz);
        }
        if (!volts.isEmpty()) {
            options = options.withWidebandScale(widebandScale());
        }
        for (String given : roles) {
            int at = given.lastIndexOf('=');
            if (at <= 0 || at == given.length() - 1) {
                throw CommandFailed.usage("--role \"" + given + "\" must be COLUMN=ROLE");
            }
            options = options.withRole(given.substring(0, at).strip(), role(given.substring(at + 1)));
        }
        for (String given : units) {
            int at = given.lastIndexOf('=');
            if (at <= 0 || at == given.length() - 1) {
                throw CommandFailed.usage("--unit \"" + given + "\" must be COLUMN=UNIT");
            }
            options = options.withUnit(given.substring(0, at).strip(), unit(given.substring(at + 1)));
        }
        return dialect(options);
    }

    private RideOptions dialect(RideOptions said) {
        RideOptions options = said;
        if (delimiter != null) {
            options = options.withDelimiter(DialectWords.delimiter(delimiter));
        }
        if (decimalSign != null) {
            options = options.withDecimalSign(DialectWords.decimalSign(decimalSign));
        }
        if (encoding != null) {
            options = options.withCharset(DialectWords.encoding(encoding));
        }
        return options;
    }

    /** The ratio of an AFR, if given, within bounds. */
    static OptionalDouble ratio(String option, Double given) {
        if (given == null) {
            return OptionalDouble.empty();
        }
        if (!(given >= 1 && given <= 40)) {
            throw CommandFailed.usage(
                    option + " " + given + " must be from 1 to 40: the ratio at lambda 1, 14.7 on most displays");
        }
        return OptionalDouble.of(given);
    }

    private WidebandScale widebandScale() {
        String needed = "--volts needs two points, for instance --volts 0.5=0.7 --volts 4.5=1.3";
        if (volts.size() != 2) {
            throw CommandFailed.usage(needed);
        }
        double[] figures = new double[4];
        for (int i = 0; i < 2; i++) {
            String[] parts = volts.get(i).split("=", -1);
            try {
                figures[2 * i] = Double.parseDouble(parts[0]);
                figures[2 * i + 1] = Double.parseDouble(parts.length == 2 ? parts[1] : "");
            } catch (NumberFormatException e) {
                throw CommandFailed.usage("--volts \"" + volts.get(i) + "\" must be V=LAMBDA, both figures");
            }
        }
        boolean plausible = figures[1] >= 0.3 && figures[1] <= 10 && figures[3] >= 0.3 && figures[3] <= 10;
        if (!plausible || !(Math.abs(figures[0] - figures[2]) > 0.01) || !Double.isFinite(figures[0] - figures[2])) {
            throw CommandFailed.usage(needed + "; lambda from 0.3 to 10 at two different voltages");
        }
        return new WidebandScale(figures[0], figures[1], figures[2], figures[3]);
    }

    private static Unit unit(String symbol) {
        return Unit.parse(symbol)
                .orElseThrow(() -> CommandFailed.usage("--unit: '" + symbol.strip() + "' isn't a unit. Units are "
                        + Arrays.stream(Unit.values())
                                .filter(u -> u.dimension().isLogged())
                                .map(Unit::symbol)
                                .collect(Collectors.joining(", "))));
    }

    private static Role role(String words) {
        String wanted = words.strip().toLowerCase(Locale.ROOT);
        return Arrays.stream(Role.values())
                .filter(r -> r.words().toLowerCase(Locale.ROOT).equals(wanted))
                .findFirst()
                .orElseThrow(() -> CommandFailed.usage("--role: '" + words.strip() + "' isn't a role. Roles are "
                        + Arrays.stream(Role.values()).map(Role::words).collect(Collectors.joining(", "))));
    }
}
