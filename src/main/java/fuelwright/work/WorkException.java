package fuelwright.work;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;

/** The machine that the program runs on let it down: a file or folder can't be read or written. The message is a sentence for the user. */
public final class WorkException extends RuntimeException {

    private static final long serialVersionUID = 1;

    private final boolean alreadyThere;

    WorkException(String sentence, boolean alreadyThere, Throwable cause) {
        super(sentence, cause);
        this.alreadyThere = alreadyThere;
    }

    /** Whether nothing is wrong but that files would be replaced which may not be. */
    public boolean alreadyThere() {
        return alreadyThere;
    }

    /** A file that could not be read. */
    /** A file that could not be written. */
    static WorkException writing(Path file, IOException cause) {
        return new WorkException(
                file + ": it can't be written (" + cause.getClass().getSimpleName()
                        + "). Check the folder's permissions and the space left on the disk",
                false,
                cause);
    }

    static WorkException reading(Path file, IOException cause) {
        String reason;
        if (cause instanceof NoSuchFileException) {
            reason = "there is no such file. Check the name";
        } else if (cause instanceof AccessDeniedException) {
            reason = "you may not read it. Change its permissions or give another file";
        } else {
            reason = "it can't be read (" + cause.getClass().getSimpleName()
                    + "). Copy it to this computer and try again";
        }
        return new WorkException(file + ": " + reason, false, cause);
    }
}
