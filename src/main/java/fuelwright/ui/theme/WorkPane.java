package fuelwright.ui.theme;

import javafx.geometry.Orientation;
import javafx.scene.Node;
import javafx.scene.layout.StackPane;

/** As high as its place, or as its content needs at its width: a scroll pane that fits by itself asks for the height of unwrapped words. */
final class WorkPane extends StackPane {

    private double height;

    WorkPane(Node content) {
        super(content);
    }

    /** @param most the height of the place */
    void fill(double most) {
        if (most != height) {
            height = most;
            requestLayout();
        }
    }

    @Override
    public Orientation getContentBias() {
        return Orientation.HORIZONTAL;
    }

    @Override
    protected double computePrefHeight(double width) {
        return Math.max(height, computeMinHeight(width));
    }
}
