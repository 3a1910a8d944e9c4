package fuelwright.ui.plot;

import javafx.geometry.VPos;
import javafx.scene.paint.Color;
import javafx.scene.text.Font;
import javafx.scene.text.TextAlignment;

/**
 * What plots are drawn with: a canvas on the screen, or a picture file of lines and letters. Lengths in pixels, y downwards. The methods
 * mean what those of the same name of {@link javafx.scene.canvas.GraphicsContext} mean.
 */
public interface Ink {

    void setFill(Color color);

    void setStroke(Color color);

    void setLineWidth(double width);

    /** @param lengths of dashes and gaps in turn; none: a whole line */
    void setLineDashes(double... lengths);

    void setFont(Font font);

    void setTextAlign(TextAlignment align);

    void setTextBaseline(VPos baseline);

    void fillRect(double x, double y, double w, double h);

    void strokeRect(double x, double y, double w, double h);

    void fillRoundRect(double x, double y, double w, double h, double arcWidth, double arcHeight);

    void strokeRoundRect(double x, double y, double w, double h, double arcWidth, double arcHeight);

    void fillOval(double x, double y, double w, double h);

    void strokeOval(double x, double y, double w, double h);

    void strokeLine(double x1, double y1, double x2, double y2);

    void fillPolygon(double[] xs, double[] ys, int count);

    void strokePolygon(double[] xs, double[] ys, int count);

    void strokePolyline(double[] xs, double[] ys, int count);

    void fillText(String text, double x, double y);

    void beginPath();

    void moveTo(double x, double y);

    void lineTo(double x, double y);

    void closePath();

    void rect(double x, double y, double w, double h);

    void stroke();

    void fill();

    /** From now on, until {@link #restore}, only what lies inside the path is drawn. */
    void clip();

    void save();

    void restore();

    void translate(double x, double y);

    /** @param degrees clockwise */
    void rotate(double degrees);
}
