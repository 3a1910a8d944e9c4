package fuelwright.ui.theme;

import javafx.scene.Node;

/** What a stage shows: the work in the middle, the explanation of what is selected on the right. */
public interface StagePane {

    Node work();

    Node explanation();

    /** What gets the keyboard when the stage is entered. */
    default Node first() {
        return work();
    }
}
