package fuelwright.ui.plot;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Locale;
import javafx.geometry.VPos;
import javafx.scene.paint.Color;
import javafx.scene.text.Font;
import javafx.scene.text.TextAlignment;

/** Draws into SVG (W3C, Scalable Vector Graphics 1.1). Text stays text. */
public final class SvgInk implements Ink {

    private static final double BASELINE_FROM_MIDDLE = 0.35;
    private static final double BASELINE_FROM_TOP = 0.8;

    /** What {@link #save} keeps. {@code groups}: how many groups were opened since, to be closed again. */
    private static final class State implements Cloneable {
        private Color fill = Color.BLACK;
        private Color stroke = Color.BLACK;
        private double lineWidth = 1;
        private double[] dashes = {};
        private Font font = Font.getDefault();
        private TextAlignment align = TextAlignment.LEFT;
        private VPos baseline = VPos.BASELINE;
        private int groups;

        State copy() {
            try {
                State copy = (State) clone();
                copy.groups = 0;
                return copy;
            } catch (CloneNotSupportedException e) {
                throw new AssertionError(e);
            }
        }
    }

    private final double width;
    private final double height;
    private final StringBuilder body = new StringBuilder();
    private final StringBuilder path = new StringBuilder();
    private final Deque<State> kept = new ArrayDeque<>();
    private State now = new State();
    private int clips;

    /** @param background what lies behind everything */
    public SvgInk(double width, double height, Color background) {
        this.width = width;
        this.height = height;
        setFill(background);
        fillRect(0, 0, width, height);
    }

