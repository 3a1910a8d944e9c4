package fuelwright.ui.machine;

import fuelwright.airflow.InjectorSet;
import fuelwright.airflow.Machine;
import fuelwright.airflow.ThrottleBody;
import fuelwright.job.Job;
import fuelwright.mixture.Fuel;
import fuelwright.safety.Limit;
import fuelwright.ui.session.ShownIn;
import fuelwright.ui.theme.Figures;
import fuelwright.ui.theme.Words;
import fuelwright.unit.Measured;
import fuelwright.unit.Unit;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.regex.Pattern;

/**
 * What stands in the form's fields, and the machine that follows from it. Pure.
 *
 * <p>Parts keep the units that they are named and sold by: displacement, bores, shafts, injectors. Another unit may be typed behind a figure.
 *
 * @param texts what is typed; an empty text is 'not known'
 * @param shownIn what texts without a unit are in
 * @param known the job's figures, in the fields' own units
 */
record MachineForm(Map<Field, String> texts, Fuel fuel, ShownIn shownIn, Map<Field, Double> known) {

    /** The fields, with the span that is let in and what may stand behind a figure: the field's own unit first. */
    enum Field {
        DISPLACEMENT(20, 20000, Unit.CUBIC_CENTIMETRE, "cm³", "cm3", "ccm", "cc"),
        BODIES(1, 16),
        REDLINE(500, 25000, "rpm"),
        BORE_BEFORE(5, 200, Unit.MILLIMETRE, "mm"),
        SHAFT_BEFORE(0, 50, Unit.MILLIMETRE, "mm"),
        CLOSED_BEFORE(0, 45, "°", "deg"),
        OPEN_BEFORE(1, 90, "°", "deg"),
        BORE_AFTER(5, 200, Unit.MILLIMETRE, "mm"),
        SHAFT_AFTER(0, 50, Unit.MILLIMETRE, "mm"),
        CLOSED_AFTER(0, 45, "°", "deg"),
        OPEN_AFTER(1, 90, "°", "deg"),
        ALTITUDE(-400, 6000, Unit.METRE, "m"),
        INJECTORS(1, 32),
        INJECTOR_BEFORE(10, 10_000, "cm³/min", "cm3/min", "cc/min"),
        INJECTOR_AFTER(10, 10_000, "cm³/min", "cm3/min", "cc/min"),
        DEAD_TIME(0, 5, "ms"),
        INJECTIONS(1, 4);

        private final double least;
        private final double most;
        private final Unit unit;
        private final Map<String, Unit> behind = new LinkedHashMap<>();

        Field(double least, double most, String... units) {
            this(least, most, Unit.ONE, units);
        }

        Field(double least, double most, Unit unit, String... units) {
            this.least = least;
            this.most = most;
            this.unit = unit;
            for (String word : units) {
                behind.put(word, unit);
            }
            Others.WORDS.forEach((word, other) -> {
                if (other.dimension() == unit.dimension()) {
                    behind.put(word, other);
                }
            });
        }

        /** The unit that stands behind what is typed; empty where none does. */
        private Optional<String> unitBehind(String typed) {
            String small = typed.toLowerCase(java.util.Locale.ROOT);
            return behind.keySet().stream().filter(small::endsWith).findFirst();
        }

        /** In the field's own unit, clear of the crumbs of reckoning. */
        private double own(double figure, Unit typedIn) {
            double own = typedIn == unit ? figure : unit.fromCanonical(typedIn.toCanonical(figure));
            return typedIn == unit ? own : Math.rint(own * 1e6) / 1e6;
        }

        private Measured figure(double value) {
            return Measured.of(value, unit, 0);
        }

        /** The unit that a figure alone is in. */
        String unit(ShownIn shownIn) {
            return shownIn.of(unit).symbol();
        }

        String key() {
            return "machine.field." + name().toLowerCase(java.util.Locale.ROOT);
        }
    }

    /** What else is often read off a part or a map, by the word that is typed; a constant's own class, for fields are made before constants. */
    private static final class Others {
        private static final Map<String, Unit> WORDS = Map.of(
                "in³", Unit.CUBIC_INCH,
                "in3", Unit.CUBIC_INCH,
                "cu in", Unit.CUBIC_INCH,
                "in", Unit.INCH,
                "\"", Unit.INCH,
                "ft", Unit.FOOT);
    }

