package fuelwright.ui.plot;

/** Something that can be drawn at any size: on the screen, or into a picture file. */
public interface Plot {

    /** Draws everything into a space of this size, its left upper corner at 0, 0. */
    void paint(Ink ink, double width, double height);

    double getWidth();

    double getHeight();
}
