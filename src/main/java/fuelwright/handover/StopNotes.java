package fuelwright.handover;

import fuelwright.safety.Caution;
import fuelwright.table.Table;
import java.util.ArrayList;
import java.util.List;

/** Stop cautions as notes above a table's grid: a table never leaves without the Stop that stands against it. */
public final class StopNotes {

    /** The key of the notes. */
    public static final String KEY = Caution.NOTE_KEY;

    private StopNotes() {}

    /** The table with one note for each Stop caution; notes of an earlier judgement are replaced, those of the file made harmless. */
    public static Table on(Table table, List<Caution> cautions) {
        List<Table.Note> notes = new ArrayList<>();
        for (Table.Note note : table.notes()) {
            if (!note.key().equalsIgnoreCase(KEY)) {
                notes.add(new Table.Note(harmless(note.key()), harmless(note.value())));
            }
        }
        for (Caution caution : cautions) {
            if (caution.isStop()) {
                notes.add(new Table.Note(KEY, text(caution)));
            }
        }
        return table.withNotes(notes);
    }

    /** Each Stop caution in one line. */
    public static List<String> texts(List<Caution> cautions) {
        return cautions.stream().filter(Caution::isStop).map(StopNotes::text).toList();
    }

    /** A caution in one line: level, title, what, what to do. */
    public static String text(Caution caution) {
        return harmless(oneLine(ended(caution.sentence()) + " " + ended(caution.todo())));
    }

    /** The note isn't quoted, so a spreadsheet splits it at its commas: no piece of it may begin like a formula. */
    private static String harmless(String text) {
        return text.replaceAll("([,;]\\s*)(?=[=+@-])", "$1'");
    }

    /** The sentence with its full stop. */
    static String ended(String sentence) {
        String text = sentence.strip();
        return text.isEmpty() || ".!?".indexOf(text.charAt(text.length() - 1)) >= 0 ? text : text + ".";
    }

    /** The cautions that a table carries from when it was written. */
    public static List<String> carriedBy(Table table) {
        return table.notes().stream()
                .filter(n -> n.key().equalsIgnoreCase(KEY))
                .map(Table.Note::value)
                .toList();
    }

    private static String oneLine(String text) {
        return text.replaceAll("\\s+", " ").strip();
    }
}
