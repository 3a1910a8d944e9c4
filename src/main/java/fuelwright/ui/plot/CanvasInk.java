package fuelwright.ui.plot;

import javafx.geometry.VPos;
import javafx.scene.canvas.Canvas;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.paint.Color;
import javafx.scene.text.Font;
import javafx.scene.text.TextAlignment;

/** Draws on a canvas. */
public final class CanvasInk implements Ink {

    private final GraphicsContext g;

    private CanvasInk(GraphicsContext g) {
        this.g = g;
    }

    /** Draws on a canvas that is wiped first. */
    public static Ink on(Canvas canvas) {
        GraphicsContext g = canvas.getGraphicsContext2D();
        g.clearRect(0, 0, canvas.getWidth(), canvas.getHeight());
        return new CanvasInk(g);
    }

    @Override
    public void setFill(Color color) {
        g.setFill(color);
    }

    @Override
    public void setStroke(Color color) {
        g.setStroke(color);
    }

    @Override
    public void setLineWidth(double width) {
        g.setLineWidth(width);
    }

    @Override
    public void setLineDashes(double... lengths) {
        g.setLineDashes(lengths);
    }

    @Override
    public void setFont(Font font) {
        g.setFont(font);
    }

    @Override
    public void setTextAlign(TextAlignment align) {
        g.setTextAlign(align);
    }

    @Override
    public void setTextBaseline(VPos baseline) {
        g.setTextBaseline(baseline);
    }

    @Override
    public void fillRect(double x, double y, double w, double h) {
        g.fillRect(x, y, w, h);
    }

    @Override
    public void strokeRect(double x, double y, double w, double h) {
        g.strokeRect(x, y, w, h);
    }

    @Override
    public void fillRoundRect(double x, double y, double w, double h, double arcWidth, double arcHeight) {
        g.fillRoundRect(x, y, w, h, arcWidth, arcHeight);
    }

    @Override
    public void strokeRoundRect(double x, double y, double w, double h, double arcWidth, double arcHeight) {
        g.strokeRoundRect(x, y, w, h, arcWidth, arcHeight);
    }

    @Override
    public void fillOval(double x, double y, double w, double h) {
        g.fillOval(x, y, w, h);
    }

    @Override
    public void strokeOval(double x, double y, double w, double h) {
        g.strokeOval(x, y, w, h);
    }

    @Override
    public void strokeLine(double x1, double y1, double x2, double y2) {
        g.strokeLine(x1, y1, x2, y2);
    }

    @Override
    public void fillPolygon(double[] xs, double[] ys, int count) {
        g.fillPolygon(xs, ys, count);
    }

    @Override
    public void strokePolygon(double[] xs, double[] ys, int count) {
        g.strokePolygon(xs, ys, count);
    }

    @Override
    public void strokePolyline(double[] xs, double[] ys, int count) {
        g.strokePolyline(xs, ys, count);
    }

    @Override
    public void fillText(String text, double x, double y) {
        g.fillText(text, x, y);
    }

    @Override
    public void beginPath() {
        g.beginPath();
    }

    @Override
    public void moveTo(double x, double y) {
        g.moveTo(x, y);
    }

    @Override
    public void lineTo(double x, double y) {
        g.lineTo(x, y);
    }

    @Override
    public void closePath() {
        g.closePath();
    }

    @Override
    public void rect(double x, double y, double w, double h) {
        g.rect(x, y, w, h);
    }

    @Override
    public void stroke() {
        g.stroke();
    }

    @Override
    public void fill() {
        g.fill();
    }

    @Override
    public void clip() {
        g.clip();
    }

    @Override
    public void save() {
        g.save();
    }

    @Override
    public void restore() {
        g.restore();
    }

    @Override
    public void translate(double x, double y) {
        g.translate(x, y);
    }

    @Override
    public void rotate(double degrees) {
        g.rotate(degrees);
    }
}
