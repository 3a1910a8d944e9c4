package fuelwright.ui.theme;

import javafx.geometry.Orientation;
import javafx.scene.layout.Pane;
import javafx.scene.layout.Region;

/** One at the left, the other at the right; where that is too wide, the other below. */
public final class SideBySide extends Pane {

    private static final double GAP = 8;
    private static final double APART = 16;

    private final Region left;
    private final Region right;

    public SideBySide(Region left, Region right) {
        super(left, right);
        this.left = left;
        this.right = right;
    }

    private boolean fits(double width) {
        return width < 0 || left.prefWidth(-1) + APART + right.prefWidth(-1) <= width;
    }

    @Override
    public Orientation getContentBias() {
        return Orientation.HORIZONTAL;
    }

    @Override
    protected double computeMinWidth(double height) {
        return Math.max(left.minWidth(-1), right.minWidth(-1));
    }

    @Override
    protected double computePrefWidth(double height) {
        return left.prefWidth(-1) + APART + right.prefWidth(-1);
    }

    @Override
    protected double computeMinHeight(double width) {
        return computePrefHeight(width);
    }

    @Override
    protected double computePrefHeight(double width) {
        double a = left.prefHeight(-1);
        double b = right.prefHeight(-1);
        return fits(width) ? Math.max(a, b) : a + GAP + b;
    }

    @Override
    protected void layoutChildren() {
        double width = getWidth();
        double a = left.prefHeight(-1);
        double b = right.prefHeight(-1);
        double wide = Math.min(width, right.prefWidth(-1));
        left.resizeRelocate(0, fits(width) ? (Math.max(a, b) - a) / 2 : 0, Math.min(width, left.prefWidth(-1)), a);
        if (fits(width)) {
            right.resizeRelocate(width - wide, (Math.max(a, b) - b) / 2, wide, b);
        } else {
            right.resizeRelocate(0, a + GAP, wide, b);
        }
    }
}
