package fuelwright.ui.proposal;

import fuelwright.estimate.CellMeans;
import fuelwright.estimate.CellProposal;
import fuelwright.estimate.Decision;
import fuelwright.estimate.Riding;
import fuelwright.estimate.Standing;
import fuelwright.handover.CellLook;
import fuelwright.safety.Caution;
import fuelwright.table.Quantity;
import fuelwright.table.Table;
import fuelwright.ui.session.Mixture;
import fuelwright.ui.session.ShownIn;
import fuelwright.ui.session.StandingWords;
import fuelwright.ui.session.TableWords;
import fuelwright.ui.theme.Figures;
import fuelwright.ui.theme.Words;
import fuelwright.work.Analysis;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * One cell of the proposal in words, ready to be shown. Pure.
 *
 * @param place which cell
 * @param standing what its figure rests on, a sentence
 * @param change the proposed change, with sign
 * @param uncertainty with ±; empty where the user decided, who isn't uncertain
 * @param beforeAfter the table's figure before and after
 * @param steps how the change came about: words, what each adds or takes and the change after it, at last what is proposed
 * @param readings what was read here; empty where nobody rode
 * @param left what stays lean with the proposal; empty where nothing does
 * @param next what to do to know more
 * @param decision what the user fixed
 * @param far what is asked about a typed figure; empty where nothing is
 * @param stops a short line for each Stop that concerns the cell: its name, what it saw here, whether it is answered
 * @param cautions those that concern the cell, Stops among them
 */
