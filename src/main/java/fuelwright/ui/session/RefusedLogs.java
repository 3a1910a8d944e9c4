package fuelwright.ui.session;

import fuelwright.ride.LogColumn;
import fuelwright.ride.LogColumns;
import fuelwright.ride.RideOptions;
import fuelwright.ride.Role;
import fuelwright.ui.theme.Words;
import fuelwright.work.RideNeeds;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import javafx.collections.FXCollections;
import javafx.collections.ObservableList;

/** Logs that were refused although they hold a table of figures: the user can say what the reader didn't find, and they are read again. */
public final class RefusedLogs {

    /**
     * A refused log.
     *
     * @param options how it was read
     * @param columns of figures, and what wasn't found among them
     * @param why in words
     */
    public record Refused(Path file, RideOptions options, LogColumns columns, String why) {

        public List<String> headings() {
            return columns.columns().stream().map(LogColumn::heading).toList();
        }

        /** What the user can say. */
        public List<Role> missing() {
            return columns.missing();
        }

        public String name() {
            return String.valueOf(file.getFileName());
        }
    }

    private final Session session;
    private final Services services;
    private final Errand errand;
    private final ObservableList<Refused> all = FXCollections.observableArrayList();
    /** Held on to: it hears of changes only as long as somebody does. */
    private final ObservableList<Refused> seen = FXCollections.unmodifiableObservableList(all);

    RefusedLogs(Session session, Services services, Errand errand) {
        this.session = session;
        this.services = services;
        this.errand = errand;
    }

    /** What can be read again after more is said. */
    public ObservableList<Refused> all() {
        return seen;
    }

    void add(List<Refused> more) {
        List<Path> files = more.stream().map(Refused::file).toList();
        List<Refused> now = new ArrayList<>(all);
        now.removeIf(r -> files.contains(r.file()));
        now.addAll(more);
        all.setAll(now);
    }

    /** The user doesn't want it. */
    public void leave(Refused log) {
        all.remove(log);
        session.issues().removeIf(i -> i.file().equals(log.name()));
    }

    /** Those of another job. */
    void show(List<Refused> logs) {
        all.setAll(logs);
    }

    /** Reads a log again with more said about it; what was said is remembered for logs with the same headings where it helped. */
    public void again(Refused log, RideOptions said) {
        Set<Role> needed = RideNeeds.of(session.job());
        errand.run(
                "open",
                Duration.ZERO,
                Words.of("doing.reading"),
                (p, c) -> {
                    Opened read = Opened.readAs(List.of(log.file()), false, needed, file -> said, services, p, c);
                    if (!read.rides().isEmpty()) {
                        services.remember(log.headings(), said);
                    }
                    return read;
                },
                read -> {
                    all.remove(log);
                    session.put(read, said);
                });
    }
}
