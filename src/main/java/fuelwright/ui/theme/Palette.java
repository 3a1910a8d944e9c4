package fuelwright.ui.theme;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javafx.scene.paint.Color;

/** A theme's colours by role, read from its colour file, so that controls and drawings can't drift apart. Immutable. */
public final class Palette {

    private static final Pattern ROLE = Pattern.compile("-fw-([a-z0-9-]+)\\s*:\\s*(#[0-9a-fA-F]{6})\\s*;");

    private final Map<String, Color> roles;

    private Palette(Map<String, Color> roles) {
        this.roles = roles;
    }

    static Palette read(String file) {
        try (InputStream in = Palette.class.getResourceAsStream(file)) {
            return parse(new String(in.readAllBytes(), StandardCharsets.UTF_8));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    static Palette parse(String css) {
        Map<String, Color> roles = new LinkedHashMap<>();
        Matcher matcher = ROLE.matcher(css);
        while (matcher.find()) {
            roles.put(matcher.group(1), Color.web(matcher.group(2)));
        }
        return new Palette(roles);
    }

    /**
     * The colour of a role.
     *
     * @throws IllegalArgumentException if the theme has no such role
     */
    public Color role(String name) {
        Color color = roles.get(name);
        if (color == null) {
            throw new IllegalArgumentException("role " + name + " is not one of " + roles.keySet());
        }
        return color;
    }

    /** Roles {@code prefix-0}, {@code prefix-1} … as far as they go. */
    public List<Color> series(String prefix) {
        List<Color> found = new java.util.ArrayList<>();
        for (int i = 0; roles.containsKey(prefix + "-" + i); i++) {
            found.add(roles.get(prefix + "-" + i));
        }
        return List.copyOf(found);
    }

    /** What lies behind the work. */
    public Color surface() {
        return role("surface");
    }

    /** What a fill fades into the less certain it is: white by day, the page's dark by night. */
    public Color faded() {
        return Colours.luminance(surface()) > 0.5 ? Color.WHITE : surface();
    }

    /** What lies behind panels and cards. */
    public Color card() {
        return role("card");
    }

    public Color ink() {
        return role("ink");
    }

    /** Second-rank text; still readable. */
    public Color muted() {
        return role("muted");
    }

    public Color line() {
        return role("line");
    }

    public Color accent() {
        return role("accent");
    }

    public Color stop() {
        return role("stop");
    }

    public Color check() {
        return role("check");
    }

    public Color hatch() {
        return role("hatch");
    }

    public Color selection() {
        return role("selection");
    }

    /** Fuel less and more than now: for the change map, the shortfall map and whatever else has two directions. */
    public DivergingScale diverging() {
        return new DivergingScale(series("less"), role("same"), series("more"));
    }

    /** Amounts: from near the background to far from it. */
    public SequentialScale sequential() {
        return new SequentialScale(series("amount"));
    }
}
