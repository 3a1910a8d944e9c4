package fuelwright.work;

/** Where long work asks whether it is still wanted. */
@FunctionalInterface
public interface Cancellation {

    /** Never cancels. */
    Cancellation NEVER = () -> false;

    boolean cancelled();

    /** @throws CancelledException if the work isn't wanted any more */
    default void check() {
        if (cancelled()) {
            throw new CancelledException();
        }
    }

    /** Thrown out of work that isn't wanted any more. */
    final class CancelledException extends RuntimeException {
        private static final long serialVersionUID = 1;

        CancelledException() {
            super("cancelled");
        }
    }
}
