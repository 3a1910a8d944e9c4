package fuelwright.ui.session;

import fuelwright.ui.theme.Words;

/** The pages of the work, in order. */
public enum Stage {
    MACHINE,
    TABLES,
    RIDES,
    EVIDENCE,
    PROPOSAL,
    CAUTIONS,
    HANDOVER;

    /** 1 to 7, as the rail shows it. */
    public int number() {
        return ordinal() + 1;
    }

    public String words() {
        return Words.of("stage." + name().toLowerCase(java.util.Locale.ROOT));
    }
}
