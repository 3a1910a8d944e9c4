package fuelwright.ui.proposal;

import fuelwright.ui.session.Session;
import fuelwright.ui.theme.Exhibit;
import java.util.List;
import java.util.function.Supplier;

/** What the stage Proposal shows only when it is asked for. */
public final class ProposalExhibits {

    private ProposalExhibits() {}

    /** @param sessions gives a session with an empty job each time */
    public static List<Exhibit> all(Supplier<Session> sessions) {
        return List.of(
                new Exhibit("RulePane", "empty job", new RulePane(new ProposalModel(sessions.get()), () -> {}), 360, 0),
                new Exhibit("CapsPane", "usual", new CapsPane(new ProposalModel(sessions.get())), 360, 0));
    }
}
