package fuelwright.safety;

import java.util.function.Supplier;

/** A result that several rules need, worked out by whoever asks first. */
final class Kept<T> {

    private T result;

    synchronized T get(Supplier<T> work) {
        if (result == null) {
            result = work.get();
        }
        return result;
    }
}
