package fuelwright.ride;

import fuelwright.issue.Issue;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * One log: equally long columns, loaded once, read-only. Row {@code i} was taken at {@code timeS().at(i)}; within a segment time never
 * decreases; a new segment starts where the log restarted, and nothing is carried over from one segment to the next.
 */
public final class Ride {

    private final String name;
    private final Column timeS;
    private final List<Channel> channels;
    private final List<Integer> segmentStarts;
    private final List<Issue> remarks;
    private final Optional<LogForm> form;
    private final String fingerprint;
    /** Which of the mixtures alone is evidence; empty where all are, together. */
    private final OptionalInt evidence;

    /**
     * @param name what the user calls it: the file's name without folder
     * @param timeS seconds, finite, non-decreasing within a segment
     * @param channels every column of the file other than time, in file order; at most one of each role but the mixtures and OTHER
     * @param segmentStarts ascending row numbers, the first is 0
     * @param remarks what was decided, skipped or doubted in reading
     */
    public Ride(String name, Column timeS, List<Channel> channels, List<Integer> segmentStarts, List<Issue> remarks) {
        this(name, timeS, channels, segmentStarts, remarks, Optional.empty(), "", OptionalInt.empty());
    }

    private Ride(
            String name,
            Column timeS,
            List<Channel> channels,
            List<Integer> segmentStarts,
            List<Issue> remarks,
            Optional<LogForm> form,
            String fingerprint,
            OptionalInt evidence) {
        for (Channel channel : channels) {
            if (channel.values().size() != timeS.size()) {
                throw new IllegalArgumentException("channel " + channel.heading() + " has "
                        + channel.values().size() + " rows, time has " + timeS.size());
            }
        }
        if (segmentStarts.isEmpty() || segmentStarts.get(0) != 0) {
            throw new IllegalArgumentException("segmentStarts " + segmentStarts + " must start with 0");
        }
        this.name = name;
        this.timeS = timeS;
        this.channels = List.copyOf(channels);
        this.segmentStarts = List.copyOf(segmentStarts);
        this.remarks = List.copyOf(remarks);
        this.form = form;
        this.fingerprint = fingerprint;
        this.evidence = evidence;
    }

    public String name() {
        return name;
    }

    /** The number of rows. */
    public int size() {
        return timeS.size();
    }

    public Column timeS() {
        return timeS;
    }

    public List<Channel> channels() {
        return channels;
    }

    /** The row at which each segment starts, ascending, the first is 0. */
    public List<Integer> segmentStarts() {
        return segmentStarts;
    }

    /** What was decided, skipped or doubted in reading. */
    public List<Issue> remarks() {
        return remarks;
    }

    /** Those of the remarks by which the unit that a heading states was overruled by its figures. */
    public List<Issue> overruledUnits() {
        return remarks.stream().filter(Say::isOverruled).toList();
    }

    /** Whether an AFR was read by the usual ratio of a display since nobody told it. */
    public boolean isRatioUntold() {
        return remarks.stream().anyMatch(Say::isRatioUntold);
    }

    /** How the file was written and what of it is no row; empty for a ride that wasn't read from one. */
    public Optional<LogForm> form() {
        return form;
    }

    /** SHA-256 of the bytes that it was read from, in hexadecimal; empty where that isn't known. Of two loggers the first one's. */
    public String fingerprint() {
        return fingerprint;
    }

    /** This ride, with the fingerprint of the bytes that it was read from. */
    public Ride fingerprinted(String sha256) {
        return new Ride(name, timeS, channels, segmentStarts, remarks, form, sha256, evidence);
    }

    /** This ride, with how its file was written. */
    Ride readFrom(Optional<LogForm> other) {
        return new Ride(name, timeS, channels, segmentStarts, remarks, other, fingerprint, evidence);
    }

    /** This ride, made from another one's file. */
    Ride readFrom(Ride other) {
        return new Ride(name, timeS, channels, segmentStarts, remarks, other.form, other.fingerprint, evidence);
    }

    /** This ride under another name. */
    public Ride named(String other) {
        return new Ride(other, timeS, channels, segmentStarts, remarks, form, fingerprint, evidence);
    }

    /** This ride with one more remark, in front of the others. */
    public Ride remarked(Issue remark) {
        List<Issue> all = new ArrayList<>(remarks);
        all.add(0, remark);
        return new Ride(name, timeS, channels, segmentStarts, all, form, fingerprint, evidence);
    }

