package fuelwright.handover;

/** What a typing slip looks like. */
public enum Slip {
    OLD_TABLE("the old table"),
    MIRRORED("the table the wrong way round"),
    LINE_SWAPPED("two lines swapped"),
    WRONG_LINE("another line's figures"),
    LINE_SHIFTED("line shifted by one"),
    SWAPPED("swapped with its neighbour"),
    SIGN("sign dropped"),
    DECIMAL_POINT("decimal point in the wrong place"),
    DIGITS_SWAPPED("two digits swapped"),
    DIGIT_MISSING("a digit is missing"),
    DIGIT_TOO_MANY("a digit too many"),
    NOT_TYPED("nothing was typed"),
    OLD_FIGURE("the old figure was left"),
    NEIGHBOUR("its neighbour's figure"),
    ONE_DIGIT("one digit is wrong"),
    OTHER("another figure");

    private final String words;

    Slip(String words) {
        this.words = words;
    }

    /** A few words for the user. */
    public String words() {
        return words;
    }
}
