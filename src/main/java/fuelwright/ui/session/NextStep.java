package fuelwright.ui.session;

import fuelwright.job.Job;
import fuelwright.ui.theme.Words;
import java.util.Optional;

/**
 * What to do next, in words, and where.
 *
 * @param stage where it is done
 */
public record NextStep(Stage stage, String words) {

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

    private static Optional<NextStep> finished(Session session) {
        if (session.outputs().handedOverProperty().get() == session.job()) {
            return step(Stage.RIDES, "next.again");
        }
        Stage now = session.stageProperty().get();
        if (now == Stage.HANDOVER) {
            return step(Stage.HANDOVER, session.analysis().stops().isEmpty() ? "next.write" : "next.tick");
        }
        if (now == Stage.CAUTIONS) {
            return step(Stage.HANDOVER, "next.handover");
        }
        return session.analysis().stops().isEmpty() && now == Stage.PROPOSAL
                ? step(Stage.CAUTIONS, "next.cautions")
                : session.analysis().stops().isEmpty()
                        ? step(Stage.PROPOSAL, "next.proposal")
                        : step(Stage.CAUTIONS, "next.stops");
    }

    private static Optional<NextStep> step(Stage stage, String key) {
        return Optional.of(new NextStep(stage, Words.of(key)));
    }
}
