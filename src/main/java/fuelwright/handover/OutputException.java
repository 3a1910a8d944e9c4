package fuelwright.handover;

import java.io.IOException;

/** An output folder could not be written; nothing of it was. The message is a sentence for the user: what, and what to do. */
public final class OutputException extends IOException {

    private static final long serialVersionUID = 1;

    /** Why nothing was written. */
    public enum Why {
        /** A file is there already and may not be replaced. */
        EXISTS,
        /** The place isn't a folder, or a folder stands where a file should go. */
        WRONG_KIND,
        /** Writing isn't allowed there. */
        NOT_ALLOWED,
        /** There is no room. */
        NO_ROOM,
        /** Anything else that the operating system said. */
        OTHER
    }

    private final Why why;

    OutputException(Why why, String sentence, Throwable cause) {
        super(sentence, cause);
        this.why = why;
    }

    public Why why() {
        return why;
    }
}
