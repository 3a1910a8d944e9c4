package fuelwright.cli;

import fuelwright.ride.RideOptions;
import fuelwright.ride.Role;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
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

    RideOptions rideOptions() {
        RideOptions options = RideOptions.defaults();
        if (afrScale != null) {
            if (!(afrScale >= 1 && afrScale <= 40)) {
                throw CommandFailed.usage("--afr-scale " + afrScale
                        + " must be from 1 to 40: the ratio at lambda 1, 14.7 on most displays");
            }
            options = options.withAfrScale(afrScale);
        }
        for (String given : roles) {
            int at = given.lastIndexOf('=');
            if (at <= 0 || at == given.length() - 1) {
                throw CommandFailed.usage("--role \"" + given + "\" must be COLUMN=ROLE");
            }
            options = options.withRole(given.substring(0, at).strip(), role(given.substring(at + 1)));
        }
        return options;
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
