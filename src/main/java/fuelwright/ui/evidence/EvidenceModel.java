package fuelwright.ui.evidence;

import fuelwright.estimate.CellMeans;
import fuelwright.estimate.Estimate;
import fuelwright.estimate.TipIn;
import fuelwright.handover.CellLook;
import fuelwright.job.JobRide;
import fuelwright.screen.Screen;
import fuelwright.screen.ScreenedRide;
import fuelwright.ui.plot.HeatMap;
import fuelwright.ui.session.CellReadings;
import fuelwright.ui.session.NearReadings;
import fuelwright.ui.session.Session;
import fuelwright.ui.session.StandingWords;
import fuelwright.ui.session.TableWords;
import fuelwright.ui.theme.Figures;
import fuelwright.ui.theme.Parts;
import fuelwright.ui.theme.Words;
import fuelwright.work.Analysis;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.SimpleObjectProperty;

/** The stage Evidence without its looks. */
public final class EvidenceModel {

    /** A line of words and a figure. */
    public record Fact(String words, String figure) {}

    /**
     * The selected cell.
     *
     * @param lines what made the figure
     */
    public record CellFacts(String place, String shortfall, String uncertainty, String standing, List<Fact> lines) {
        public CellFacts {
            lines = List.copyOf(lines);
        }
    }

    private final Session session;
    private final NearReadings near;
    private final ObjectProperty<EvidenceMap.Shown> shown = new SimpleObjectProperty<>(EvidenceMap.Shown.SHORTFALL);
    private final ReadOnlyObjectWrapper<HeatMap> map = new ReadOnlyObjectWrapper<>();
    private final ReadOnlyObjectWrapper<CellFacts> cell = new ReadOnlyObjectWrapper<>();

    public EvidenceModel(Session session) {
        this.session = session;
        this.near = new NearReadings(session, "evidence");
        session.analysisProperty().addListener((p, old, now) -> update());
        session.themeProperty().addListener((p, old, now) -> update());
        session.cellProperty().addListener((p, old, now) -> updateCell());
        session.afrProperty().addListener((p, old, now) -> updateCell());
        shown.addListener((p, old, now) -> update());
        update();
    }

    private void update() {
        Analysis analysis = session.analysis();
        map.set(
                analysis == null
                        ? null
                        : EvidenceMap.of(
                                analysis,
                                shown.get(),
                                range(),
                                session.themeProperty().get().palette()));
        updateCell();
    }

    private void updateCell() {
        Analysis analysis = session.analysis();
        int at = session.cellProperty().get();
        boolean there =
                analysis != null && at >= 0 && at < analysis.estimate().table().cells();
        cell.set(there ? facts(analysis, at) : null);
    }

    private CellFacts facts(Analysis analysis, int at) {
        Estimate e = analysis.estimate();
        List<Fact> lines = new ArrayList<>();
        lines.add(new Fact(Words.of("evidence.independent"), StandingWords.readings(e.independentReadings(at))));
        Optional<CellMeans.Mean> mean = analysis.means().at(at);
        mean.ifPresent(m -> {
            lines.add(new Fact(Words.of("evidence.touched"), Figures.count(m.readings())));
            lines.add(
                    new Fact(Words.of("evidence.meanmixture"), session.mixture().words(m.meanLambda())));
            lines.add(new Fact(Words.of("evidence.mean"), Figures.signed(m.meanShortfallPercent(), 1) + " %"));
            lines.add(new Fact(Words.of("evidence.spread"), CellLook.plusMinus(m.spreadPercent())));
            lines.add(new Fact(
                    Words.of("evidence.moved"),
                    Figures.signed(e.shortfallPercent(at) - m.meanShortfallPercent(), 1) + " %"));
        });
        analysis.validation()
                .flatMap(v -> v.at(at))
                .ifPresent(v -> lines.add(new Fact(
                        Words.of("evidence.unseen", v.blocks()),
                        Words.of(
                                "evidence.unseen.figure",
                                Figures.plain(v.errorBeforePercent(), 1),
                                Figures.plain(v.errorAfterPercent(), 1)))));
        return new CellFacts(
                TableWords.cell(e.table(), at),
                Figures.signed(e.shortfallPercent(at), 1),
                CellLook.plusMinus(e.uncertaintyPercent(at)),
                StandingWords.of(e.independentReadings(at), e.uncertaintyPercent(at)),
                lines);
    }

    /** The readings near the selected cell; null while they aren't there. */
    ReadOnlyObjectProperty<CellReadings> nearProperty() {
        return near.readingsProperty();
    }

    /** Where the selected cell's readings come from: a line for each ride, and one for each screen that kept some out. */
    List<Fact> origins(CellReadings near) {
        List<Fact> lines = new ArrayList<>();
        List<JobRide> rides = session.analysis().job().rides();
        for (int i = 0; i < rides.size(); i++) {
            lines.add(new Fact(
                    rides.get(i).ride().name(), Figures.count(near.byRide().get(i))));
        }
        near.out()
                .forEach((screen, count) ->
                        lines.add(new Fact(Words.of("evidence.out", screen.words()), Figures.count(count))));
        return lines;
    }

