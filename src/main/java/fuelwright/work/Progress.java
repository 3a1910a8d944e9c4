package fuelwright.work;

/** Where long work says how far it is. May be called from any thread. */
@FunctionalInterface
public interface Progress {

    /** Says nothing to anybody. */
    Progress NONE = (fraction, what) -> {};

    /**
     * @param fraction from 0 to 1; negative where it can't be told
     * @param what what is being done, a few words
     */
    void at(double fraction, String what);
}
