package fuelwright.job;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import fuelwright.airflow.InjectorSet;
import fuelwright.airflow.Machine;
import fuelwright.airflow.ThrottleBody;
import fuelwright.estimate.Decision;
import fuelwright.estimate.ProposalSettings;
import fuelwright.mixture.Fuel;
import fuelwright.safety.Caution;
import fuelwright.safety.Limit;
import fuelwright.safety.Limits;
import fuelwright.screen.Screen;
import fuelwright.screen.ScreenSettings;
import fuelwright.table.Axis;
import fuelwright.table.Quantity;
import fuelwright.table.Table;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;

/**
 * Everything of a job but its tables' and rides' contents, as JSON; the fields are documented in {@code docs/job-format.md}. What is read
 * back equals what was written. Names that this version doesn't know are passed over and noted.
 */
final class JobJson {

    private JobJson() {}

    static ObjectNode machine(Machine machine) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        machine.displacementCc().ifPresent(v -> node.put("displacementCc", v));
        machine.bodies().ifPresent(v -> node.put("bodies", v));
        machine.before().ifPresent(b -> body(b, node.putObject("before")));
        machine.after().ifPresent(b -> body(b, node.putObject("after")));
        node.put("fuel", machine.fuel().name());
        machine.redlineRpm().ifPresent(v -> node.put("redlineRpm", v));
        machine.injectors().count().ifPresent(v -> node.put("injectors", v));
        machine.injectors().beforeCm3PerMin().ifPresent(v -> node.put("injectorBeforeCm3PerMin", v));
        machine.injectors().afterCm3PerMin().ifPresent(v -> node.put("injectorAfterCm3PerMin", v));
        machine.injectors().deadTimeMs().ifPresent(v -> node.put("injectorDeadTimeMs", v));
        machine.altitudeM().ifPresent(v -> node.put("altitudeM", v));
        return node;
    }

    private static void body(ThrottleBody body, ObjectNode node) {
        node.put("boreMm", body.boreMm());
        node.put("shaftMm", body.shaftMm());
        node.put("closedAngleDeg", body.closedAngleDeg());
        node.put("openAngleDeg", body.openAngleDeg());
    }

    static Machine machine(JsonNode node) {
        return new Machine(
                number(node, "displacementCc"),
                node.has("bodies") ? OptionalInt.of(whole(node, "bodies")) : OptionalInt.empty(),
                body(node.path("before")),
                body(node.path("after")),
                Fuel.valueOf(node.path("fuel").asText(Fuel.PETROL.name())),
                number(node, "redlineRpm"),
                new InjectorSet(
                        node.path("injectors").isInt()
                                ? OptionalInt.of(node.path("injectors").asInt())
                                : OptionalInt.empty(),
                        number(node, "injectorBeforeCm3PerMin"),
                        number(node, "injectorAfterCm3PerMin"),
                        number(node, "injectorDeadTimeMs")),
                number(node, "altitudeM"));
    }

    private static Optional<ThrottleBody> body(JsonNode node) {
        return node.isObject()
                ? Optional.of(new ThrottleBody(
                        needed(node, "boreMm"),
                        needed(node, "shaftMm"),
                        needed(node, "closedAngleDeg"),
                        needed(node, "openAngleDeg")))
                : Optional.empty();
    }

    /** In the order of the work, whatever the set's. */
    static ArrayNode firstStart(Set<FirstStart> done) {
        ArrayNode node = JsonNodeFactory.instance.arrayNode();
        Stream.of(FirstStart.values()).filter(done::contains).forEach(check -> node.add(check.key()));
        return node;
    }

    static Set<FirstStart> firstStart(JsonNode node) {
        Set<FirstStart> done = EnumSet.noneOf(FirstStart.class);
        for (FirstStart check : FirstStart.values()) {
            node.forEach(key -> {
                if (key.asText().equals(check.key())) {
                    done.add(check);
                }
            });
        }
        return done;
    }

    static ObjectNode screens(ScreenSettings s) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        ArrayNode off = node.putArray("off");
        s.off().stream().sorted().forEach(screen -> off.add(screen.name()));
        put(node, "coolantAtLeastC", s.coolantAtLeastC());
        put(node, "speedAtLeastRpm", s.speedAtLeastRpm());
        put(node, "lambdaFrom", s.lambdaFrom());
        put(node, "lambdaTo", s.lambdaTo());
        put(node, "throttleRateAtMost", s.throttleRateAtMost());
        put(node, "speedRateAtMost", s.speedRateAtMost());
        put(node, "afterFuelCutS", s.afterFuelCutS());
        put(node, "frozenS", s.frozenS());
        return node;
    }

    static ScreenSettings screens(JsonNode node) {
        ScreenSettings d = ScreenSettings.defaults();
        Set<Screen> off = EnumSet.noneOf(Screen.class);
        node.path("off").forEach(name -> off.add(Screen.valueOf(name.asText())));
        return new ScreenSettings(
                off,
                number(node, "coolantAtLeastC").orElse(d.coolantAtLeastC()),
                number(node, "speedAtLeastRpm").orElse(d.speedAtLeastRpm()),
                number(node, "lambdaFrom").orElse(d.lambdaFrom()),
                number(node, "lambdaTo").orElse(d.lambdaTo()),
                number(node, "throttleRateAtMost").orElse(d.throttleRateAtMost()),
                number(node, "speedRateAtMost").orElse(d.speedRateAtMost()),
                number(node, "afterFuelCutS").orElse(d.afterFuelCutS()),
                number(node, "frozenS").orElse(d.frozenS()));
    }

    static ObjectNode proposal(ProposalSettings p) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        put(node, "maxAddPercent", p.maxAddPercent());
        put(node, "maxCutPercent", p.maxCutPercent());
        put(node, "step", p.step());
        put(node, "deadTimeMs", p.deadTimeMs());
        node.put("deadTimeTold", p.deadTimeToldMs().isPresent());
        put(node, "richSideZ", p.richSideZ());
        if (p.leanNoCell()) {
            node.put("leanNoCell", true);
        }
        ArrayNode decisions = node.putArray("decisions");
        p.decisions()
                .forEach((cell, d) -> decisions
                        .addObject()
                        .put("cell", cell)
                        .put("kind", d.kind().name())
                        .put("value", d.value()));
        return node;
    }

    static ProposalSettings proposal(JsonNode node) {
        ProposalSettings d = ProposalSettings.defaults();
        Map<Integer, Decision> decisions = new TreeMap<>();
        node.path("decisions")
                .forEach(x -> decisions.put(
                        whole(x, "cell"),
                        new Decision(Decision.Kind.valueOf(x.path("kind").asText()), needed(x, "value"))));
        return new ProposalSettings(
                number(node, "maxAddPercent").orElse(d.maxAddPercent()),
                number(node, "maxCutPercent").orElse(d.maxCutPercent()),
                number(node, "step").orElse(d.step()),
                deadTime(node),
                number(node, "richSideZ").orElse(d.richSideZ()),
                node.path("leanNoCell").asBoolean(),
                decisions);
    }

    /** A 0 of older files may be an answer or none: it is asked once more. */
    private static OptionalDouble deadTime(JsonNode node) {
        OptionalDouble ms = number(node, "deadTimeMs");
        return ms.orElse(0) > 0 || node.path("deadTimeTold").asBoolean() ? ms : OptionalDouble.empty();
    }

    static ObjectNode limits(Limits limits) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        new TreeMap<>(limits.changed()).forEach((limit, value) -> node.put(limit.key(), value));
        return node;
    }

    static Limits limits(JsonNode node, Fuel fuel) {
        Limits limits = Limits.usual(fuel);
        for (Map.Entry<String, JsonNode> entry : node.properties()) {
            Optional<Limit> limit = Limit.ofKey(entry.getKey());
            if (limit.isPresent()) {
                limits = limits.with(limit.get(), needed(node, entry.getKey()));
            }
        }
        return limits;
    }

    static ObjectNode hardware(HardwareProfile h) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        node.put("name", h.name());
        node.put("holds", h.holds().name());
        if (Double.isFinite(h.least())) {
            node.put("least", h.least());
        }
        if (Double.isFinite(h.most())) {
            node.put("most", h.most());
        }
        h.speed().ifPresent(axis -> axis(axis, node.putObject("speed")));
        h.load().ifPresent(axis -> axis(axis, node.putObject("load")));
        h.orientation().ifPresent(o -> node.put("orientation", o.name()));
        h.comma().ifPresent(comma -> node.put("decimalComma", comma));
        node.put("told", h.told());
        h.cells().ifPresent(t -> cells(t, node.putObject("cells")));
        return node;
    }

    private static void cells(Table table, ObjectNode node) {
        node.put("quantity", table.quantity().name());
        axis(table.speed(), node.putObject("speed"));
        axis(table.load(), node.putObject("load"));
        node.put("orientation", table.orientation().name());
        ArrayNode figures = node.putArray("figures");
        for (double figure : table.toArray()) {
            figures.add(figure);
        }
    }

    private static Optional<Table> cells(JsonNode node) {
        if (!node.isObject()) {
            return Optional.empty();
        }
        Quantity quantity = Quantity.valueOf(node.path("quantity").asText());
        if (quantity != Quantity.CHANGE && quantity != Quantity.MULTIPLIER) {
            throw new IllegalArgumentException("the hardware's cells hold " + quantity.words());
        }
        List<Double> figures = new ArrayList<>();
        for (JsonNode figure : node.path("figures")) {
            if (!figure.isNumber()) {
                throw new IllegalArgumentException("a cell of the hardware isn't a number");
            }
            figures.add(figure.asDouble());
        }
        return Optional.of(Table.of(
                        quantity,
                        axis(node.path("speed")).orElseThrow(() -> new IllegalArgumentException("speed is missing")),
                        axis(node.path("load")).orElseThrow(() -> new IllegalArgumentException("load is missing")),
                        figures.stream().mapToDouble(Double::doubleValue).toArray())
                .withOrientation(Table.Orientation.valueOf(
                        node.path("orientation").asText(Table.Orientation.SPEED_DOWN.name()))));
    }

    private static void axis(Axis axis, ObjectNode node) {
        node.put("kind", axis.kind().name());
        ArrayNode breakpoints = node.putArray("breakpoints");
        for (double b : axis.toArray()) {
            breakpoints.add(b);
        }
    }

    static HardwareProfile hardware(JsonNode node) {
        HardwareProfile read = new HardwareProfile(
                node.path("name").asText(""),
                HardwareProfile.Holds.valueOf(node.path("holds").asText(HardwareProfile.Holds.VALUE.name())),
                number(node, "least").orElse(Double.NEGATIVE_INFINITY),
                number(node, "most").orElse(Double.POSITIVE_INFINITY),
                axis(node.path("speed")),
                axis(node.path("load")),
                node.has("orientation")
                        ? Optional.of(Table.Orientation.valueOf(
                                node.get("orientation").asText()))
                        : Optional.empty(),
                comma(node),
                cells(node.path("cells")),
                node.path("told").asBoolean());
        // Older files have what was said without that it was.
        boolean said =
                !node.has("told") && (!read.takesTableAsItIs() || read.comma().isPresent());
        return said ? read.asTold() : read;
    }

    /** A point of older files may be a choice or none: then it is as the logs have it. */
    private static Optional<Boolean> comma(JsonNode node) {
        boolean chosen = node.has("decimalComma")
                && (node.has("told") || node.path("decimalComma").asBoolean());
        return chosen ? Optional.of(node.path("decimalComma").asBoolean()) : Optional.empty();
    }

    private static Optional<Axis> axis(JsonNode node) {
        if (!node.isObject()) {
            return Optional.empty();
        }
        List<Double> all = new ArrayList<>();
        node.path("breakpoints").forEach(b -> all.add(b.asDouble()));
        return Optional.of(new Axis(
                Axis.Kind.valueOf(node.path("kind").asText()),
                all.stream().mapToDouble(Double::doubleValue).toArray()));
    }

    static ArrayNode answers(List<Answer> answers) {
        ArrayNode all = JsonNodeFactory.instance.arrayNode();
        answers.forEach(a -> {
            ObjectNode node = all.addObject()
                    .put("rule", a.rule())
                    .put("title", a.title())
                    .put("kind", a.kind().name())
                    .put("note", a.note());
            a.basis().ifPresent(b -> {
                node.put("level", b.level().name());
                b.cells().forEach(node.putArray("cells")::add);
                if (Double.isFinite(b.worst())) {
                    node.put("worst", b.worst());
                }
                node.put("what", b.what());
                b.extent().ifPresent(e -> {
                    node.put("times", e.times()).put("seconds", e.seconds()).put("worstSpeed", e.speedRpm());
                    if (Double.isFinite(e.load())) {
                        node.put("worstLoad", e.load());
                    }
                });
            });
        });
        return all;
    }

    static List<Answer> answers(JsonNode all) {
        List<Answer> answers = new ArrayList<>();
        all.forEach(a -> answers.add(new Answer(
                a.path("rule").asText(),
                a.path("title").asText(),
                Answer.Kind.valueOf(a.path("kind").asText()),
                a.path("note").asText(),
                basis(a))));
        return answers;
    }

    private static Optional<AnswerBasis.Extent> extent(JsonNode answer) {
        return !answer.has("times")
                ? Optional.empty()
                : Optional.of(new AnswerBasis.Extent(
                        answer.path("times").asInt(),
                        answer.path("seconds").asDouble(),
                        answer.path("worstSpeed").asDouble(),
                        answer.path("worstLoad").asDouble(Double.NaN)));
    }

    private static Optional<AnswerBasis> basis(JsonNode answer) {
        if (!answer.has("level")) {
            return Optional.empty();
        }
        TreeSet<Integer> cells = new TreeSet<>();
        answer.path("cells").forEach(c -> cells.add(c.asInt()));
        return Optional.of(new AnswerBasis(
                Caution.Level.valueOf(answer.path("level").asText()),
                cells,
                answer.path("worst").asDouble(Double.NaN),
                answer.path("what").asText(),
                extent(answer)));
    }

    /** JSON has no infinity and no NaN: words stand for them. */
    private static void put(ObjectNode node, String name, double value) {
        if (Double.isFinite(value)) {
            node.put(name, value);
        } else {
            node.put(name, Double.toString(value));
        }
    }

    /**
     * Empty where it isn't there.
     *
     * @throws IllegalArgumentException if it is there but isn't a number: another figure must not silently take its place
     */
    static OptionalDouble number(JsonNode node, String name) {
        JsonNode value = node.path(name);
        if (value.isMissingNode()) {
            return OptionalDouble.empty();
        }
        if (value.isNumber()) {
            return OptionalDouble.of(value.asDouble());
        }
        switch (value.asText()) {
            case "NaN":
                return OptionalDouble.of(Double.NaN);
            case "Infinity":
                return OptionalDouble.of(Double.POSITIVE_INFINITY);
            case "-Infinity":
                return OptionalDouble.of(Double.NEGATIVE_INFINITY);
            default:
                throw new IllegalArgumentException(name + " isn't a number");
        }
    }

    private static int whole(JsonNode node, String name) {
        JsonNode value = node.path(name);
        if (!value.isIntegralNumber() || !value.canConvertToInt()) {
            throw new IllegalArgumentException(name + " isn't a whole number");
        }
        return value.intValue();
    }

    /** @throws IllegalArgumentException if it isn't there */
    static double needed(JsonNode node, String name) {
        return number(node, name).orElseThrow(() -> new IllegalArgumentException(name + " is missing"));
    }
}