    /** What holds for all cells: sensor, validation, what was kept out, remarks. */
    public List<String> sentences() {
        Analysis analysis = session.analysis();
        if (analysis == null) {
            return List.of();
        }
        List<String> all = new ArrayList<>();
        all.add(Words.of(
                "evidence.sensor",
                Parts.sentence(analysis.estimate().sensor().words().in(session.shownIn()))));
        all.add(analysis.validation()
                .map(v -> Words.of(
                        "evidence.validation",
                        v.blocks(),
                        Figures.plain(v.errorBeforePercent(), 1),
                        Figures.plain(v.errorAfterPercent(), 1)))
                .orElse(Words.of(analysis.settled() ? "evidence.novalidation" : "evidence.unsettled")));
        analysis.estimate().remarks().forEach(r -> all.add(Parts.sentence(r)));
        return all.stream().map(CellLook::joined).toList();
    }

    /** The opening rate alone where it is another than before, then engine speed, openings, mean and worst; empty where none was judged. */
    public List<List<String>> tipIn() {
        if (session.analysis() == null || !session.analysis().settled()) {
            return List.of();
        }
        List<List<String>> lines = new ArrayList<>();
        String rate = "";
        for (TipIn.Bin bin : session.analysis().estimate().tipIn().bins()) {
            String worst = Figures.signed(bin.worstPercent(), 1);
            if (!bin.rateWords().equals(rate)) {
                lines.add(List.of(bin.rateWords()));
            }
            lines.add(List.of(
                    bin.speedWords().replace(" rpm", ""),
                    Integer.toString(bin.openings()),
                    Figures.signed(bin.meanPercent(), 1) + "\u202f"
                            + Figures.plusMinus(bin.uncertaintyPercent(), 1)
                            + (bin.isClear() ? " !" : ""),
                    bin.atLimit() > 0 ? Words.of("evidence.tipin.beyond", worst) : worst));
            rate = bin.rateWords();
        }
        return lines;
    }

    /** What stands above them. */
    public List<String> tipInHeadings() {
        return List.of(
                Words.of("evidence.tipin.rpm"),
                Words.of("evidence.tipin.openings"),
                Words.of("evidence.tipin.mean"),
                Words.of("evidence.tipin.worst"));
    }

    /** What stands below them: what they mean, and how many openings could not be judged. */
    public String tipInWords() {
        if (!session.analysis().settled()) {
            return Words.of("evidence.tipin.unsettled");
        }
        TipIn tipIn = session.analysis().estimate().tipIn();
        return (tipIn.bins().isEmpty() ? Words.of("evidence.tipin.none") : Words.of("evidence.tipin.words"))
                + (tipIn.leftOut() > 0 ? " " + Words.of("evidence.tipin.leftout", tipIn.leftOut()) : "");
    }

    /** How many readings count, and how many each screen kept out, over all rides. */
    public List<Fact> counts() {
        Analysis analysis = session.analysis();
        List<Fact> all = new ArrayList<>();
        if (analysis == null) {
            return all;
        }
        all.add(new Fact(
                Words.of("evidence.count"),
                Figures.count(analysis.screened().stream()
                        .mapToLong(ScreenedRide::kept)
                        .sum())));
        for (Screen screen : Screen.values()) {
            long count =
                    analysis.screened().stream().mapToLong(s -> s.count(screen)).sum();
            if (count > 0) {
                all.add(new Fact(Parts.capital(screen.words()), Figures.count(count)));
            }
        }
        return all;
    }

    /** ±% of the maps with two directions: the smallest of 10, 20 and 40 that holds every shortfall. */
    public int range() {
        Analysis analysis = session.analysis();
        double most = 0;
        if (analysis != null) {
            for (int at = 0; at < analysis.estimate().table().cells(); at++) {
                most = Math.max(most, Math.abs(analysis.estimate().shortfallPercent(at)));
            }
        }
        return most <= 10 ? 10 : most <= 20 ? 20 : EvidenceMap.RANGE;
    }

    /** The greatest figure of the map that is shown, where it is one of amounts. */
    public double most() {
        return session.analysis() == null ? 1 : EvidenceMap.most(session.analysis(), shown.get());
    }

    ObjectProperty<EvidenceMap.Shown> shownProperty() {
        return shown;
    }

    /** Null where there is no evidence. */
    public ReadOnlyObjectProperty<HeatMap> mapProperty() {
        return map.getReadOnlyProperty();
    }

    /** Null where no cell is selected. */
    public ReadOnlyObjectProperty<CellFacts> cellProperty() {
        return cell.getReadOnlyProperty();
    }

    public Session session() {
        return session;
    }
}
