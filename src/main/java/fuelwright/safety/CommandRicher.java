package fuelwright.safety;

import fuelwright.estimate.CellProposal;
import java.util.List;
import java.util.SortedSet;
import java.util.TreeSet;

/** Says where the control unit asked for a richer mixture than the target at high load: that is no proof that the table is rich. */
final class CommandRicher implements Rule {

    @Override
    public List<Caution> judge(Dossier d) {
        SortedSet<Integer> cells = new TreeSet<>();
        d.file.proposal()
                .ifPresent(p -> p.cells().stream()
                        .filter(c -> c.steps().stream().anyMatch(s -> s.kind() == CellProposal.Kind.COMMANDED_RICHER))
                        .forEach(c -> cells.add(c.cell())));
        if (cells.isEmpty()) {
            return List.of();
        }
        return List.of(new Caution(
                "command-richer",
                Caution.Level.CHECK,
                "The control unit asks for more than your target",
                "At high load the logged command is richer than the target table, and the mixture follows it: in "
                        + Say.cells(cells.size()) + " the table isn't leaned for that",
                "If the unit enriches by itself there, leave the table alone or set the target to what it asks for; if it should meet your target, switch its enrichment off and ride again",
                cells,
                List.of()));
    }
}
