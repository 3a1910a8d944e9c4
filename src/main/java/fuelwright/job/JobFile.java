package fuelwright.job;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import fuelwright.airflow.Machine;
import fuelwright.issue.Issue;
import fuelwright.issue.Loaded;
import fuelwright.mixture.MixtureScale;
import fuelwright.ride.ClockAlignment;
import fuelwright.ride.RideOptions;
import fuelwright.table.Table;
import fuelwright.table.TableReader;
import fuelwright.table.TableWriter;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.zip.ZipEntry;
import java.util.zip.ZipException;
import java.util.zip.ZipFile;
import java.util.zip.ZipInputStream;
import java.util.zip.ZipOutputStream;

/**
 * The bytes of a job file: a zip archive of {@code job.json}, the tables as neutral CSV and, where they are carried along, the rides' logs
 * as they were. Format: {@code docs/job-format.md}. The same job gives the same bytes: no clock, no machine name, entries in a fixed
 * order. Nothing is ever unpacked to a path that the archive names.
 */
public final class JobFile {

    private static final String SECOND_RATIO = "secondAfrScale";

    /** The version that is written; every version up to it can be read. */
    public static final int VERSION = 2;

    /** What a job file's name ends in. */
    public static final String SUFFIX = ".fwjob";

    private static final String FORMAT = "fuelwright job";
    private static final String MAIN = "job.json";
    private static final int MOST_ENTRIES = 2000;
    private static final long MOST_BYTES = 2L << 30;
    private static final int MOST_BYTES_OF_TEXT = 32 << 20;
    private static final ObjectMapper MAPPER = new ObjectMapper().enable(SerializationFeature.INDENT_OUTPUT);
    /** Not the first moment that a zip archive can name: with that one the machine's time zone is written, too. */
    private static final LocalDateTime NO_TIME = LocalDateTime.of(1980, 2, 1, 0, 0);

    private JobFile() {}

    /** @param stored the job and its rides' logs */
    public static byte[] write(StoredJob stored) {
        Map<String, byte[]> entries = new LinkedHashMap<>();
        Tables tables = new Tables();
        ObjectNode root = MAPPER.createObjectNode();
        Job job = stored.job();
        root.put("format", FORMAT).put("version", VERSION).put("name", job.name());
        root.set("machine", JobJson.machine(job.machine()));
        job.fuelTable().ifPresent(t -> root.put("fuelTable", tables.name(t, "fuel")));
        job.targetTable().ifPresent(t -> root.put("targetTable", tables.name(t, "target")));
        root.put("displayRatio", job.displayRatio());
        job.targetRatio().ifPresent(ratio -> root.put("targetRatio", ratio));
        ArrayNode past = root.putArray("past");
        for (PastTable each : job.past()) {
            ObjectNode node = past.addObject();
            node.put("table", tables.name(each.table(), "past"));
            node.put("ridesSoFar", each.ridesSoFar());
            if (Double.isFinite(each.promisedErrorPercent())) {
                node.put("promisedErrorPercent", each.promisedErrorPercent());
            }
        }
        ArrayNode rides = root.putArray("rides");
        Map<String, byte[]> logs = new LinkedHashMap<>();
        for (StoredRide ride : stored.rides()) {
            ObjectNode node = rides.addObject();
            node.put("name", ride.name());
            log(ride.first(), node.putObject("log"), "rides/" + rides.size() + "/first.log", logs);
            ride.second()
                    .ifPresent(s -> log(s, node.putObject("secondLog"), "rides/" + rides.size() + "/second.log", logs));
            ride.byHand()
                    .ifPresent(a -> node.putObject("clockByHand")
                            .put("offsetS", a.offsetS())
                            .put("drift", a.drift()));
            ObjectNode reading = node.putObject("reading");
            OptionsJson.write(ride.options(), reading);
            if (ride.second().isPresent() && !reading.has(SECOND_RATIO)) {
                reading.putNull(SECOND_RATIO);
            }
            ride.madeWith().ifPresent(t -> node.put("madeWith", tables.name(t, "past")));
        }
        root.set("firstStart", JobJson.firstStart(job.firstStart()));
        root.set("screens", JobJson.screens(job.screens()));
        root.set("proposal", JobJson.proposal(job.proposal()));
        root.set("limits", JobJson.limits(job.limits()));
        root.set("hardware", JobJson.hardware(job.hardware()));
        root.set("answers", JobJson.answers(job.answers()));
        stored.results().ifPresent(r -> ResultsJson.write(r, root.putObject("results")));
        try {
            entries.put(MAIN, MAPPER.writeValueAsBytes(root));
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("a job can't be written as JSON", e);
        }
        entries.putAll(tables.files);
        entries.putAll(logs);
        return zip(entries);
    }

