package fuelwright.ui.handover;

import fuelwright.handover.HardwareTable;
import fuelwright.issue.Loaded;
import fuelwright.job.CellsNow;
import fuelwright.job.HardwareProfile;
import fuelwright.job.Job;
import fuelwright.safety.Caution;
import fuelwright.table.Axis;
import fuelwright.table.Table;
import fuelwright.ui.session.Session;
import fuelwright.ui.session.TableWords;
import fuelwright.ui.theme.Parts;
import fuelwright.ui.theme.Words;
import fuelwright.work.Analysis;
import fuelwright.work.CheckEntry;
import java.nio.file.Path;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import javafx.beans.property.SimpleStringProperty;
import javafx.beans.property.StringProperty;

/** What the tuning hardware takes, without its looks. What is chosen counts at once, what is typed once the field is left. */
public final class HardwareModel {

    private static final Set<HardwareForm.Field> IN_ITS_UNIT =
            EnumSet.of(HardwareForm.Field.STEP, HardwareForm.Field.LEAST, HardwareForm.Field.MOST);

    private final Session session;
    private final ReadOnlyObjectWrapper<HardwareForm> form = new ReadOnlyObjectWrapper<>();
    private final Map<HardwareForm.Field, StringProperty> texts = new EnumMap<>(HardwareForm.Field.class);
    private final Map<HardwareForm.Field, ReadOnlyStringWrapper> problems = new EnumMap<>(HardwareForm.Field.class);
    private final ReadOnlyStringWrapper cost = new ReadOnlyStringWrapper("");
    private final ReadOnlyStringWrapper fileProblem = new ReadOnlyStringWrapper("");
    private final ReadOnlyObjectWrapper<Optional<CellsNow>> now = new ReadOnlyObjectWrapper<>(Optional.empty());
    private final ReadOnlyStringWrapper nowProblem = new ReadOnlyStringWrapper("");
    private final ReadOnlyObjectWrapper<List<Caution>> cautions = new ReadOnlyObjectWrapper<>(List.of());
    /** What was typed in the unit of each thing that hardware holds. */
    private final Map<HardwareProfile.Holds, Map<HardwareForm.Field, String>> inUnit =
            new EnumMap<>(HardwareProfile.Holds.class);

    private boolean filling;

    HardwareModel(Session session) {
        this.session = session;
        for (HardwareForm.Field field : HardwareForm.Field.values()) {
            texts.put(field, new SimpleStringProperty(""));
            problems.put(field, new ReadOnlyStringWrapper(""));
            texts.get(field).addListener((p, old, now) -> typed(field, now));
        }
        session.jobProperty().addListener((p, old, now) -> {
            if (!now.fuelTable().equals(old.fuelTable())) {
                inUnit.clear();
            }
            if (!session.job().equals(old)) {
                fill(now);
            }
        });
        session.analysisProperty().addListener((p, old, now) -> say(now));
        fill(session.job());
        say(session.analysis());
    }

    private void fill(Job job) {
        filling = true;
        form.set(HardwareForm.of(job));
        form.get().texts().forEach((field, text) -> texts.get(field).set(text));
        filling = false;
        problems.values().forEach(p -> p.set(""));
        fileProblem.set("");
        nowProblem.set("");
        now.set(CellsNow.of(job));
    }

    private void say(Analysis analysis) {
        Optional<HardwareTable> hardware = analysis == null ? Optional.empty() : analysis.hardware();
        cost.set(hardware.map(h -> Parts.sentence(h.sentence())).orElse(Words.of("hardware.asitis")));
        cautions.set(hardware.map(HardwareTable::cautions).orElse(List.of()));
    }

    private void typed(HardwareForm.Field field, String text) {
        if (!filling) {
            form.set(form.get().with(field, text));
            check();
        }
    }

    private void check() {
        session.job()
                .fuelTable()
                .ifPresent(fuel -> problems.forEach((field, problem) ->
                        problem.set(form.get().problem(field, session.job()).orElse(""))));
    }

    /** Takes what is typed, as far as nothing is wrong with it. */
    void commit() {
        if (session.job().fuelTable().isPresent()) {
            form.get()
                    .on(session.job())
                    .filter(job -> !job.equals(session.job()))
                    .ifPresent(job -> session.edit(old -> job));
        }
    }

    /**
     * Says that this is what the hardware takes, be it the table as it is.
     *
     * @return whether nothing is wrong with what is typed
     */
    boolean confirm() {
        commit();
        Job job = session.job();
        if (job.fuelTable().isEmpty()
                || problems.values().stream().anyMatch(p -> !p.get().isEmpty())) {
            return false;
        }
        if (!job.hardware().told()) {
            session.edit(old -> old.withHardware(old.hardware().asTold()));
        }
        return true;
    }

    /** No cell of the hardware changes anything yet. */
    void holdNothing() {
        session.job()
                .fuelTable()
                .ifPresent(fuel -> hold(CellsNow.none(session.job().hardware(), fuel)));
    }

    /** The cells hold what was worked out from the job's tables. */
    void holdWorkedOut() {
        now.get().ifPresent(n -> hold(n.figures()));
    }

