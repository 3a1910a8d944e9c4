package fuelwright.ui.tables;

import fuelwright.airflow.HighLoad;
import fuelwright.job.Job;
import fuelwright.mixture.Fuel;
import fuelwright.table.Table;
import fuelwright.ui.session.Mixture;
import fuelwright.ui.theme.Words;
import fuelwright.unit.Sentence;
import fuelwright.work.MakeTarget;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import javafx.beans.property.BooleanProperty;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import javafx.beans.property.SimpleBooleanProperty;
import javafx.beans.property.SimpleObjectProperty;
import javafx.beans.property.SimpleStringProperty;
import javafx.beans.property.StringProperty;

/** Making a target table from a few choices, without its looks: seen on the map before it is taken. Figures are typed as they are shown. */
public final class TargetModel {

    private final TablesModel model;
    private final BooleanProperty open = new SimpleBooleanProperty();
    private final StringProperty idle = new SimpleStringProperty("");
    private final StringProperty cruise = new SimpleStringProperty("");
    private final StringProperty fullLoad = new SimpleStringProperty("");
    private final ObjectProperty<Fuel> fuel = new SimpleObjectProperty<>(Fuel.PETROL);
    private final ReadOnlyStringWrapper problem = new ReadOnlyStringWrapper("");
    private final ReadOnlyObjectWrapper<Table> preview = new ReadOnlyObjectWrapper<>();
    /** The lambda behind a figure that stands as it was shown. */
    private final Map<StringProperty, Double> meant = new IdentityHashMap<>();
    /** What the figures are in. */
    private Mixture shownAs;

    private boolean filling;

    TargetModel(TablesModel model) {
        this.model = model;
        shownAs = model.session().mixture();
        idle.addListener((p, old, now) -> work());
        cruise.addListener((p, old, now) -> work());
        fullLoad.addListener((p, old, now) -> work());
        fuel.addListener((p, old, now) -> usual());
        open.addListener((p, old, now) -> begin());
        model.session().jobProperty().addListener((p, old, now) -> work());
        model.session().afrProperty().addListener((p, old, now) -> {
            if (open.get()) {
                showOtherwise();
            }
        });
    }

    /** Whether there is a fuel table whose axes it can have. */
    public boolean isPossible() {
        return model.session().job().fuelTable().isPresent();
    }

    private void begin() {
        if (!open.get()) {
            preview.set(null);
            return;
        }
        filling = true;
        fuel.set(model.session().job().machine().fuel());
        filling = false;
        usual();
    }

    /** What is usual with the fuel. */
    private void usual() {
        if (filling || !open.get()) {
            return;
        }
        shownAs = model.session().mixture();
        MakeTarget.Choices choices = MakeTarget.Choices.usual(fuel.get());
        filling = true;
        show(idle, choices.idle());
        show(cruise, choices.cruise());
        show(fullLoad, choices.fullLoad());
        filling = false;
        work();
    }

    private void show(StringProperty text, double lambda) {
        meant.put(text, lambda);
        text.set(shownAs.figure(lambda));
    }

    /** What was chosen stays what it is, in the notation that is shown now. */
    private void showOtherwise() {
        filling = true;
        Map<StringProperty, Double> chosen = new IdentityHashMap<>();
        for (StringProperty text : List.of(idle, cruise, fullLoad)) {
            lambda(text).ifPresent(lambda -> chosen.put(text, lambda));
        }
        shownAs = model.session().mixture();
        chosen.forEach(this::show);
        filling = false;
        work();
    }

    private void work() {
        if (filling || !open.get()) {
            return;
        }
        Job job = model.session().job();
        OptionalDouble a = lambda(idle);
        OptionalDouble b = lambda(cruise);
        OptionalDouble c = lambda(fullLoad);
        if (a.isEmpty() || b.isEmpty() || c.isEmpty() || job.fuelTable().isEmpty()) {
            problem.set(Words.of(job.fuelTable().isEmpty() ? "tables.make.nofuel" : "tables.make.nonumber"));
            preview.set(null);
            return;
        }
        MakeTarget.Choices choices =
                new MakeTarget.Choices(a.getAsDouble(), b.getAsDouble(), c.getAsDouble(), fuel.get());
        Optional<Sentence> wrong = choices.problem();
        problem.set(wrong.map(w -> w.in(model.session().shownIn()) + ".").orElse(""));
        preview.set(
                wrong.isPresent() ? null : MakeTarget.of(job.fuelTable().get(), HighLoad.of(job.machine()), choices));
    }

    private OptionalDouble lambda(StringProperty text) {
        Double known = meant.get(text);
        if (known != null && shownAs.figure(known).equals(text.get())) {
            return OptionalDouble.of(known);
        }
        OptionalDouble typed = CellFigures.number(text.get());
        return typed.isPresent() ? OptionalDouble.of(typed.getAsDouble() / shownAs.scale()) : typed;
    }

    /** Puts it into the job, with the fuel, as one step. */
    public void take() {
        Table made = preview.get();
        if (made == null) {
            return;
        }
        Fuel chosen = fuel.get();
        open.set(false);
        model.session()
                .edit(job -> job.withNewTarget(made).withMachine(job.machine().with(chosen)));
    }

    /** Whether it is being made. */
    public BooleanProperty openProperty() {
        return open;
    }

    public StringProperty idleProperty() {
        return idle;
    }

    public StringProperty cruiseProperty() {
        return cruise;
    }

    public StringProperty fullLoadProperty() {
        return fullLoad;
    }

    public ObjectProperty<Fuel> fuelProperty() {
        return fuel;
    }

    /** Why it can't be made; empty where it can. */
    public ReadOnlyStringProperty problemProperty() {
        return problem.getReadOnlyProperty();
    }

    /** What would be taken; null where there is nothing. */
    public ReadOnlyObjectProperty<Table> previewProperty() {
        return preview.getReadOnlyProperty();
    }
}
