package fuelwright.ui.session;

import fuelwright.issue.Issue;
import fuelwright.job.Job;
import fuelwright.job.JobRide;
import fuelwright.ride.Channel;
import fuelwright.ride.Ride;
import fuelwright.ride.Role;
import fuelwright.safety.Caution;
import fuelwright.ui.theme.Words;
import java.util.List;
import java.util.Optional;

/** What a stage still waits for, in two or three words; empty where nothing of it waits. */
public final class Unsettled {

    private static final String SCALE_OPTION = "--volts";

    private Unsettled() {}

    public static Optional<String> of(Stage stage, Session session) {
        return switch (stage) {
            case MACHINE -> machine(session);
            case TABLES -> tables(session);
            case RIDES -> rides(session);
            case CAUTIONS -> checks(session);
            default -> Optional.empty();
        };
    }

    /** The stage on which that is put right for which the analysis was refused. */
    public static Stage placeOf(Issue refusal) {
        boolean table = refusal.file().startsWith("fuel table")
                || refusal.file().startsWith("target table")
                || refusal.todo().contains("dead time");
        return table ? Stage.TABLES : Stage.RIDES;
    }

    private static boolean refused(Session session, Stage stage) {
        return session.refusalProperty().get().stream().anyMatch(i -> placeOf(i) == stage);
    }

    private static Optional<String> machine(Session session) {
        if (!session.job().machine().hasBodyChange()) {
            return said("unsettled.machine");
        }
        int left = session.job().beforeFirstStart().size();
        return left == 0 ? Optional.empty() : said("unsettled.checks", left);
    }

    private static Optional<String> tables(Session session) {
        Job job = session.job();
        if (job.fuelTable().isEmpty()) {
            return said("unsettled.fuel");
        }
        if (job.targetTable().isEmpty()) {
            return said("unsettled.target");
        }
        if (refused(session, Stage.TABLES)) {
            return said("unsettled.tables");
        }
        return job.asksForTargetRatio() ? said("unsettled.questions", 1) : Optional.empty();
    }

    private static Optional<String> rides(Session session) {
        int refusedLogs = session.refused().all().size();
        if (refusedLogs > 0) {
            return said("unsettled.logs", refusedLogs);
        }
        long questions = questions(session)
                + RideLacks.lacks(session).size()
                + RideLacks.useless(session).size()
                + RideLacks.doubts(session).size();
        if (questions > 0) {
            return said("unsettled.questions", questions);
        }
        return refused(session, Stage.RIDES) ? said("unsettled.rides") : Optional.empty();
    }

    /** Questions about rides; the display of one logger is asked for once. */
    private static long questions(Session session) {
        List<Ride> rides = session.job().rides().stream().map(JobRide::ride).toList();
        long displays = rides.stream()
                .filter(r -> r.channel(Role.AFR).isPresent())
                .filter(r -> session.reading().options(r).afrScale().isEmpty())
                .map(r -> r.channels().stream().map(Channel::heading).toList())
                .distinct()
                .count();
        long volts = rides.stream()
                .filter(r -> r.remarks().stream().anyMatch(i -> i.todo().contains(SCALE_OPTION)))
                .count();
        boolean table = !session.question().waitingProperty().get().isEmpty();
        return displays + volts + (table ? 1 : 0);
    }

    private static Optional<String> checks(Session session) {
        if (session.analysis() == null) {
            return Optional.empty();
        }
        long checks = session.analysis().cautions().stream()
                .filter(c -> c.level() == Caution.Level.CHECK)
                .count();
        return checks == 0 ? Optional.empty() : said("unsettled.cautions", checks);
    }

    private static Optional<String> said(String key, Object... gaps) {
        return Optional.of(Words.of(key, gaps));
    }
}
