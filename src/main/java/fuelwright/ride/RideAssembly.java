package fuelwright.ride;

import fuelwright.issue.Issue;
import fuelwright.issue.Loaded;
import fuelwright.ride.Channel.Confidence;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/** From rows of figures to a ride: time, channels, and every remark. */
final class RideAssembly {

    /** Bad lines for each good one beyond which what is left is no log. */
    private static final int MOST_BAD = 9;

    private static final int ROWS_WORTH_THREADS = 100_000;

    private final String name;
    private final Encoded encoded;
    private final Layout layout;
    private final RawTable raw;
    private final RideOptions options;
    private final List<Issue> remarks = new ArrayList<>();

    RideAssembly(String name, Encoded encoded, Layout layout, RawTable raw, RideOptions options) {
        this.name = name;
        this.encoded = encoded;
        this.layout = layout;
        this.raw = raw;
        this.options = options;
    }

    /** @param whole whether it has to have an engine speed by itself */
    Loaded<Ride> ride(boolean whole) {
        if (raw.rows() == 0) {
            return refused("no row of figures could be read" + skippedWords(), "choose a log with one row a sample");
        }
        int timeColumn = TimeChoice.choose(layout, raw, options);
        if (timeColumn < 0 && options.sampleRateHz().isEmpty()) {
            return refused(
                    "there is no time column" + (TimeChoice.isNamed(layout) ? " that runs forward" : "")
                            + "; the headings are " + headings(),
                    "say which column is the time (--role \"COLUMN=time\"), or how many rows a second the logger wrote"
                            + " (--rate HZ)");
        }
        TimeColumn time = TimeColumn.of(name, layout, raw, options, timeColumn);
        if (time.rows() == 0) {
            return refused("no row has a time that can be read" + skippedWords(), "say which column is the time");
        }
        long bad = raw.log().skipped().entrySet().stream()
                .filter(e -> e.getKey().isBad())
                .mapToLong(e -> e.getValue().count())
                .sum();
        if (bad > MOST_BAD * time.rows()) {
            return refused(
                    "only " + time.rows() + " of " + (time.rows() + bad) + " lines could be read as rows"
                            + skippedWords(),
                    "look at these lines; if the time is another column, say which (--role \"COLUMN=time\")");
        }
        IntStream columns = IntStream.range(0, layout.columns()).filter(c -> c != timeColumn);
        List<Draft> drafts = (time.rows() > ROWS_WORTH_THREADS ? columns.parallel() : columns)
                .mapToObj(c -> draft(c, time))
                .toList();
        Channels channels = new Channels(name, options, layout.headingLine());
        List<Channel> made = channels.of(drafts);
        Loaded<Ride> noSpeed = whole ? withoutEngineSpeed(made) : null;
        if (noSpeed != null) {
            return noSpeed;
        }
        decided(timeColumn, time.rows());
        unknownOverrides();
        remarks.addAll(layout.issues());
        skipped();
        unreadableFields();
        remarks.addAll(time.issues());
        remarks.addAll(channels.issues());
        Ride ride = new Ride(name, Column.owning(time.timeS()), made, time.segments(), remarks)
                .readFrom(Optional.of(form(timeColumn)));
        return Loaded.of(ride, remarks);
    }

    private LogForm form(int timeColumn) {
        List<LogForm.LeftOut> leftOut = raw.log().skipped().entrySet().stream()
                .map(e -> new LogForm.LeftOut(
                        e.getKey().words(e.getValue().count()),
                        e.getValue().count(),
                        e.getValue().first(),
                        e.getKey().isBad()))
                .toList();
        return new LogForm(
                layout.dialect().delimiter(),
                layout.dialect().decimalSign(),
                encoded.charset(),
                encoded.words(),
                layout.headings().stream().map(Heading::text).toList(),
                timeColumn < 0 ? "" : layout.headings().get(timeColumn).text(),
                leftOut);
    }

