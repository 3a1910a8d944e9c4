package fuelwright.ui.power;

import fuelwright.issue.Issue;
import fuelwright.issue.Loaded;
import fuelwright.power.Breathing;
import fuelwright.ui.session.Session;
import fuelwright.ui.theme.Palette;
import fuelwright.ui.theme.Parts;
import fuelwright.ui.theme.Words;
import fuelwright.work.Analysis;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;

/** What the job's part gave, and where. */
public final class GainModel {

    private final Session session;
    private GainMap.Shown shown = GainMap.Shown.GAIN;

    public GainModel(Session session) {
        this.session = session;
    }

    Session session() {
        return session;
    }

    GainMap.Shown shown() {
        return shown;
    }

    void show(GainMap.Shown what) {
        shown = what;
    }

    private Optional<Loaded<Breathing>> gain() {
        return Optional.ofNullable(session.analysis()).map(Analysis::partGain);
    }

    private Optional<Breathing> known() {
        return gain().flatMap(Loaded::value);
    }

    /** Empty where nothing is known. A trim or multiplier doesn't tell amounts: then only the gain is shown. */
    Optional<GainMap> map(Palette palette) {
        return known().map(g -> GainMap.of(
                g,
                hasAmounts() ? shown : GainMap.Shown.GAIN,
                session.job().machine().displacementCc(),
                session.analysis().stops().stream()
                        .flatMap(c -> c.cells().stream())
                        .collect(Collectors.toSet()),
                palette,
                session.shownIn()));
    }

    /** Whether the air itself is known, before and after. */
    boolean hasAmounts() {
        return known().filter(g -> g.amount() != Breathing.Amount.UNKNOWN).isPresent();
    }

    /** What the figures are. */
    String meaning() {
        return known().map(g -> hasAmounts() && shown != GainMap.Shown.GAIN
                        ? Words.of("gain.amount." + g.amount().name().toLowerCase(Locale.ROOT))
                        : Words.of("gain.meaning", g.knownCells(), g.cells())
                                + (hasAmounts() ? "" : " " + Words.of("gain.amount.unknown")))
                .orElse("");
    }

    /** Whether it may be known in a moment. */
    boolean isWorking() {
        return session.analysis() == null && session.workingProperty().get();
    }

    /** Why nothing is known, a sentence; empty where something is. */
    String whyNot() {
        return gain().map(g -> g.issues().stream()
                        .filter(i -> i.severity() == Issue.Severity.ERROR)
                        .findFirst()
                        .map(i -> Parts.sentence(i.what()) + " " + Parts.sentence(i.todo()))
                        .orElse(""))
                .orElseGet(() -> isWorking() ? session.doingProperty().get() : Words.of("gain.noanalysis"));
    }
}
