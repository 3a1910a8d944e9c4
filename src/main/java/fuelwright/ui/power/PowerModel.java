package fuelwright.ui.power;

import fuelwright.airflow.PowerCorrection;
import fuelwright.issue.Issue;
import fuelwright.issue.Loaded;
import fuelwright.job.JobRide;
import fuelwright.power.AirOfTheDay;
import fuelwright.power.RoadLoad;
import fuelwright.ride.Ride;
import fuelwright.ui.session.Session;
import fuelwright.ui.session.ShownIn;
import fuelwright.ui.theme.Figures;
import fuelwright.ui.theme.Parts;
import fuelwright.ui.theme.Words;
import fuelwright.unit.Measured;
import fuelwright.unit.Unit;
import fuelwright.work.PowerPulls;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;

/** The job's pulls by what is typed: road load, air of the day, standard. */
public final class PowerModel {

    private static final String LANE = "look.power";

    /** What is typed, with its bounds. */
    enum Field {
        MASS(50, 5000, Unit.KILOGRAM),
        DRAG(0, 5, Unit.SQUARE_METRE),
        ROLLING(0, 0.1, Unit.ONE),
        TEMPERATURE(-40, 60, Unit.CELSIUS),
        PRESSURE(45, 115, Unit.KILOPASCAL),
        HUMIDITY(0, 100, Unit.PERCENT);

        private final double least;
        private final double most;
        private final Unit unit;

        Field(double least, double most, Unit unit) {
            this.least = least;
            this.most = most;
            this.unit = unit;
        }

        private Measured figure(double value) {
            return Measured.of(value, unit, 0);
        }
    }

    /**
     * @param outcome curves, and the comparison where two rides have one; empty where no ride has
     * @param issues why not, for each ride or pull without
     */
    record Shown(Optional<PowerPulls.Outcome> outcome, List<Issue> issues) {}

    private final Session session;
    private final Map<Field, String> texts = new EnumMap<>(Field.class);
    /** What stood in a field before its unit changed. */
    private final Map<Field, Double> meant = new EnumMap<>(Field.class);

    private final ReadOnlyObjectWrapper<Shown> shown =
            new ReadOnlyObjectWrapper<>(new Shown(Optional.empty(), List.of()));
    private Optional<PowerCorrection> standard = Optional.empty();
    /** What the texts are in. */
    private ShownIn shownIn;

    public PowerModel(Session session) {
        this.session = session;
        for (Field field : Field.values()) {
            texts.put(field, "");
        }
        shownIn = session.shownIn();
        show(Field.DRAG, RoadLoad.USUAL_DRAG_AREA_M2);
        show(Field.ROLLING, RoadLoad.USUAL_ROLLING);
        session.whenShownOtherwise(this::showOtherwise);
    }

    private void show(Field field, double value) {
        meant.put(field, value);
        texts.put(field, shownIn.field(field.figure(value)));
    }

    /** What is typed stays the same quantity when it is shown in another unit; what is no number stays as it stands. */
    private void showOtherwise() {
        Map<Field, Double> figures = new EnumMap<>(Field.class);
        for (Field field : Field.values()) {
            figure(field).ifPresent(value -> figures.put(field, value));
        }
        shownIn = session.shownIn();
        figures.forEach(this::show);
    }

    /** What a field is called, with the unit that it is typed in. */
    String name(Field field) {
        return Words.of(
                "power.field." + field.name().toLowerCase(Locale.ROOT),
                shownIn.of(field.unit).symbol());
    }

    Session session() {
        return session;
    }

    String text(Field field) {
        return texts.get(field);
    }

    void type(Field field, String text) {
        texts.put(field, text);
        workOut();
    }

    void choose(Optional<PowerCorrection> chosen) {
        standard = chosen;
        workOut();
    }

    ReadOnlyObjectProperty<Shown> shownProperty() {
        return shown.getReadOnlyProperty();
    }

    /** Why there is no curve, a sentence each; pulls of one ride that fail alike are told once. */
    static List<String> refusals(List<Issue> issues) {
        Map<String, List<Issue>> alike = new LinkedHashMap<>();
        issues.forEach(i -> alike.computeIfAbsent(i.file() + '\n' + i.todo(), k -> new ArrayList<>())
                .add(i));
        return alike.values().stream()
                .map(all -> Parts.sentence(all.get(0).sentence())
                        + (all.size() > 1 ? " " + Words.of("power.more", all.size() - 1) : ""))
                .toList();
    }