    private Draft draft(int column, TimeColumn time) {
        double[] values = time.keep(raw.columns()[column]);
        raw.columns()[column] = null;
        return new Draft(column, layout.headings().get(column), layout.forms().get(column), values);
    }

    private Loaded<Ride> withoutEngineSpeed(List<Channel> channels) {
        Channel speed = channels.stream()
                .filter(c -> c.role() == Role.ENGINE_SPEED && c.confidence() != Confidence.LEFT_OUT)
                .findFirst()
                .orElse(null);
        if (speed == null) {
            return refused(
                    "there is no engine speed" + withoutFigures() + "; the headings are " + headings(),
                    "say which column is the engine speed (--role \"COLUMN=engine speed\")");
        }
        double greatest = Double.NaN;
        for (int i = 0; i < speed.values().size() && !(greatest > 0); i++) {
            greatest = speed.values().has(i) ? speed.values().at(i) : greatest;
        }
        if (!(greatest > 0)) {
            return refused(
                    "the engine speed in " + speed.heading() + " is " + (greatest == 0 ? "0" : "missing")
                            + " throughout",
                    "log a ride with the engine running, or say which column is the engine speed");
        }
        return null;
    }

    /** Names the column that would be the engine speed if its figures could be one. */
    private String withoutFigures() {
        return layout.headings().stream()
                .filter(h -> RoleNames.of(h).role() == Role.ENGINE_SPEED)
                .findFirst()
                .map(h -> ": " + h.text() + " holds no figure that could be one")
                .orElse("");
    }

    private Loaded<Ride> refused(String what, String todo) {
        return Loaded.refused(Say.error(name, layout.headingLine(), 1, what, todo));
    }

    private String headings() {
        return layout.headings().stream().map(Heading::text).limit(40).collect(Collectors.joining(", "));
    }

    private void decided(int timeColumn, int rows) {
        String dialect = layout.dialect().words() + ", " + encoded.words();
        remarks.add(Say.note(
                name, dialect + "; " + rows + " rows, " + raw.log().skippedCount() + " skipped" + skippedWords()));
        if (timeColumn >= 0) {
            remarks.add(Say.note(
                    name, "time is " + layout.headings().get(timeColumn).text()));
        }
    }

    private String skippedWords() {
        if (raw.log().skipped().isEmpty()) {
            return "";
        }
        return raw.log().skipped().entrySet().stream()
                .map(e -> e.getValue().count() + " "
                        + e.getKey().words(e.getValue().count()))
                .collect(Collectors.joining(", ", ": ", ""));
    }

    private void unknownOverrides() {
        TreeSet<String> said = new TreeSet<>(options.roles().keySet());
        said.addAll(options.units().keySet());
        for (String column : said) {
            if (layout.headings().stream().noneMatch(h -> RideOptions.names(column, h))) {
                remarks.add(Say.warning(
                        name,
                        layout.headingLine(),
                        0,
                        "there is no column " + column + " to give a role or unit to",
                        "the headings are " + headings()));
            }
        }
    }

    private void skipped() {
        for (Map.Entry<RowLog.Skip, Lines> entry : raw.log().skipped().entrySet()) {
            Lines lines = entry.getValue();
            String what = entry.getKey().words(lines.count()) + " skipped: " + lines.words();
            remarks.add(
                    entry.getKey().isBad()
                            ? Say.warning(name, lines.firstLine(), 0, what, "look at these lines if they are many")
                            : Say.note(name, what));
        }
    }

    private void unreadableFields() {
        raw.log().unreadable().forEach((column, lines) -> {
            String what = lines.count() == 1 ? "1 field isn't a figure" : lines.count() + " fields aren't figures";
            String where = " and taken as missing (" + raw.log().example(column) + "; " + lines.words() + ")";
            String heading = layout.headings().get(column).text();
            String todo = "nothing, if the sensor was still warming up";
            remarks.add(Say.doubt(name, lines.firstLine(), column + 1, heading, what + where, todo));
        });
    }
}
