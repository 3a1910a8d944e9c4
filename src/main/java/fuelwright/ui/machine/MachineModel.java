package fuelwright.ui.machine;

import fuelwright.airflow.BoreForecast;
import fuelwright.airflow.Machine;
import fuelwright.airflow.PlateArea;
import fuelwright.job.FirstStart;
import fuelwright.mixture.Fuel;
import fuelwright.table.Axis;
import fuelwright.ui.session.Runner;
import fuelwright.ui.session.Session;
import fuelwright.ui.session.ShownIn;
import fuelwright.ui.theme.Figures;
import fuelwright.ui.theme.Palette;
import fuelwright.ui.theme.Words;
import java.time.Duration;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import javafx.beans.property.DoubleProperty;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import javafx.beans.property.SimpleDoubleProperty;
import javafx.beans.property.SimpleObjectProperty;
import javafx.beans.property.SimpleStringProperty;
import javafx.beans.property.StringProperty;

/** The stage Machine without its looks: texts of the fields, what is wrong with each, and the machine in the job. */
public final class MachineModel {

    private static final Duration DEBOUNCE = Duration.ofMillis(200);

    private final Session session;
    private final Map<MachineForm.Field, StringProperty> texts = new EnumMap<>(MachineForm.Field.class);
    private final Map<MachineForm.Field, ReadOnlyStringWrapper> problems = new EnumMap<>(MachineForm.Field.class);
    private final ObjectProperty<Fuel> fuel = new SimpleObjectProperty<>(Fuel.PETROL);
    private final StringProperty name = new SimpleStringProperty("");
    private final ReadOnlyStringWrapper consequence = new ReadOnlyStringWrapper("");
    private final ReadOnlyObjectWrapper<Machine> typed = new ReadOnlyObjectWrapper<>(Machine.unknown());
    private final ReadOnlyObjectWrapper<BoreForecastPicture> forecast = new ReadOnlyObjectWrapper<>();
    private final DoubleProperty throttle = new SimpleDoubleProperty(40);
    private Object shownFor = List.of();
    private boolean filling;
    /** What the texts are in. */
    private ShownIn shownIn;

    public MachineModel(Session session) {
        this.session = session;
        this.shownIn = session.shownIn();
        for (MachineForm.Field field : MachineForm.Field.values()) {
            texts.put(field, new SimpleStringProperty(""));
            problems.put(field, new ReadOnlyStringWrapper(""));
            texts.get(field).addListener((p, old, now) -> check());
        }
        fuel.addListener((p, old, now) -> commit());
        session.jobProperty().addListener((p, old, now) -> fill());
        session.whenShownOtherwise(this::showOtherwise);
        session.themeProperty().addListener((p, old, now) -> picture());
        fill();
    }

    private void fill() {
        filling = true;
        MachineForm form = MachineForm.of(session.job(), shownIn);
        // A usual figure that was typed stays as it stands: the machine can't tell it from one that wasn't.
        boolean asTyped =
                form().machine().filter(m -> m.equals(session.job().machine())).isPresent();
        form.texts().forEach((field, text) -> {
            if (!(asTyped && text.isEmpty() && form.usual(field).isPresent())) {
                texts.get(field).set(text);
            }
        });
        fuel.set(form.fuel());
        name.set(session.job().name());
        filling = false;
        check();
        consequence.set(consequence(session.job().machine()));
    }

    /** Ticks what comes before the first start off, or not. */
    void tick(FirstStart check, boolean done) {
        session.edit(job -> {
            Set<FirstStart> all = new HashSet<>(job.firstStart());
            if (done) {
                all.add(check);
            } else {
                all.remove(check);
            }
            return job.withFirstStart(all);
        });
    }

    /** What was typed is taken as what it was typed in. */
    private void showOtherwise() {
        commit();
        ShownIn before = shownIn;
        shownIn = session.shownIn();
        filling = true;
        MachineForm.of(session.job(), shownIn).texts().forEach((field, text) -> {
            if (!field.unit(before).equals(field.unit(shownIn))) {
                texts.get(field).set(text);
            }
        });
        filling = false;
        check();
    }

    private MachineForm form() {
        Map<MachineForm.Field, String> typed = new EnumMap<>(MachineForm.Field.class);
        texts.forEach((field, text) -> typed.put(field, text.get() == null ? "" : text.get()));
        return new MachineForm(
                typed,
                fuel.get(),
                shownIn,
                MachineForm.of(session.job(), shownIn).known());
    }

    private void check() {
        if (filling) {
            return;
        }
        MachineForm form = form();
        problems.forEach((field, problem) -> problem.set(form.problem(field).orElse("")));
        form.withoutProblems().machine().ifPresent(typed::set);
        picture();
    }

