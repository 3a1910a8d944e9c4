package fuelwright.ride;

import fuelwright.issue.Issue;
import java.util.Locale;

/** Issues as sentences: the first letter is a capital, unless the sentence starts with a heading of the file. */
final class Say {

    private static final String OVERRULED = "the heading says ";
    private static final String RATIO_UNTOLD = "what ratio the display was set to isn't known";

    private Say() {}

    static Issue error(String file, int line, int column, String what, String todo) {
        return Issue.error(file, line, column, capital(what), capital(todo));
    }

    static Issue warning(String file, int line, int column, String what, String todo) {
        return Issue.warning(file, line, column, capital(what), capital(todo));
    }

    /** A warning that starts with the heading that it is about. */
    static Issue doubt(String file, int line, int column, String heading, String what, String todo) {
        return Issue.warning(file, line, column, heading + ": " + what, capital(todo));
    }

    /** What a heading says that its figures deny. */
    static String overruled(String stated, String but) {
        return OVERRULED + stated + ", but " + but;
    }

    static boolean isOverruled(Issue issue) {
        return issue.what().toLowerCase(Locale.ROOT).contains(OVERRULED);
    }

    /** The ratio of an AFR display that nobody told. */
    static String ratioUntold(double taken) {
        return RATIO_UNTOLD + "; " + Figures.plain(taken) + " is taken";
    }

    static boolean isRatioUntold(Issue issue) {
        return issue.what().contains(RATIO_UNTOLD);
    }

    static Issue note(String file, String what) {
        return Issue.note(file, capital(what));
    }

    private static String capital(String sentence) {
        return sentence.isEmpty() ? sentence : Character.toUpperCase(sentence.charAt(0)) + sentence.substring(1);
    }
}