    /** The whole picture. */
    public String document() {
        StringBuilder all = new StringBuilder("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n");
        all.append("<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"")
                .append(number(width))
                .append("\" height=\"")
                .append(number(height))
                .append("\" viewBox=\"0 0 ")
                .append(number(width))
                .append(' ')
                .append(number(height))
                .append("\">\n")
                .append(body);
        int open = now.groups + kept.stream().mapToInt(s -> s.groups).sum();
        return all.append("</g>\n".repeat(open)).append("</svg>\n").toString();
    }

    @Override
    public void setFill(Color color) {
        now.fill = color;
    }

    @Override
    public void setStroke(Color color) {
        now.stroke = color;
    }

    @Override
    public void setLineWidth(double lineWidth) {
        now.lineWidth = lineWidth;
    }

    @Override
    public void setLineDashes(double... lengths) {
        now.dashes = lengths == null ? new double[0] : lengths.clone();
    }

    @Override
    public void setFont(Font font) {
        now.font = font;
    }

    @Override
    public void setTextAlign(TextAlignment align) {
        now.align = align;
    }

    @Override
    public void setTextBaseline(VPos baseline) {
        now.baseline = baseline;
    }

    @Override
    public void fillRect(double x, double y, double w, double h) {
        box(x, y, w, h, 0, 0, filled());
    }

    @Override
    public void strokeRect(double x, double y, double w, double h) {
        box(x, y, w, h, 0, 0, stroked());
    }

    @Override
    public void fillRoundRect(double x, double y, double w, double h, double arcWidth, double arcHeight) {
        box(x, y, w, h, arcWidth, arcHeight, filled());
    }

    @Override
    public void strokeRoundRect(double x, double y, double w, double h, double arcWidth, double arcHeight) {
        box(x, y, w, h, arcWidth, arcHeight, stroked());
    }

    private void box(double x, double y, double w, double h, double arcWidth, double arcHeight, String paint) {
        body.append("<rect").append(pair("x", x)).append(pair("y", y));
        body.append(pair("width", Math.max(0, w))).append(pair("height", Math.max(0, h)));
        if (arcWidth > 0) {
            body.append(pair("rx", arcWidth / 2)).append(pair("ry", arcHeight / 2));
        }
        body.append(paint).append("/>\n");
    }

    @Override
    public void fillOval(double x, double y, double w, double h) {
        oval(x, y, w, h, filled());
    }

    @Override
    public void strokeOval(double x, double y, double w, double h) {
        oval(x, y, w, h, stroked());
    }

    private void oval(double x, double y, double w, double h, String paint) {
        body.append("<ellipse").append(pair("cx", x + w / 2)).append(pair("cy", y + h / 2));
        body.append(pair("rx", w / 2)).append(pair("ry", h / 2)).append(paint).append("/>\n");
    }

    @Override
    public void strokeLine(double x1, double y1, double x2, double y2) {
        body.append("<line").append(pair("x1", x1)).append(pair("y1", y1));
        body.append(pair("x2", x2)).append(pair("y2", y2)).append(stroked()).append("/>\n");
    }

    @Override
    public void fillPolygon(double[] xs, double[] ys, int count) {
        points("polygon", xs, ys, count, filled());
    }

    @Override
    public void strokePolygon(double[] xs, double[] ys, int count) {
        points("polygon", xs, ys, count, stroked());
    }

    @Override
    public void strokePolyline(double[] xs, double[] ys, int count) {
        points("polyline", xs, ys, count, stroked());
    }

    private void points(String element, double[] xs, double[] ys, int count, String paint) {
        body.append('<').append(element).append(" points=\"");
        for (int i = 0; i < count; i++) {
            body.append(i == 0 ? "" : " ").append(number(xs[i])).append(',').append(number(ys[i]));
        }
        body.append('"').append(paint).append("/>\n");
    }

    @Override
    public void fillText(String text, double x, double y) {
        double size = now.font.getSize();
        double down = now.baseline == VPos.CENTER
                ? BASELINE_FROM_MIDDLE
                : now.baseline == VPos.TOP ? BASELINE_FROM_TOP : now.baseline == VPos.BOTTOM ? -0.2 : 0;
        String anchor =
                now.align == TextAlignment.CENTER ? "middle" : now.align == TextAlignment.RIGHT ? "end" : "start";
        body.append("<text").append(pair("x", x)).append(pair("y", y + down * size));
        body.append(pair("font-size", size)).append(" font-family=\"").append(safe(now.font.getFamily()));
        body.append(", sans-serif\" text-anchor=\"").append(anchor).append('"');
        if (now.font.getStyle().contains("Bold")) {
            body.append(" font-weight=\"bold\"");
        }
        body.append(filled()).append('>').append(safe(text)).append("</text>\n");
    }

    @Override
    public void beginPath() {
        path.setLength(0);
    }

    @Override
    public void moveTo(double x, double y) {
        path.append('M').append(number(x)).append(' ').append(number(y));
    }

    @Override
    public void lineTo(double x, double y) {
        path.append('L').append(number(x)).append(' ').append(number(y));
    }

    @Override
    public void closePath() {
        path.append('Z');
    }

    @Override
    public void rect(double x, double y, double w, double h) {
        moveTo(x, y);
        lineTo(x + w, y);
        lineTo(x + w, y + h);
        lineTo(x, y + h);
        closePath();
    }

    @Override
    public void stroke() {
        body.append("<path d=\"").append(path).append('"').append(stroked()).append("/>\n");
    }

    @Override
    public void fill() {
        body.append("<path d=\"").append(path).append('"').append(filled()).append("/>\n");
    }

    @Override
    public void clip() {
        clips++;
        body.append("<clipPath id=\"c")
                .append(clips)
                .append("\"><path d=\"")
                .append(path)
                .append("\"/></clipPath>\n");
        group("clip-path=\"url(#c" + clips + ")\"");
    }

    @Override
    public void save() {
        kept.push(now);
        now = now.copy();
    }

    @Override
    public void restore() {
        body.append("</g>\n".repeat(now.groups));
        now = kept.pop();
    }

    @Override
    public void translate(double x, double y) {
        group("transform=\"translate(" + number(x) + ' ' + number(y) + ")\"");
    }

    @Override
    public void rotate(double degrees) {
        group("transform=\"rotate(" + number(degrees) + ")\"");
    }

    private void group(String attribute) {
        body.append("<g ").append(attribute).append(">\n");
        now.groups++;
    }

    private String filled() {
        return " fill=\"" + hex(now.fill) + '"' + opacity("fill-opacity", now.fill);
    }

    private String stroked() {
        StringBuilder all = new StringBuilder(" fill=\"none\" stroke=\"")
                .append(hex(now.stroke))
                .append('"');
        all.append(opacity("stroke-opacity", now.stroke)).append(pair("stroke-width", now.lineWidth));
        if (now.dashes.length > 0) {
            all.append(" stroke-dasharray=\"");
            for (int i = 0; i < now.dashes.length; i++) {
                all.append(i == 0 ? "" : " ").append(number(now.dashes[i]));
            }
            all.append('"');
        }
        return all.toString();
    }

    private static String opacity(String name, Color color) {
        return color.getOpacity() < 1 ? pair(name, color.getOpacity()) : "";
    }

    private static String hex(Color c) {
        return String.format(
                "#%02x%02x%02x",
                Math.round(c.getRed() * 255), Math.round(c.getGreen() * 255), Math.round(c.getBlue() * 255));
    }

    private static String pair(String name, double value) {
        return ' ' + name + "=\"" + number(value) + '"';
    }

    private static String number(double value) {
        String text = String.format(Locale.ROOT, "%.2f", value);
        return text.endsWith(".00") ? text.substring(0, text.length() - 3) : text;
    }

    /** Markup in a text stays text; what XML 1.0 can't hold is left out. */
    private static String safe(String text) {
        StringBuilder all = new StringBuilder();
        text.codePoints().forEach(c -> {
            switch (c) {
                case '<':
                    all.append("&lt;");
                    break;
                case '>':
                    all.append("&gt;");
                    break;
                case '&':
                    all.append("&amp;");
                    break;
                case '"':
                    all.append("&quot;");
                    break;
                default:
                    if (c >= ' ' && c != 0xFFFE && c != 0xFFFF && !(c >= 0xD800 && c <= 0xDFFF)) {
                        all.appendCodePoint(c);
                    }
            }
        });
        return all.toString();
    }
}
