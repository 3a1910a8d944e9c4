package fuelwright.safety;

import fuelwright.airflow.Machine;
import fuelwright.estimate.CellProposal;
import fuelwright.estimate.Proposal;
import fuelwright.estimate.Standing;
import fuelwright.table.Axis;
import fuelwright.table.Table;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;

/** Proposals that look wrong as a whole: cliffs between neighbours, and changes larger than parts alone explain. */
final class ProposalShape implements Rule {

    /** Between two measured cells a cliff has to be so much higher to be doubted. */
    private static final double BOTH_MEASURED = 1.5;

    private static final int REGION_CELLS = 3;

    @Override
    public boolean looksAtProposal() {
        return true;
    }

    @Override
    public List<Caution> judge(Dossier d) {
        List<Caution> out = new ArrayList<>();
        d.proposal().ifPresent(p -> {
            large(d, p, out);
            cliffs(d, p, out);
        });
        return out;
    }

    private static void large(Dossier d, Proposal proposal, List<Caution> out) {
        double allowed = bodyAllowance(d);
        double most = (1 + d.limits.of(Limit.LARGE_ADDITION) / 100) * allowed;
        double least = 1 - d.limits.of(Limit.LARGE_CUT) / 100;
        TreeSet<Integer> lean = new TreeSet<>();
        TreeSet<Integer> rich = new TreeSet<>();
        for (CellProposal cell : proposal.cells()) {
            if (cell.standing() != Standing.INFERRED) {
                if (cell.neededFactor() > most) {
                    lean.add(cell.cell());
                } else if (cell.neededFactor() < least) {
                    rich.add(cell.cell());
                }
            }
        }
        if (lean.size() >= REGION_CELLS) {
            out.add(largeCaution(
                    d,
                    proposal,
                    lean,
                    "more",
                    "an air leak, a wrong injector, low fuel pressure or a sensor that reads lean"));
        }
        if (rich.size() >= REGION_CELLS) {
            out.add(largeCaution(
                    d, proposal, rich, "less", "a leaking injector, high fuel pressure or a sensor that reads rich"));
        }
    }

    private static Caution largeCaution(
            Dossier d, Proposal proposal, TreeSet<Integer> cells, String direction, String suspects) {
        double mean = cells.stream()
                .mapToDouble(c -> 100 * (proposal.cell(c).neededFactor() - 1))
                .average()
                .orElse(0);
        return new Caution(
                        "proposal-too-large",
                        Caution.Level.CHECK,
                        "A change too large for parts alone",
                        Say.cells(cells.size()) + " " + Say.speeds(d.fuel, cells) + " ask for " + Say.signed(mean)
                                + " on average, " + direction + " than a change of parts explains",
                        "Look for " + suspects + " before entering anything",
                        cells,
                        List.of())
                .about("ask for " + direction);
    }

    /** How much more air the bigger body alone may let in where the table is indexed by throttle: the ratio of the bores' areas. */
    private static double bodyAllowance(Dossier d) {
        Machine machine = d.file.machine();
        if (d.fuel.load().kind() != Axis.Kind.THROTTLE
                || machine.before().isEmpty()
                || machine.after().isEmpty()) {
            return 1;
        }
        double ratio = machine.after().get().boreMm() / machine.before().get().boreMm();
        return Math.max(1, ratio * ratio);
    }

    private static void cliffs(Dossier d, Proposal proposal, List<Caution> out) {
        Table table = d.fuel;
        double limit = Math.log1p(d.limits.of(Limit.CLIFF) / 100);
        TreeSet<Integer> cells = new TreeSet<>();
        double worst = 0;
        int worstA = -1;
        int worstB = -1;
        for (int c = 0; c < table.cells(); c++) {
            int[] neighbours = {
                table.speedIndex(c) + 1 < table.speed().size() ? c + 1 : -1,
                table.loadIndex(c) + 1 < table.load().size() ? c + table.speed().size() : -1
            };
            for (int n : neighbours) {
                if (n < 0 || TypedFigures.isSlipped(d, proposal, c) || TypedFigures.isSlipped(d, proposal, n)) {
                    continue;
                }
                CellProposal a = proposal.cell(c);
                CellProposal b = proposal.cell(n);
                boolean measured = a.standing() == Standing.MEASURED && b.standing() == Standing.MEASURED;
                double step = Math.abs(Math.log(a.factor() / b.factor()));
                if (step > limit * (measured ? BOTH_MEASURED : 1)) {
                    cells.add(c);
                    cells.add(n);
                    if (step > worst) {
                        worst = step;
                        worstA = c;
                        worstB = n;
                    }
                }
            }
        }
        if (!cells.isEmpty()) {
            out.add(new Caution(
                    "cliff",
                    Caution.Level.CHECK,
                    "A cliff between neighbours",
                    Say.cells(cells.size()) + " differ from a neighbour by more than "
                            + Say.percent(d.limits.of(Limit.CLIFF)) + ". Steepest: "
                            + Say.signed(proposal.cell(worstA).changePercent()) + " at " + Say.cell(table, worstA)
                            + " beside " + Say.signed(proposal.cell(worstB).changePercent()) + " at "
                            + Say.cell(table, worstB),
                    "Look at both cells' evidence; ride between them, or set them by hand to meet",
                    cells,
                    List.of()));
        }
    }
}