    private static final Set<Field> WHOLE = EnumSet.of(Field.BODIES, Field.INJECTORS, Field.INJECTIONS);
    private static final Pattern FIGURE = Pattern.compile("[+-]?(\\d+\\.?\\d*|\\.\\d+)");
    private static final double USUAL_SHAFT_MM = 8;
    private static final double USUAL_CLOSED_DEG = 5;
    private static final double USUAL_OPEN_DEG = 85;

    MachineForm {
        texts = java.util.Collections.unmodifiableMap(new EnumMap<>(texts));
        known = Map.copyOf(known);
    }

    static MachineForm of(Machine machine, ShownIn shownIn) {
        Map<Field, String> texts = new EnumMap<>(Field.class);
        for (Field field : Field.values()) {
            texts.put(field, "");
        }
        machine.displacementCc().ifPresent(v -> texts.put(Field.DISPLACEMENT, Figures.shortest(v)));
        machine.bodies().ifPresent(v -> texts.put(Field.BODIES, Integer.toString(v)));
        machine.redlineRpm().ifPresent(v -> texts.put(Field.REDLINE, Figures.shortest(v)));
        machine.before().ifPresent(b -> put(texts, b, Field.BORE_BEFORE));
        machine.after().ifPresent(b -> put(texts, b, Field.BORE_AFTER));
        Map<Field, Double> known = new EnumMap<>(Field.class);
        machine.altitudeM().ifPresent(v -> {
            known.put(Field.ALTITUDE, v);
            texts.put(Field.ALTITUDE, shownIn.field(Field.ALTITUDE.figure(v)));
        });
        machine.injectors().count().ifPresent(v -> texts.put(Field.INJECTORS, Integer.toString(v)));
        machine.injectors().beforeCm3PerMin().ifPresent(v -> texts.put(Field.INJECTOR_BEFORE, Figures.shortest(v)));
        machine.injectors().afterCm3PerMin().ifPresent(v -> texts.put(Field.INJECTOR_AFTER, Figures.shortest(v)));
        machine.injectors().deadTimeMs().ifPresent(v -> texts.put(Field.DEAD_TIME, Figures.shortest(v)));
        return new MachineForm(texts, machine.fuel(), shownIn, known);
    }

    /** With what a job knows of the injection beside its machine. */
    static MachineForm of(Job job, ShownIn shownIn) {
        return of(job.machine(), shownIn)
                .with(Field.INJECTIONS, Figures.shortest(job.limits().of(Limit.INJECTIONS_PER_CYCLE)));
    }

    /** The job with what is typed; empty while any field has a problem. */
    Optional<Job> into(Job job) {
        return machine().map(machine -> {
            Limit perCycle = Limit.INJECTIONS_PER_CYCLE;
            double injections = number(Field.INJECTIONS).orElse(perCycle.usual(machine.fuel()));
            boolean usual = injections == perCycle.usual(machine.fuel());
            return job.withMachine(machine)
                    .withLimits(
                            usual
                                    ? job.limits().without(perCycle)
                                    : job.limits().with(perCycle, injections));
        });
    }

    private static void put(Map<Field, String> texts, ThrottleBody body, Field bore) {
        Field[] all = Field.values();
        texts.put(bore, Figures.shortest(body.boreMm()));
        double[] figures = {body.shaftMm(), body.closedAngleDeg(), body.openAngleDeg()};
        for (int i = 0; i < figures.length; i++) {
            boolean usual = figures[i] == usual(i, body.boreMm());
            texts.put(all[bore.ordinal() + 1 + i], usual ? "" : Figures.shortest(figures[i]));
        }
    }

    /** Shaft, closed and open angle of which nothing is told. */
    private static double usual(int which, double boreMm) {
        return which == 0 ? Math.min(USUAL_SHAFT_MM, boreMm / 4) : which == 1 ? USUAL_CLOSED_DEG : USUAL_OPEN_DEG;
    }

    /** What is taken where a field stays empty; empty where nothing is. */
    OptionalDouble usual(Field field) {
        for (Field bore : List.of(Field.BORE_BEFORE, Field.BORE_AFTER)) {
            int which = field.ordinal() - bore.ordinal() - 1;
            if (which >= 0 && which < 3 && problem(bore).isEmpty()) {
                return number(bore).stream().map(mm -> usual(which, mm)).findFirst();
            }
        }
        return OptionalDouble.empty();
    }