public record CellExplanation(
        String place,
        String standing,
        String change,
        String uncertainty,
        String beforeAfter,
        List<Step> steps,
        String readings,
        String left,
        String next,
        Optional<Decision.Kind> decision,
        String far,
        List<String> stops,
        List<Caution> cautions) {

    /** A step in words. */
    public record Step(String words, String change) {}

    /** Lean by more than this is said, %. */
    private static final double SAID_FROM_PERCENT = 0.5;

    public CellExplanation {
        steps = List.copyOf(steps);
        stops = List.copyOf(stops);
        cautions = List.copyOf(cautions);
    }

    public static CellExplanation of(Analysis analysis, int cell, ShownIn shownIn) {
        CellProposal c = analysis.proposal().cell(cell);
        Table table = analysis.proposal().before();
        double uncertainty = analysis.estimate().uncertaintyPercent(cell);
        return new CellExplanation(
                TableWords.cell(table, cell),
                standing(c, analysis.estimate().independentReadings(cell), uncertainty),
                CellLook.unknown(c) ? CellLook.UNKNOWN : Figures.signed(c.changePercent(), 1),
                c.decision().isPresent() ? "" : CellLook.plusMinus(uncertainty),
                beforeAfter(
                        analysis.proposal().corrected(),
                        analysis.proposal().settings().deadTimeMs(),
                        c),
                steps(c, analysis.proposal().settings().step()),
                analysis.means()
                        .at(cell)
                        .map(m -> readings(m, shownIn.mixture()))
                        .orElse(""),
                c.leftLeanPercent() > SAID_FROM_PERCENT
                        ? Words.of("explain.left", Figures.plain(c.leftLeanPercent(), 1))
                        : "",
                next(analysis, c, uncertainty),
                c.decision().map(Decision::kind),
                FarFigure.of(c).map(FarFigure::words).orElse(""),
                analysis.stops().stream()
                        .filter(x -> x.cells().contains(cell))
                        .map(x -> stop(analysis, x, cell, shownIn))
                        .toList(),
                analysis.cautions().stream()
                        .filter(x -> x.cells().contains(cell))
                        .map(x -> x.in(shownIn))
                        .toList());
    }

    /** With the figure's own change where dead time in the pulses makes it another than the fuel's. */
    static String beforeAfter(Table table, double deadTimeMs, CellProposal c) {
        String figures = TableWords.figure(table, c.before()) + " → " + TableWords.figure(table, c.after());
        boolean dead = table.quantity() == Quantity.INJECTOR_PULSE && deadTimeMs > 0;
        String figure = Figures.signed(100 * (c.after() / c.before() - 1), 1);
        String fuel = Figures.signed(c.changePercent(), 1);
        return dead && !figure.equals(fuel) ? Words.of("explain.figure", figures, figure, fuel) : figures;
    }

    /** Each step with what it does and what it comes to, in % of the fuel, and at last what is proposed. */
    static List<Step> steps(CellProposal c, double by) {
        List<Step> all = new ArrayList<>();
        double reached = 0;
        for (CellProposal.Step step : c.steps()) {
            String total = Figures.signed(step.changePercent(), 1) + " %";
            String effect = Figures.signed(step.changePercent() - reached, 1);
            all.add(new Step(words(c, step, by), all.isEmpty() ? total : effect + " → " + total));
            reached = step.changePercent();
        }
        all.add(new Step(Words.of("explain.proposed"), Figures.signed(c.changePercent(), 1) + " %"));
        return all;
    }

    /** Of rounding it is said by how much and which way, and why. */
    private static String words(CellProposal c, CellProposal.Step step, double by) {
        if (step.kind() != CellProposal.Kind.ROUNDED || by <= 0) {
            return step.kind().words();
        }
        String key = c.highLoad() ? "high" : c.standing() == Standing.MEASURED ? "nearest" : "unmeasured";
        return Words.of("explain.rounded." + key, Figures.shortest(by));
    }

    private static String stop(Analysis analysis, Caution caution, int cell, ShownIn shownIn) {
        Table table = analysis.proposal().before();
        // Moments come worst first.
        List<Caution.Moment> here = caution.moments().stream()
                .filter(m -> nearest(table, m) == cell)
                .toList();
        boolean answered = analysis.job().answers().stream().anyMatch(a -> a.isFor(caution));
        String open = Words.of(answered ? "explain.stop.answered" : "explain.stop.open");
        return here.isEmpty()
                ? Words.of("explain.stop", caution.level().words(), caution.title(), open)
                : Words.of(
                        "explain.stop.here",
                        caution.level().words(),
                        caution.title(),
                        here.size(),
                        worst(here.get(0), shownIn),
                        open);
    }

    private static String worst(Caution.Moment moment, ShownIn shownIn) {
        return moment.isMixture()
                ? shownIn.mixture().words(moment.worst()).replace(' ', '\u202f')
                : moment.worstWords(shownIn);
    }

    private static int nearest(Table table, Caution.Moment m) {
        return table.cell((int) Math.rint(table.load().position(m.load())), (int)
                Math.rint(table.speed().position(m.speedRpm())));
    }

    private static String standing(CellProposal c, double independent, double uncertainty) {
        return StandingWords.of(independent, uncertainty)
                + (CellLook.unknown(c) ? " " + Words.of("explain.unknown") : "")
                + (c.highLoad() ? " " + Words.of("explain.highload") : "");
    }

    private static String readings(CellMeans.Mean mean, Mixture notation) {
        return Words.of(
                "explain.readings",
                Figures.count(mean.readings()),
                notation.words(mean.meanLambda()),
                Figures.signed(mean.meanShortfallPercent(), 1),
                Figures.plain(mean.spreadPercent(), 1));
    }

    private static String next(Analysis analysis, CellProposal c, double uncertainty) {
        String now = Figures.plain(uncertainty, 1);
        if (c.standing() == Standing.MEASURED) {
            return Words.of("explain.next.measured", now);
        }
        if (analysis.nextRide().beyond().contains(c.cell())) {
            return Words.of("explain.next.beyond", now);
        }
        Riding riding = Riding.of(
                analysis.proposal().before(),
                c.cell(),
                c.highLoad(),
                analysis.job().machine().redlineRpm());
        String words = Words.of("explain.next." + riding.name().toLowerCase(Locale.ROOT), now);
        return c.highLoad() ? words + " " + Words.of("explain.next.highload") : words;
    }
}
