package fuelwright.unit;

/** The units that somebody reads figures in. */
@FunctionalInterface
public interface Units {

    /** Those of command line, files and report. */
    Units CANONICAL = Measured::canonical;

    /** The figure as it is read, with its unit where it has to be. */
    String words(Measured figure);
}
