package fuelwright.ui.session;

import fuelwright.airflow.Machine;
import fuelwright.job.Answer;
import fuelwright.job.Job;
import fuelwright.ride.Role;
import fuelwright.safety.Caution;
import fuelwright.table.Axis;
import fuelwright.ui.theme.Words;
import fuelwright.work.Analysis;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * What to do next, in words, and where. While a Stop caution is unanswered that comes before everything that follows the proposal.
 *
 * @param stage where it is done
 * @param inCheck whether it is done in the handover's check of what was typed
 * @param opens whether it is done by opening a file
 * @param table the table on stage Tables that it is about
 */
public record NextStep(Stage stage, String words, boolean inCheck, boolean opens, Optional<ShownTable> table) {

    /** The next step; empty while it is being worked out. */
    public static Optional<NextStep> of(Session session) {
        Job job = session.job();
        if (!session.question().waitingProperty().get().isEmpty()) {
            return step(Stage.RIDES, "next.which");
        }
        if (!session.refused().all().isEmpty()) {
            return refusedLog(session.refused().all().get(0));
        }
        boolean atMachine = session.stageProperty().get() == Stage.MACHINE;
        if (job.fuelTable().isEmpty() && !atMachine && job.machine().equals(Machine.unknown())) {
            return working(session) ? Optional.empty() : step(Stage.MACHINE, "next.machine");
        }
        if (job.fuelTable().isEmpty()) {
            return working(session) ? Optional.empty() : opening(Stage.TABLES, "next.fuel");
        }
        if (job.targetTable().isEmpty()) {
            return table(ShownTable.TARGET, "next.target");
        }
        if (job.rides().isEmpty()) {
            return working(session) ? Optional.empty() : beforeTheFirstRide(session);
        }
        if (!session.refusalProperty().get().isEmpty()) {
            return refused(session);
        }
        if (session.analysis() == null || session.staleProperty().get()) {
            return Optional.empty();
        }
        return finished(session);
    }

    /** Where the bodies were changed nobody shall ride on the old table unasked. */
    private static Optional<NextStep> beforeTheFirstRide(Session session) {
        Job job = session.job();
        boolean forecast = job.machine().hasBodyChange()
                && job.fuelTable()
                        .filter(t -> t.load().kind() == Axis.Kind.THROTTLE)
                        .isPresent();
        if (!forecast || session.outputs().isFirstRideWritten()) {
            return opening(Stage.RIDES, "next.ride");
        }
        int checks = job.beforeFirstStart().size();
        return checks > 0
                ? Optional.of(
                        new NextStep(Stage.MACHINE, Words.of("next.checks", checks), false, false, Optional.empty()))
                : table(ShownTable.FIRST_RIDE, "next.first");
    }

    private static Optional<NextStep> refusedLog(RefusedLogs.Refused log) {
        return log.missing().isEmpty()
                ? step(Stage.RIDES, "next.log", log.name())
                : step(Stage.RIDES, roleKey(log.missing().get(0)));
    }

    private static String roleKey(Role role) {
        return "next.role." + (role.isMixture() ? "mixture" : role.name().toLowerCase(Locale.ROOT));
    }

    private static boolean working(Session session) {
        return session.workingProperty().get();
    }

    /** To where the analysis was refused for; there, to another log, or nowhere. */
    private static Optional<NextStep> refused(Session session) {
        List<RideLacks.Lack> lacks = RideLacks.lacks(session);
        if (!lacks.isEmpty()) {
            return step(Stage.RIDES, roleKey(lacks.get(0).roles().get(0)));
        }
        Stage place = Unsettled.placeOf(session.refusalProperty().get().get(0));
        if (session.stageProperty().get() != place) {
            return step(place, "next.refused");
        }
        return place == Stage.RIDES ? opening(place, "next.otherride") : Optional.empty();
    }

    /**
     * Goes where it is done.
     *
     * @param open asks for files; run where that is what is to be done
     */
    public void go(Session session, Runnable open) {
        go(session);
        if (opens) {
            open.run();
        }
    }

    /** Goes where it is done. */
    public void go(Session session) {
        if (stage == Stage.HANDOVER) {
            session.outputs().checkingProperty().set(inCheck);
        }
        table.ifPresent(session.selection().shownTableProperty()::set);
        session.stageProperty().set(stage);
        if (stage == Stage.MACHINE) {
            session.selection().wantChecks();
        }
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
        Stage now = session.stageProperty().get();
        if (session.outputs().isChecked()) {
            return opening(Stage.RIDES, stops ? "next.again.stops" : "next.again");
        }
        if (session.outputs().isHandedOver()) {
            return Optional.of(new NextStep(Stage.HANDOVER, Words.of("next.check"), true, false, Optional.empty()));
        }
        if (now == Stage.HANDOVER) {
            return step(Stage.HANDOVER, "next.write");
        }
        if (stops && !causesFound(session)) {
            return step(now == Stage.CAUTIONS ? Stage.HANDOVER : Stage.CAUTIONS, "next.cause");
        }
        if (stops || now == Stage.CAUTIONS) {
            return step(Stage.HANDOVER, "next.handover");
        }
        return now == Stage.PROPOSAL ? step(Stage.CAUTIONS, "next.cautions") : step(Stage.PROPOSAL, "next.proposal");
    }

    /** Whether each Stop caution is answered by its cause. */
    private static boolean causesFound(Session session) {
        return session.analysis().stops().stream()
                .allMatch(c -> session.job().answers().stream()
                        .anyMatch(a -> a.isFor(c) && a.holds(c) && a.kind() == Answer.Kind.CAUSE_FOUND));
    }

    private static Optional<NextStep> opening(Stage stage, String key) {
        return Optional.of(new NextStep(stage, Words.of(key), false, true, Optional.empty()));
    }

    private static Optional<NextStep> table(ShownTable table, String key) {
        return Optional.of(new NextStep(Stage.TABLES, Words.of(key), false, false, Optional.of(table)));
    }

    private static Optional<NextStep> step(Stage stage, String key, Object... values) {
        return Optional.of(new NextStep(stage, Words.of(key, values), false, false, Optional.empty()));
    }
}