    private static void log(StoredRide.Log log, ObjectNode node, String entry, Map<String, byte[]> logs) {
        node.put("name", log.name()).put("sha256", log.sha256());
        if (log.content().isPresent()) {
            node.put("inside", entry);
            logs.put(entry, log.content().get());
        } else {
            node.put("path", log.path());
        }
    }

    private static byte[] zip(Map<String, byte[]> entries) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ZipOutputStream zip = new ZipOutputStream(bytes, StandardCharsets.UTF_8)) {
            for (Map.Entry<String, byte[]> each : entries.entrySet()) {
                ZipEntry entry = new ZipEntry(each.getKey());
                entry.setTimeLocal(NO_TIME);
                zip.putNextEntry(entry);
                zip.write(each.getValue());
                zip.closeEntry();
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return bytes.toByteArray();
    }

    /** The tables by entry name, each once. */
    private static final class Tables {
        private final Map<String, byte[]> files = new LinkedHashMap<>();
        private final Map<Table, String> names = new LinkedHashMap<>();

        String name(Table table, String kind) {
            return names.computeIfAbsent(table, t -> {
                String name = "tables/" + kind + (kind.equals("past") ? "-" + (names.size() + 1) : "") + ".csv";
                files.put(name, TableWriter.write(t).getBytes(StandardCharsets.UTF_8));
                return name;
            });
        }
    }

    /**
     * Reads a job file.
     *
     * @param file its name, for messages
     * @return the job without its rides' columns; refused where it isn't a job file, is damaged, or is of a later version
     */
    public static Loaded<StoredJob> read(String file, byte[] bytes) {
        try {
            return read(file, unzip(bytes));
        } catch (IOException | IllegalArgumentException e) {
            return damaged(file);
        }
    }

    /**
     * Reads a job file without its rides' logs: they are neither unpacked nor checked, and stand as rides without content. For looking through
     * many files; what it gives must not be saved.
     *
     * @throws IOException if the file can't be read at all
     */
    public static Loaded<StoredJob> readWithoutLogs(Path path) throws IOException {
        String file = String.valueOf(path.getFileName());
        Map<String, byte[]> entries = new LinkedHashMap<>();
        try (ZipFile zip = new ZipFile(path.toFile())) {
            for (ZipEntry entry : Collections.list(zip.entries())) {
                try (InputStream content = zip.getInputStream(entry)) {
                    put(entries, entry.getName(), isLog(entry.getName()) ? new byte[0] : text(content));
                }
            }
        } catch (ZipException | IllegalArgumentException e) {
            return damaged(file);
        }
        return read(file, entries);
    }

    private static Loaded<StoredJob> damaged(String file) {
        return refused(file, "this isn't a job file, or it is damaged", "Give a file that this program saved");
    }

    private static Loaded<StoredJob> read(String file, Map<String, byte[]> entries) {
        byte[] main = entries.get(MAIN);
        if (main == null) {
            return refused(file, "this isn't a job file: it has no " + MAIN, "Give a file that this program saved");
        }
        try {
            JsonNode root = MAPPER.readTree(main);
            if (!FORMAT.equals(root.path("format").asText())) {
                return refused(
                        file,
                        "this isn't a job file: it doesn't call itself one",
                        "Give a file that this program saved");
            }
            int version = root.path("version").asInt(-1);
            if (version > VERSION) {
                return refused(
                        file,
                        "it was saved by a later version of this program (format " + version + ", known: up to "
                                + VERSION + ")",
                        "Open it with that version");
            }
            if (version < 1) {
                return refused(file, "it has no format version", "Give a file that this program saved");
            }
            return read(file, root, entries);
        } catch (IOException e) {
            return refused(file, "its " + MAIN + " is damaged", "Take the last good copy of the job");
        } catch (IllegalArgumentException e) {
            return refused(
                    file,
                    "it holds what can't be: " + e.getMessage(),
                    "Take the last good copy of the job, or mend its " + MAIN);
        }
    }

    private static Loaded<StoredJob> read(String file, JsonNode root, Map<String, byte[]> entries) {
        List<Issue> issues = new ArrayList<>();
        Job job = Job.empty()
                .withName(root.path("name").asText(Job.empty().name()))
                .withMachine(machine(root))
                .withFirstStart(JobJson.firstStart(root.path("firstStart")))
                .withScreens(JobJson.screens(root.path("screens")))
                .withProposal(JobJson.proposal(root.path("proposal")))
                .withHardware(JobJson.hardware(root.path("hardware")))
                .withAnswers(JobJson.answers(root.path("answers")))
                .withDisplayRatio(JobJson.number(root, "displayRatio").orElse(MixtureScale.USUAL_DISPLAY_RATIO));
        job = job.withTargetRatio(targetRatio(root, job.displayRatio()));
        job = job.withLimits(JobJson.limits(root.path("limits"), job.machine().fuel()));
        Optional<Table> fuel = table(file, root.path("fuelTable"), entries, issues);
        Optional<Table> target = table(file, root.path("targetTable"), entries, issues);
        job = fuel.map(job::withFuelTable).orElse(job);
        job = target.map(job::withTargetTable).orElse(job);
        List<PastTable> past = new ArrayList<>();
        for (JsonNode each : root.path("past")) {
            table(file, each.path("table"), entries, issues)
                    .ifPresent(t -> past.add(new PastTable(
                            t,
                            each.path("ridesSoFar").asInt(),
                            JobJson.number(each, "promisedErrorPercent").orElse(Double.NaN))));
        }
        job = job.withPast(past);
        List<StoredRide> rides = new ArrayList<>();
        for (JsonNode each : root.path("rides")) {
            rides.add(new StoredRide(
                    each.path("name").asText(),
                    log(file, each.path("log"), entries, issues),
                    each.has("secondLog")
                            ? Optional.of(log(file, each.path("secondLog"), entries, issues))
                            : Optional.empty(),
                    each.has("clockByHand")
                            ? Optional.of(ClockAlignment.byHand(
                                    JobJson.needed(each.path("clockByHand"), "offsetS"),
                                    JobJson.needed(each.path("clockByHand"), "drift")))
                            : Optional.empty(),
                    reading(each),
                    table(file, each.path("madeWith"), entries, issues)));
        }
        if (issues.stream().anyMatch(i -> i.severity() == Issue.Severity.ERROR)) {
            return Loaded.refused(issues);
        }
        return Loaded.of(new StoredJob(job, rides, results(file, root.path("results"), fuel, issues)), issues);
    }

    /** Where nothing is said of a second logger's ratio, not even that it is untold, the file is of before: both logs had the first one's. */
    private static RideOptions reading(JsonNode ride) {
        RideOptions options = OptionsJson.read(ride.path("reading"));
        return ride.has("secondLog") && !ride.path("reading").has(SECOND_RATIO)
                ? options.withSecondAfrScale(options.afrScale())
                : options;
    }

    /** Up to version 1 the form began with one body: where no bore was given, that was said by nobody. */
    private static Machine machine(JsonNode root) {
        Machine machine = JobJson.machine(root.path("machine"));
        boolean untouched = root.path("version").asInt() < 2
                && machine.bodies().equals(OptionalInt.of(1))
                && machine.before().isEmpty()
                && machine.after().isEmpty();
        return untouched ? machine.withBodies(OptionalInt.empty()) : machine;
    }

    /** Up to version 1 one ratio served the displays and the target; one that nobody had changed was told by nobody. */
    private static OptionalDouble targetRatio(JsonNode root, double displayRatio) {
        if (root.path("version").asInt() > 1) {
            return JobJson.number(root, "targetRatio");
        }
        return displayRatio == MixtureScale.USUAL_DISPLAY_RATIO
                ? OptionalDouble.empty()
                : OptionalDouble.of(displayRatio);
    }

    /** Results follow from the job: where they are damaged the job is still whole. */
    private static Optional<Results> results(String file, JsonNode node, Optional<Table> fuel, List<Issue> issues) {
        if (!node.isObject() || fuel.isEmpty()) {
            return Optional.empty();
        }
        try {
            return Optional.of(ResultsJson.read(node, fuel.get().cells()));
        } catch (IllegalArgumentException e) {
            issues.add(Issue.warning(
                    file, 0, 0, "its results are damaged: " + e.getMessage(), "Open it and save it again"));
            return Optional.empty();
        }
    }

    private static Optional<Table> table(String file, JsonNode name, Map<String, byte[]> entries, List<Issue> issues) {
        if (!name.isTextual()) {
            return Optional.empty();
        }
        byte[] bytes = entries.get(name.asText());
        if (bytes == null) {
            issues.add(Issue.error(
                    file, 0, 0, "its table " + name.asText() + " is missing", "Take the last good copy of the job"));
            return Optional.empty();
        }
        Loaded<Table> loaded = TableReader.read(file + " " + name.asText(), bytes);
        loaded.issues().stream()
                .filter(i -> i.severity() == Issue.Severity.ERROR)
                .forEach(issues::add);
        return loaded.value();
    }

    private static StoredRide.Log log(String file, JsonNode node, Map<String, byte[]> entries, List<Issue> issues) {
        Optional<byte[]> content = Optional.empty();
        if (node.has("inside")) {
            content = Optional.ofNullable(entries.get(node.path("inside").asText()));
            if (content.isEmpty()) {
                issues.add(Issue.error(
                        file,
                        0,
                        0,
                        "its ride " + node.path("name").asText() + " is missing",
                        "Take the last good copy of the job"));
            }
        }
        return new StoredRide.Log(
                node.path("name").asText("ride"),
                node.path("path").asText(""),
                node.path("sha256").asText(""),
                content);
    }

    /** Everything in the archive, in memory; refuses what is far more than a job can hold. */
    private static Map<String, byte[]> unzip(byte[] bytes) throws IOException {
        Map<String, byte[]> entries = new LinkedHashMap<>();
        long total = 0;
        try (ZipInputStream zip = new ZipInputStream(new ByteArrayInputStream(bytes), StandardCharsets.UTF_8)) {
            for (ZipEntry entry = zip.getNextEntry(); entry != null; entry = zip.getNextEntry()) {
                byte[] content = isLog(entry.getName())
                        ? atMost((int) Math.min(Integer.MAX_VALUE - 16, MOST_BYTES - total), zip)
                        : text(zip);
                total += content.length;
                put(entries, entry.getName(), content);
            }
        }
        return entries;
    }

    private static boolean isLog(String entry) {
        return entry.startsWith("rides/");
    }

    private static byte[] text(InputStream from) throws IOException {
        return atMost(MOST_BYTES_OF_TEXT, from);
    }

    private static byte[] atMost(int most, InputStream from) throws IOException {
        byte[] content = from.readNBytes(most);
        if (from.read() >= 0) {
            throw new ZipException("more than a job can hold");
        }
        return content;
    }

    private static void put(Map<String, byte[]> entries, String name, byte[] content) throws IOException {
        if (entries.size() >= MOST_ENTRIES) {
            throw new ZipException("more than a job can hold");
        }
        entries.put(name, content);
    }

    private static Loaded<StoredJob> refused(String file, String what, String todo) {
        return Loaded.refused(Issue.error(file, 0, 0, what, todo));
    }
}