    /** Works the forecast of what is typed out anew, a moment later; only the newest counts. */
    private void picture() {
        Machine machine = typed.get();
        Palette palette = session.themeProperty().get().palette();
        Object wanted = List.of(machine, palette);
        if (wanted.equals(shownFor)) {
            return;
        }
        shownFor = wanted;
        session.look(
                Runner.LOOK + "-forecast",
                DEBOUNCE,
                (p, c) -> BoreForecastPicture.of(machine, palette),
                made -> forecast.set(made.orElse(null)));
    }

    /** How far the area opens after over before at the throttle shown; empty where it can't be told. */
    OptionalDouble areaRatio() {
        Machine machine = typed.get();
        if (machine.before().isEmpty() || machine.after().isEmpty()) {
            return OptionalDouble.empty();
        }
        double before = PlateArea.atThrottle(machine.before().get(), throttle.get());
        double after = PlateArea.atThrottle(machine.after().get(), throttle.get());
        return before > 0 ? OptionalDouble.of(after / before) : OptionalDouble.empty();
    }

    /** The machine as it is typed; what can't be is as good as not known. */
    ReadOnlyObjectProperty<Machine> typedProperty() {
        return typed.getReadOnlyProperty();
    }

    /** The forecast for it; null where there is none. */
    ReadOnlyObjectProperty<BoreForecastPicture> forecastProperty() {
        return forecast.getReadOnlyProperty();
    }

    /** The throttle at which the bores are drawn, %. */
    DoubleProperty throttleProperty() {
        return throttle;
    }

    /** Why the forecast leaves the fuel table alone; empty where it doesn't, or where there is none. */
    String tableKeeps() {
        return session.job()
                .fuelTable()
                .filter(t -> t.load().kind() == Axis.Kind.MANIFOLD_PRESSURE)
                .map(t -> BoreForecast.WHY_PRESSURE_TABLES_KEEP + ".")
                .orElse("");
    }

    Session session() {
        return session;
    }

    /** Puts what is typed into the job, if it makes a machine. */
    public void commit() {
        if (filling) {
            return;
        }
        MachineForm form = form();
        if (form.machine().isPresent()) {
            session.edit(job -> form.into(job).orElse(job).withName(kept(name.get(), job.name())));
        }
    }

    private static String kept(String typed, String old) {
        return typed == null || typed.isBlank() ? old : typed.strip();
    }

    /** What the change of bodies means by geometry alone: open area, from bore to bore. */
    private static String consequence(Machine machine) {
        if (machine.before().isEmpty() || machine.after().isEmpty()) {
            return Words.of("machine.consequence.unknown");
        }
        double before = machine.before().get().boreMm();
        double after = machine.after().get().boreMm();
        double percent = 100 * (after * after / (before * before) - 1);
        return Words.of(
                machine.hasBodyChange() ? "machine.consequence" : "machine.consequence.incomplete",
                Figures.shortest(before),
                Figures.shortest(after),
                Figures.signed(percent, 0),
                missing(machine));
    }

    private static String missing(Machine machine) {
        return machine.bodies().isPresent()
                ? Words.of("machine.missing.displacement")
                : Words.of(machine.displacementCc().isPresent() ? "machine.missing.bodies" : "machine.missing.both");
    }

    /** The field as the job has it. */
    String taken(MachineForm.Field field) {
        String job = MachineForm.of(session.job(), shownIn).texts().get(field);
        String now = texts.get(field).get();
        return form().with(field, job).machine().equals(form().machine()) ? now : job;
    }

    /** What a field is called, with the unit that it is typed in. */
    String name(MachineForm.Field field) {
        return Words.of(field.key(), field.unit(shownIn));
    }

    /** What it is for. */
    String tip(MachineForm.Field field) {
        return Words.of(field.key() + ".tip", field.unit(shownIn));
    }

    /** What stands in a field that is empty: what is taken then, or that nothing is known. */
    String prompt(MachineForm.Field field) {
        OptionalDouble usual = form().usual(field);
        return usual.isPresent()
                ? Words.of("machine.usual", Figures.shortest(usual.getAsDouble()))
                : Words.of("machine.unknown");
    }

    StringProperty textProperty(MachineForm.Field field) {
        return texts.get(field);
    }

    /** What is wrong with the field; empty where nothing is. */
    ReadOnlyStringProperty problemProperty(MachineForm.Field field) {
        return problems.get(field).getReadOnlyProperty();
    }

    public ObjectProperty<Fuel> fuelProperty() {
        return fuel;
    }

    /** The job's name. */
    public StringProperty nameProperty() {
        return name;
    }

    public ReadOnlyStringProperty consequenceProperty() {
        return consequence.getReadOnlyProperty();
    }
}