    /**
     * Why there is no curve.
     *
     * @param title in a few words
     * @param sentences what to do, or why not ride by ride
     */
    record WhyNot(String title, List<String> sentences) {
        WhyNot {
            sentences = List.copyOf(sentences);
        }
    }

    /** Why nothing is shown. */
    WhyNot whyNot() {
        if (session.job().rides().isEmpty()) {
            return new WhyNot(Words.of("power.norides"), List.of(Words.of("power.norides.todo")));
        }
        return new WhyNot(
                Words.of(settings().isEmpty() ? "power.fill" : "power.none"),
                refusals(shown.get().issues()));
    }

    /** An uncertainty; empty where it would be shown as none at all. */
    static String plusMinus(double error) {
        String text = Figures.plusMinus(error, 1);
        return text.equals("±0.0") ? "" : text;
    }

    /** Whether a field counts: the air of the day only with a standard, and in a road pull's drag. */
    boolean counts(Field field) {
        boolean air = field == Field.TEMPERATURE || field == Field.PRESSURE || field == Field.HUMIDITY;
        return !air || standard.isPresent() || !texts.get(Field.MASS).isBlank();
    }

    /** What is wrong with a field, a sentence. */
    Optional<String> problem(Field field) {
        if (!counts(field)) {
            return Optional.empty();
        }
        String text = texts.get(field).strip();
        if (text.isEmpty()) {
            boolean needed = standard.isPresent() && (field == Field.TEMPERATURE || field == Field.PRESSURE);
            return needed ? Optional.of(Words.of("power.needed")) : Optional.empty();
        }
        Optional<Double> value = number(field);
        if (value.isEmpty()) {
            return Optional.of(Words.of("machine.nonumber"));
        }
        boolean within = value.get() >= field.least && value.get() <= field.most;
        return within
                ? Optional.empty()
                : Optional.of(Words.of(
                        "machine.range",
                        shownIn.field(field.figure(field.least)),
                        shownIn.field(field.figure(field.most))));
    }

    private Optional<Double> number(Field field) {
        return counts(field) ? figure(field) : Optional.empty();
    }

    private Optional<Double> figure(Field field) {
        try {
            double typed = Double.parseDouble(
                    texts.get(field).strip().replace(',', '.').replace('−', '-'));
            double value = shownIn.typed(
                    typed, field.figure(0), meant.getOrDefault(field, Double.NaN), field.least, field.most);
            return Double.isFinite(value) ? Optional.of(value) : Optional.empty();
        } catch (NumberFormatException e) {
            return Optional.empty();
        }
    }

    /** What is typed; empty while a field has a problem. */
    Optional<PowerPulls.Settings> settings() {
        for (Field field : Field.values()) {
            if (problem(field).isPresent()) {
                return Optional.empty();
            }
        }
        Optional<AirOfTheDay> air = number(Field.TEMPERATURE)
                .flatMap(t -> number(Field.PRESSURE)
                        .map(p -> new AirOfTheDay(t, p, number(Field.HUMIDITY).orElse(0.0))));
        Optional<RoadLoad> road = number(Field.MASS)
                .map(m -> new RoadLoad(
                        m,
                        RoadLoad.USUAL_ROTATING,
                        number(Field.ROLLING).orElse(RoadLoad.USUAL_ROLLING),
                        number(Field.DRAG).orElse(RoadLoad.USUAL_DRAG_AREA_M2),
                        air.map(AirOfTheDay::densityKgPerM3).orElse(RoadLoad.USUAL_DENSITY)));
        return Optional.of(new PowerPulls.Settings(road, standard, air));
    }

    /** Makes the curves again, in the background. While a field has a problem nothing is shown. */
    void workOut() {
        Optional<PowerPulls.Settings> settings = settings();
        List<Ride> rides = session.job().rides().stream().map(JobRide::ride).toList();
        session.look(
                LANE,
                (progress, cancellation) ->
                        settings.map(s -> of(rides, s)).orElse(new Shown(Optional.empty(), List.of())),
                shown::set);
    }

    /** Rides without pulls don't stand in the way of those that have some. */
    static Shown of(List<Ride> rides, PowerPulls.Settings settings) {
        Loaded<PowerPulls.Outcome> found = PowerPulls.firstAndLast(rides, settings);
        return new Shown(found.value(), found.issues());
    }
}
