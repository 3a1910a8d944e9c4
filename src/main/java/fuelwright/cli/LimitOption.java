package fuelwright.cli;

import fuelwright.safety.Limit;
import fuelwright.safety.Limits;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import picocli.CommandLine.Option;

/** Limits of the cautions that the user sets, within their bounds. */
final class LimitOption {

    @Option(
            names = "--limit",
            paramLabel = "\"NAME=VALUE\"",
            description = "a limit of the cautions, in its own unit, within its bounds (docs/cautions.md): --limit"
                    + " \"lean-excess=0.03\"; may be repeated")
    private List<String> given = new ArrayList<>();

    /** The limits with what was given. */
    Limits on(Limits limits) {
        Limits out = limits;
        for (String text : given) {
            int equals = text.indexOf('=');
            if (equals < 0) {
                throw CommandFailed.usage("--limit \"" + text + "\" must be NAME=VALUE");
            }
            String name = text.substring(0, equals).strip();
            Optional<Limit> limit = Limit.ofName(name);
            if (limit.isEmpty()) {
                throw CommandFailed.usage(
                        "--limit \"" + text + "\": there is no limit called '" + name + "'; there are "
                                + Arrays.stream(Limit.values()).map(Limit::key).collect(Collectors.joining(", ")));
            }
            out = out.with(
                    limit.get(),
                    value(text, limit.get(), text.substring(equals + 1).strip()));
        }
        return out;
    }

    private static double value(String text, Limit limit, String figure) {
        double value;
        try {
            value = Double.parseDouble(figure);
        } catch (NumberFormatException e) {
            throw CommandFailed.usage("--limit \"" + text + "\": '" + figure + "' is no number");
        }
        if (!(value >= limit.least() && value <= limit.most())) {
            throw CommandFailed.usage(
                    "--limit \"" + text + "\": " + limit.words() + " must be from " + number(limit.least()) + " to "
                            + number(limit.most()) + (limit.unit().equals("1") ? "" : " " + limit.unit()));
        }
        return value;
    }

    private static String number(double value) {
        return BigDecimal.valueOf(value).stripTrailingZeros().toPlainString();
    }
}
