package fuelwright.ui.session;

import fuelwright.job.Job;
import fuelwright.safety.Caution;
import fuelwright.ui.theme.Words;
import fuelwright.work.Analysis;
import java.util.List;
import java.util.Optional;

/**
 * What to do next, in words, and where. While a Stop caution is unanswered that comes before everything that follows the proposal.
 *
 * @param stage where it is done
 * @param inCheck whether it is done in the handover's check of what was typed
 */
public record NextStep(Stage stage, String words, boolean inCheck) {

    /** The next step; empty while it is being worked out. */
    public static Optional<NextStep> of(Session session) {
        Job job = session.job();
        if (!session.question().waitingProperty().get().isEmpty()) {
            return step(Stage.RIDES, "next.which");
        }
        if (job.fuelTable().isEmpty()) {
            return working(session) ? Optional.empty() : step(Stage.TABLES, "next.fuel");
        }
        if (job.targetTable().isEmpty()) {
            return step(Stage.TABLES, "next.target");
        }
        if (job.rides().isEmpty()) {
            return working(session) ? Optional.empty() : step(Stage.RIDES, "next.ride");
        }
        if (!session.refusalProperty().get().isEmpty()) {
            return step(Stage.RIDES, "next.refused");
        }
        if (session.analysis() == null || session.staleProperty().get()) {
            return Optional.empty();
        }
        return finished(session);
    }

    private static boolean working(Session session) {
        return session.workingProperty().get();
    }

    /** Goes where it is done. */
    public void go(Session session) {
        if (stage == Stage.HANDOVER) {
            session.outputs().checkingProperty().set(inCheck);
        }
        session.stageProperty().set(stage);
    }

    /** The Stop cautions that have no answer yet. */
    public static List<Caution> unanswered(Session session) {
        Analysis analysis = session.analysis();
        return analysis == null
                ? List.of()
                : analysis.stops().stream()
                        .filter(c -> session.job().answers().stream().noneMatch(a -> a.isFor(c) && a.holds(c)))
                        .toList();
    }

    private static Optional<NextStep> finished(Session session) {
        int unanswered = unanswered(session).size();
        if (unanswered > 0) {
            return step(Stage.CAUTIONS, "next.stops", unanswered);
        }
        boolean stops = !session.analysis().stops().isEmpty();
        if (session.outputs().checkedProperty().get() == session.job()) {
            return step(Stage.RIDES, stops ? "next.again.stops" : "next.again");
        }
        if (session.outputs().handedOverProperty().get() == session.job()) {
            return Optional.of(new NextStep(Stage.HANDOVER, Words.of("next.check"), true));
        }
        Stage now = session.stageProperty().get();
        if (now == Stage.HANDOVER) {
            return step(Stage.HANDOVER, "next.write");
        }
        if (stops || now == Stage.CAUTIONS) {
            return step(Stage.HANDOVER, "next.handover");
        }
        return now == Stage.PROPOSAL ? step(Stage.CAUTIONS, "next.cautions") : step(Stage.PROPOSAL, "next.proposal");
    }

    private static Optional<NextStep> step(Stage stage, String key, Object... values) {
        return Optional.of(new NextStep(stage, Words.of(key, values), false));
    }
}
