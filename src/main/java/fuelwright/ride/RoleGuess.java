package fuelwright.ride;

import fuelwright.issue.Issue;
import fuelwright.ride.Channel.Confidence;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/** Gives each column its role: what the user said, else what name, unit and values agree on; where two fit, the better, said so. */
final class RoleGuess {

    private static final int ROWS_TO_JUDGE = 20;

    private final String file;
    private final RideOptions options;
    private final int headingLine;
    private final List<Issue> issues = new ArrayList<>();

    RoleGuess(String file, RideOptions options, int headingLine) {
        this.file = file;
        this.options = options;
        this.headingLine = headingLine;
    }

    List<Issue> issues() {
        return issues;
    }

    /** Sets role, strength, confidence and remark of each draft. */
    void assign(List<Draft> drafts) {
        for (Draft draft : drafts) {
            suggest(draft);
        }
        Map<Role, Draft> best = new EnumMap<>(Role.class);
        for (Draft draft : drafts) {
            if (isUnique(draft.role) && draft.confidence != Confidence.LEFT_OUT) {
                best.merge(draft.role, draft, RoleGuess::better);
            }
        }
        for (Draft draft : drafts) {
            Draft winner = best.get(draft.role);
            if (isUnique(draft.role) && winner != null && winner != draft) {
                Role lost = draft.role;
                draft.role = Role.OTHER;
                draft.leaveOut("also looks like " + lost.words() + "; " + winner.heading.text() + " is used");
                if (winner.strength == draft.strength && !winner.said) {
                    winner.look("chosen before " + draft.heading.text() + ", which fits as well");
                    issues.add(Say.doubt(
                            file,
                            headingLine,
                            winner.column + 1,
                            winner.heading.text(),
                            draft.heading.text() + " fits " + lost.words() + " as well; this one is used",
                            "choose the other by hand if that is wrong"));
                }
            }
        }
    }

    private static boolean isUnique(Role role) {
        return role != Role.OTHER && !role.isMixture();
    }

    private static Draft better(Draft a, Draft b) {
        if (a.said != b.said) {
            return a.said ? a : b;
        }
        boolean aMoves = a.stats.distinct() > 1;
        boolean bMoves = b.stats.distinct() > 1;
        if (aMoves != bMoves) {
            return aMoves ? a : b;
        }
        return b.strength > a.strength ? b : a;
    }

    private void suggest(Draft draft) {
        var said = options.roleOf(draft.heading);
        if (said.isPresent()) {
            draft.role = said.get();
            draft.said = true;
            draft.confidence = draft.role == Role.OTHER ? Confidence.LEFT_OUT : Confidence.SURE;
            draft.remark = "as you said";
            return;
        }
        RoleNames.Suggestion suggestion = RoleNames.of(draft.heading);
        draft.role = suggestion.role();
        draft.strength = suggestion.strength();
        draft.remark = suggestion.why();
        draft.confidence = draft.role == Role.OTHER
                ? Confidence.LEFT_OUT
                : draft.strength >= 4 ? Confidence.SURE : Confidence.LOOK;
        if (draft.role == Role.OTHER && draft.remark.isEmpty()) {
            draft.say("not known: shown, not used");
        }
        if (draft.confidence == Confidence.LOOK) {
            draft.say("by a name that can mean other things");
        }
        if (draft.form.kind() == ColumnForm.Kind.TEXT) {
            draft.leaveOut("words, not figures");
            draft.role = Role.OTHER;
        } else if (draft.stats.count() == 0 && draft.role != Role.OTHER) {
            draft.leaveOut("looks like " + draft.role.words() + ", but holds nothing");
            draft.role = Role.OTHER;
        } else {
            constant(draft);
        }
    }

    private void constant(Draft draft) {
        if (!draft.stats.isConstant() || draft.stats.count() < ROWS_TO_JUDGE) {
            return;
        }
        String value = Figures.plain(draft.stats.min());
        boolean trim = draft.role == Role.SHORT_TRIM || draft.role == Role.LONG_TRIM;
        boolean mixture = draft.role.isMixture() || draft.role == Role.COMMANDED_LAMBDA;
        boolean notSupported = draft.stats.min() == 0 && draft.role == Role.COMMANDED_LAMBDA
                || trim && Math.abs(draft.stats.min() - 99.21875) < 0.1;
        if (notSupported || draft.role.isMixture()) {
            draft.leaveOut(value + " throughout: " + (notSupported ? "not supported" : "no sensor behind it")
                    + ", so it is not a reading");
            warn(
                    draft,
                    value + " throughout; it isn't used as " + draft.role.words(),
                    "nothing, if no such sensor is fitted; otherwise check its wiring");
        } else if (draft.role == Role.ENGINE_SPEED
                || draft.role == Role.THROTTLE
                || draft.role == Role.MANIFOLD_PRESSURE) {
            draft.look(value + " throughout");
            warn(draft, value + " throughout", "check that the right column is used");
        } else if (mixture || trim) {
            draft.say(value + " throughout");
        }
    }

    private void warn(Draft draft, String what, String todo) {
        issues.add(Say.doubt(file, headingLine, draft.column + 1, draft.heading.text(), what, todo));
    }
}
