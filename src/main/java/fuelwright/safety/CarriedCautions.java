package fuelwright.safety;

import fuelwright.table.Table;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;

/**
 * A fuel table that was written while a Stop caution stood carries it above its grid. It is judged anew here, by rides that may not have been
 * where that Stop was seen, so it is repeated: what was said of the table on its way out isn't forgotten on its way back in.
 */
final class CarriedCautions implements Rule {

    @Override
    public List<Caution> judge(Dossier d) {
        List<String> texts = d.fuel.notes().stream()
                .filter(n -> n.key().equalsIgnoreCase(Caution.NOTE_KEY))
                .map(Table.Note::value)
                .toList();
        List<Caution> out = new ArrayList<>();
        if (!texts.isEmpty()) {
            String first = texts.get(0).strip().replaceAll("[.\\s]+$", "");
            out.add(new Caution(
                    "carried-stop",
                    d.rides() == 0 ? Caution.Level.STOP : Caution.Level.CHECK,
                    "The table came with a Stop caution",
                    "It says: '" + first + "'" + (texts.size() > 1 ? ", and " + (texts.size() - 1) + " more" : ""),
                    d.rides() == 0
                            ? "Nothing has been ridden since that could lift it: deal with it before riding this table"
                            : "See that the rides cover what it names; what they show is judged anew in the other cautions",
                    new TreeSet<>(),
                    List.of()));
        }
        return out;
    }
}
