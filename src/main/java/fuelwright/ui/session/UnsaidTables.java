package fuelwright.ui.session;

import fuelwright.issue.Issue;
import fuelwright.issue.Loaded;
import fuelwright.ride.RideOptions;
import fuelwright.table.Pasted;
import fuelwright.table.Table;
import fuelwright.table.TableOptions;
import fuelwright.table.TableReader;
import fuelwright.table.Unsaid;
import fuelwright.ui.theme.Words;
import fuelwright.work.OpenTable;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javafx.collections.FXCollections;
import javafx.collections.ObservableList;

/** Tables that don't say what they hold: the user says it, and they come into the job. */
public final class UnsaidTables {

    private final Session session;
    private final ObservableList<Unsaid> all = FXCollections.observableArrayList();
    /** Held on to: it hears of changes only as long as somebody does. */
    private final ObservableList<Unsaid> seen = FXCollections.unmodifiableObservableList(all);

    UnsaidTables(Session session) {
        this.session = session;
    }

    /** What can be read once more is said. */
    public ObservableList<Unsaid> all() {
        return seen;
    }

    void add(List<Unsaid> more) {
        List<Unsaid> now = new ArrayList<>(all);
        now.removeIf(t -> more.stream().anyMatch(m -> m.name().equals(t.name())));
        now.addAll(more);
        all.setAll(now);
    }

    /** Those of another job. */
    void show(List<Unsaid> tables) {
        all.setAll(tables);
    }

    /** The user doesn't want it. */
    public void leave(Unsaid table) {
        all.remove(table);
    }

    /** Opens a table with what was said of it. */
    public void tell(Unsaid table, TableOptions said) {
        all.remove(table);
        session.put(Opened.of(OpenTable.told(table, said)), RideOptions.defaults());
    }

    /** Opens a copied block with its axes as a table; one without is said. */
    public void paste(String text) {
        String name = Words.of("tables.paste.name");
        Loaded<Table> read = TableReader.read(name, text);
        Optional<Unsaid> asks = Unsaid.of(name, text);
        if (asks.isPresent()) {
            add(List.of(asks.get()));
        } else if (read.value().isPresent()) {
            session.put(Opened.of(read), RideOptions.defaults());
        } else {
            boolean block = Unsaid.isTableShaped(text);
            boolean figures = Pasted.read(text).value().isPresent();
            session.put(
                    Opened.of(
                            block
                                    ? read
                                    : Loaded.refused(Issue.error(
                                            "",
                                            0,
                                            0,
                                            Words.of(figures ? "tables.paste.noaxes" : "tables.paste.notable"),
                                            Words.of("tables.paste.todo")))),
                    RideOptions.defaults());
        }
    }
}