    /** The cells hold what was read back from the hardware. */
    void holdPasted(String text) {
        if (now.get().isEmpty()) {
            return;
        }
        Loaded<Table> read = CheckEntry.cellsNow(text, now.get().get().figures());
        read.value().ifPresent(this::hold);
        nowProblem.set(
                read.value().isPresent()
                        ? ""
                        : read.issues().stream()
                                .map(i -> Parts.sentence(i.what()) + " " + Parts.sentence(i.todo()))
                                .findFirst()
                                .orElse(""));
    }

    private void hold(Table cells) {
        session.edit(job ->
                job.withHardware(job.hardware().withCells(Optional.of(cells)).asTold()));
    }

    /** What the cells hold now, where they hold a change or a multiplier, and how that is known. */
    ReadOnlyObjectProperty<Optional<CellsNow>> nowProperty() {
        return now.getReadOnlyProperty();
    }

    /** Whether it isn't asked, or was said, what the cells hold now. */
    boolean isNowKnown() {
        return now.get().map(n -> n.known() == CellsNow.Known.SAID).orElse(true);
    }

    /** What is wrong with what was pasted for it; empty where nothing is. */
    ReadOnlyStringProperty nowProblemProperty() {
        return nowProblem.getReadOnlyProperty();
    }

    /** Step and range are in the unit of what it holds: each has its own, and none is taken over from another. */
    void hold(HardwareProfile.Holds holds) {
        HardwareForm now = form.get();
        if (holds == now.holds()) {
            return;
        }
        Map<HardwareForm.Field, String> left = new EnumMap<>(HardwareForm.Field.class);
        IN_ITS_UNIT.forEach(field -> left.put(field, now.texts().get(field)));
        inUnit.put(now.holds(), left);
        HardwareForm other = now.with(holds);
        for (HardwareForm.Field field : IN_ITS_UNIT) {
            other = other.with(field, inUnit.getOrDefault(holds, Map.of()).getOrDefault(field, ""));
        }
        form.set(other);
        commit();
    }

    void orient(Optional<Table.Orientation> orientation) {
        form.set(form.get().with(orientation));
        commit();
    }

    void useComma(boolean comma) {
        form.set(form.get().withComma(comma));
        commit();
    }

    /** Takes the breakpoints of a table file; its cells don't matter. */
    void breakpointsOf(Path file) {
        session.outputs().breakpoints(file, loaded -> {
            Optional<Axis> load = session.job().fuelTable().map(Table::load);
            if (loaded.value().isEmpty()) {
                fileProblem.set(loaded.issues().stream()
                        .map(i -> Parts.sentence(i.what()))
                        .findFirst()
                        .orElse(""));
            } else if (load.isPresent()
                    && load.get().kind() != loaded.value().get().load().kind()) {
                fileProblem.set(Words.of(
                        "hardware.otherload",
                        loaded.value().get().load().kind().words(),
                        load.get().kind().words()));
            } else {
                Table own = loaded.value().get();
                texts.get(HardwareForm.Field.SPEEDS).set(HardwareForm.list(own.speed()));
                texts.get(HardwareForm.Field.LOADS).set(HardwareForm.list(own.load()));
                commit();
            }
        });
    }

    /** The breakpoints of the fuel table again. */
    void sameBreakpoints() {
        texts.get(HardwareForm.Field.SPEEDS).set("");
        texts.get(HardwareForm.Field.LOADS).set("");
        commit();
    }

    /** What a field's own breakpoints stand in place of. */
    String fuelBreakpoints(HardwareForm.Field field) {
        return session.job()
                .fuelTable()
                .map(t -> HardwareForm.list(field == HardwareForm.Field.SPEEDS ? t.speed() : t.load()))
                .orElse("");
    }

    /** What the breakpoints of load are called, with their unit. */
    String loads() {
        return session.job()
                .fuelTable()
                .map(t -> Parts.capital(TableWords.axisTitle(t.load())))
                .orElse(Words.of("hardware.loads"));
    }

    /** The unit of step and range. */
    String unit() {
        return switch (form.get().holds()) {
            case PERCENT_CHANGE -> "%";
            case MULTIPLIER -> "";
            case VALUE ->
                session.job()
                        .fuelTable()
                        .map(t -> t.quantity().unit())
                        .filter(u -> !u.equals("1"))
                        .orElse("");
        };
    }

    /** Whether it takes the table as it is, in every respect. */
    boolean isPlain() {
        return session.job().takesTableAsItIs();
    }

    ReadOnlyObjectProperty<HardwareForm> formProperty() {
        return form.getReadOnlyProperty();
    }

    StringProperty textProperty(HardwareForm.Field field) {
        return texts.get(field);
    }

    ReadOnlyStringProperty problemProperty(HardwareForm.Field field) {
        return problems.get(field).getReadOnlyProperty();
    }

    /** What is wrong with the table file that was to give breakpoints; empty where nothing is. */
    ReadOnlyStringProperty fileProblemProperty() {
        return fileProblem.getReadOnlyProperty();
    }

    /** What it costs to bring the table to this hardware, a sentence. */
    ReadOnlyStringProperty costProperty() {
        return cost.getReadOnlyProperty();
    }

    ReadOnlyObjectProperty<List<Caution>> cautionsProperty() {
        return cautions.getReadOnlyProperty();
    }

    Session session() {
        return session;
    }
}
