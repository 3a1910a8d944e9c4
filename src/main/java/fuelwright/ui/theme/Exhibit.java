package fuelwright.ui.theme;

import javafx.scene.Node;

/**
 * A control of our own in one of its states, for the gallery that designers and developers look through.
 *
 * @param control what it is
 * @param state the state it is in
 * @param node the control itself
 * @param width pixels that it is given; 0 for what it asks for
 * @param height pixels that it is given; 0 for what it asks for
 */
public record Exhibit(String control, String state, Node node, double width, double height) {}