    /** Seconds from the first to the last row, gaps and all, summed over segments. */
    public double durationS() {
        double sum = 0;
        for (int s = 0; s < segmentStarts.size(); s++) {
            int from = segmentStarts.get(s);
            int to = s + 1 < segmentStarts.size() ? segmentStarts.get(s + 1) : size();
            sum += to > from ? timeS.at(to - 1) - timeS.at(from) : 0;
        }
        return sum;
    }

    /** The channel of a role that is used, if the ride has one. */
    public Optional<Channel> channel(Role role) {
        return channels.stream()
                .filter(c -> c.role() == role && c.confidence() != Channel.Confidence.LEFT_OUT)
                .findFirst();
    }

    /** The canonical values of a role's channel, if the ride has one. */
    public Optional<Column> column(Role role) {
        return channel(role).map(Channel::values);
    }

    /** The measured mixtures that are used (lambda in memory), one for each sensor, in file order. */
    public List<Channel> mixtures() {
        return channels.stream()
                .filter(c -> c.role().isMixture() && c.confidence() != Channel.Confidence.LEFT_OUT)
                .toList();
    }

    /**
     * This ride for a table that feeds one cylinder: only that cylinder's sensor is {@link #mixture}. The first sensor is cylinder 1's; where
     * there is one sensor it is taken for the cylinder's.
     *
     * @param cylinder counted from 1
     * @throws IllegalArgumentException if the ride has several sensors but not that many
     */
    public Ride ofCylinder(int cylinder) {
        int sensors = mixtures().size();
        if (cylinder < 1 || sensors > 1 && cylinder > sensors) {
            throw new IllegalArgumentException("cylinder " + cylinder + " must be from 1 to " + sensors);
        }
        OptionalInt own = OptionalInt.of(sensors > 1 ? cylinder - 1 : 0);
        return new Ride(name, timeS, channels, segmentStarts, remarks, form, fingerprint, own);
    }

    /** Whether it is the same log, whichever sensor is evidence. */
    public boolean isOf(Ride log) {
        return timeS == log.timeS && channels == log.channels;
    }

    /** Whether another log holds the same readings, whatever its file is called: counted twice they would look twice as sure. */
    public boolean hasReadingsOf(Ride other) {
        return SameReadings.of(this, other);
    }

    /** Whether one of {@link #mixtures} is evidence for the table. */
    public boolean isEvidence(int sensor) {
        return evidence.isEmpty() || evidence.getAsInt() == sensor;
    }

    /** The first of {@link #mixtures} that is evidence. */
    public int firstEvidence() {
        return evidence.orElse(0);
    }

    /**
     * What the sensors that are evidence say together: lambda of the mixed gas, row by row, over those sensors that have a reading. Exhaust
     * gases of equal air mix linearly in 1/lambda. Empty where the ride has no mixture channel.
     */
    public Optional<Column> mixture() {
        List<Channel> sensors = mixtures();
        if (evidence.isPresent() && !sensors.isEmpty()) {
            return Optional.of(sensors.get(evidence.getAsInt()).values());
        }
        if (sensors.size() <= 1) {
            return sensors.stream().findFirst().map(Channel::values);
        }
        double[] mixed = new double[size()];
        for (int row = 0; row < mixed.length; row++) {
            double sum = 0;
            int count = 0;
            for (Channel sensor : sensors) {
                if (sensor.values().has(row)) {
                    sum += 1 / sensor.values().at(row);
                    count++;
                }
            }
            mixed[row] = count == 0 ? Double.NaN : count / sum;
        }
        return Optional.of(Column.owning(mixed));
    }

    /** Whether the ride logged a fuel trim, short or long. */
    public boolean hasTrims() {
        return channel(Role.SHORT_TRIM).isPresent() || channel(Role.LONG_TRIM).isPresent();
    }

    /**
     * This ride with the channels of another logger's log of the same ride, at this ride's rows. Where both have a role that there can be
     * only one of, this ride's is used.
     *
     * @param second the other log
     * @param alignment how its clock runs against this one
     */
    public Ride with(Ride second, ClockAlignment alignment) {
        return RideMerge.of(this, second, alignment);
    }

    /**
     * This ride for logs that write different channels in different rows: missing values of every channel but the readings (mixtures,
     * trims, knock) filled by straight lines between the channel's own samples, flags and gears by the last one; never over a gap or
     * a restart. A reading is never made up.
     */
    public Ride filled() {
        return RideMerge.filled(this);
    }
}