    MachineForm with(Field field, String text) {
        Map<Field, String> other = new EnumMap<>(texts);
        other.put(field, text);
        return new MachineForm(other, fuel, shownIn, known);
    }

    MachineForm with(Fuel other) {
        return new MachineForm(texts, other, shownIn, known);
    }

    /** What is wrong with a field, a sentence; empty where nothing is. */
    Optional<String> problem(Field field) {
        String text = texts.get(field).strip();
        if (text.isEmpty()) {
            return Optional.empty();
        }
        OptionalDouble value = number(field);
        if (value.isEmpty()) {
            return Optional.of(Words.of("machine.nonumber"));
        }
        double v = value.getAsDouble();
        if (!(v >= field.least && v <= field.most) || WHOLE.contains(field) && v != Math.rint(v)) {
            return Optional.of(Words.of(
                    "machine.range",
                    shownIn.field(field.figure(field.least)),
                    shownIn.field(field.figure(field.most))));
        }
        return bodyProblem(field, v);
    }

    private Optional<String> bodyProblem(Field field, double value) {
        Field[] all = Field.values();
        if (field == Field.SHAFT_BEFORE || field == Field.SHAFT_AFTER) {
            double bore = number(all[field.ordinal() - 1]).orElse(Double.POSITIVE_INFINITY);
            return value < bore ? Optional.empty() : Optional.of(Words.of("machine.shaft"));
        }
        if (field == Field.OPEN_BEFORE || field == Field.OPEN_AFTER) {
            double closed = number(all[field.ordinal() - 1]).orElse(USUAL_CLOSED_DEG);
            return value > closed ? Optional.empty() : Optional.of(Words.of("machine.open"));
        }
        return Optional.empty();
    }

    private OptionalDouble number(Field field) {
        String text = texts.get(field).strip();
        Optional<String> behind = field.unitBehind(text);
        String bare = text.substring(
                        0, text.length() - behind.map(String::length).orElse(0))
                .strip();
        try {
            double typed = figure(bare.replace(',', '.').replace('−', '-'));
            double value = behind.isPresent()
                    ? field.own(typed, field.behind.get(behind.get()))
                    : shownIn.typed(
                            typed, field.figure(0), known.getOrDefault(field, Double.NaN), field.least, field.most);
            return Double.isFinite(value) ? OptionalDouble.of(value) : OptionalDouble.empty();
        } catch (NumberFormatException e) {
            return OptionalDouble.empty();
        }
    }

    private OptionalInt whole(Field field) {
        return number(field).stream().mapToInt(v -> (int) v).findFirst();
    }

    /** Digits alone: "5d" and "0x1p3" are numbers only to a compiler. */
    private static double figure(String text) {
        if (!FIGURE.matcher(text).matches()) {
            throw new NumberFormatException(text);
        }
        return Double.parseDouble(text);
    }

    /** The form without what can't be: such a field is as good as empty. */
    MachineForm withoutProblems() {
        MachineForm form = this;
        for (Field field : Field.values()) {
            if (problem(field).isPresent()) {
                form = form.with(field, "");
            }
        }
        return form;
    }

    /** The machine; empty while any field has a problem. */
    Optional<Machine> machine() {
        for (Field field : Field.values()) {
            if (problem(field).isPresent()) {
                return Optional.empty();
            }
        }
        try {
            return Optional.of(new Machine(
                    number(Field.DISPLACEMENT),
                    whole(Field.BODIES),
                    body(Field.BORE_BEFORE),
                    body(Field.BORE_AFTER),
                    fuel,
                    number(Field.REDLINE),
                    new InjectorSet(
                            whole(Field.INJECTORS),
                            number(Field.INJECTOR_BEFORE),
                            number(Field.INJECTOR_AFTER),
                            number(Field.DEAD_TIME)),
                    number(Field.ALTITUDE)));
        } catch (IllegalArgumentException e) {
            return Optional.empty();
        }
    }

    private Optional<ThrottleBody> body(Field bore) {
        Field[] all = Field.values();
        OptionalDouble mm = number(bore);
        if (mm.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(new ThrottleBody(
                mm.getAsDouble(),
                number(all[bore.ordinal() + 1]).orElse(usual(0, mm.getAsDouble())),
                number(all[bore.ordinal() + 2]).orElse(usual(1, mm.getAsDouble())),
                number(all[bore.ordinal() + 3]).orElse(usual(2, mm.getAsDouble()))));
    }
}
