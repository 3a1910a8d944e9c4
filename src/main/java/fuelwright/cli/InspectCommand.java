package fuelwright.cli;

import fuelwright.issue.Issue;
import fuelwright.issue.Loaded;
import fuelwright.ride.Channel;
import fuelwright.ride.Ride;
import fuelwright.screen.Screen;
import fuelwright.screen.ScreenedRide;
import fuelwright.work.Cancellation;
import fuelwright.work.InspectRide;
import fuelwright.work.Progress;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** What a ride holds. */
@Command(
        name = "inspect",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        description = "What a ride holds: channels, roles, units, rates, gaps, and what would be screened out.")
final class InspectCommand implements Callable<Integer> {

    @Spec
    private CommandSpec spec;

    @Option(names = "--ride", required = true, paramLabel = "F", description = "the ride")
    private Path file;

    @Mixin
    private ReadingOptions reading;

    @Option(names = "--json", description = "the same as JSON")
    private boolean json;

    @Override
    public Integer call() {
        Loaded<ScreenedRide> loaded = InspectRide.run(file, reading.rideOptions(), Progress.NONE, Cancellation.NEVER);
        ScreenedRide screened = CommandFailed.valueOf(loaded);
        PrintWriter out = spec.commandLine().getOut();
        if (json) {
            out.println(Json.write(asMap(screened, loaded.issues())));
        } else {
            lines(screened).forEach(out::println);
        }
        Said.remarks(loaded.issues(), spec.commandLine().getErr());
        return Exit.DONE;
    }

    private static List<String> lines(ScreenedRide screened) {
        Ride ride = screened.ride();
        List<String> lines = new ArrayList<>();
        lines.add(ride.name() + ": " + ride.size() + " rows, " + fixed(ride.durationS(), 1) + " s, "
                + ride.segmentStarts().size() + " segment"
                + (ride.segmentStarts().size() == 1 ? "" : "s"));
        lines.add("Channels:");
        for (Channel channel : ride.channels()) {
            ChannelFacts facts = ChannelFacts.of(ride, channel);
            lines.add(String.format(
                    Locale.ROOT,
                    "  %s: %s [%s]%s, %d values, %s to %s, %s Hz, %s%s",
                    channel.heading(),
                    channel.role().words(),
                    ChannelFacts.unit(channel).symbol(),
                    certainty(channel),
                    facts.values(),
                    fixed(facts.least(), 2),
                    fixed(facts.most(), 2),
                    fixed(facts.rateHz(), 1),
                    facts.gaps() == 0
                            ? "no gaps"
                            : facts.gaps() + (facts.gaps() == 1 ? " gap of " : " gaps, longest ")
                                    + fixed(facts.longestGapS(), 1) + " s",
                    channel.remark().isEmpty() ? "" : " (" + channel.remark() + ")"));
        }
        lines.add("Would count: " + screened.kept() + " rows. Screened out:");
        for (Screen screen : Screen.values()) {
            if (screened.count(screen) > 0) {
                lines.add("  " + screen.words() + ": " + screened.count(screen) + " (" + screen.why() + ")");
            }
        }
        return lines;
    }

    private static String certainty(Channel channel) {
        switch (channel.confidence()) {
            case SURE:
                return "";
            case LOOK:
                return ", worth a look";
            default:
                return ", left out";
        }
    }

    private static Map<String, Object> asMap(ScreenedRide screened, List<Issue> remarks) {
        Ride ride = screened.ride();
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("command", "inspect");
        map.put("exit", Exit.DONE);
        map.put("ride", ride.name());
        map.put("rows", ride.size());
        map.put("durationS", ride.durationS());
        map.put("segments", ride.segmentStarts().size());
        List<Object> channels = new ArrayList<>();
        for (Channel channel : ride.channels()) {
            ChannelFacts facts = ChannelFacts.of(ride, channel);
            Map<String, Object> one = new LinkedHashMap<>();
            one.put("heading", channel.heading());
            one.put("role", channel.role().words());
            one.put("unit", ChannelFacts.unit(channel).symbol());
            one.put(
                    "confidence",
                    channel.confidence().name().toLowerCase(Locale.ROOT).replace('_', ' '));
            one.put("remark", channel.remark());
            one.put("values", facts.values());
            one.put("least", Json.number(facts.least()));
            one.put("most", Json.number(facts.most()));
            one.put("rateHz", Json.number(facts.rateHz()));
            one.put("gaps", facts.gaps());
            one.put("longestGapS", Json.number(facts.longestGapS()));
            channels.add(one);
        }
        map.put("channels", channels);
        map.put("wouldCount", screened.kept());
        Map<String, Integer> reasons = new LinkedHashMap<>();
        for (Screen screen : Screen.values()) {
            if (screened.count(screen) > 0) {
                reasons.put(screen.words(), screened.count(screen));
            }
        }
        map.put("screenedOut", reasons);
        map.put("remarks", remarks.stream().map(Said::asMap).toList());
        return map;
    }

    private static String fixed(double value, int decimals) {
        return Double.isFinite(value) ? String.format(Locale.ROOT, "%." + decimals + "f", value) : "–";
    }
}
