package ampersheet.browser;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.openqa.selenium.chrome.ChromeDriver;

/** A page as a screen reader is given it by the browser, and what would be heard badly of it. */
final class AccessibilityTree {
    private static final Set<String> IMAGES = Set.of("image", "img", "graphics-document", "graphics-symbol");
    private static final Set<String> CONTROLS = Set.of(
            "link", "button", "textbox", "searchbox", "combobox", "checkbox", "radio", "switch", "DisclosureTriangle");
    /** What a link leads to without being a control. */
    private static final Set<String> PLACES = Set.of("RootWebArea", "main");
    /** Text that is meant for a program. */
    private static final Set<String> CODE = Set.of("code", "textbox");

    private final Map<String, Map<?, ?>> nodes = new HashMap<>();
    private final List<String> faults = new ArrayList<>();
    private final Map<String, Set<String>> headings = new HashMap<>();
    private int level;

    private AccessibilityTree() {}

    static List<String> faults(ChromeDriver browser) {
        AccessibilityTree tree = new AccessibilityTree();
        List<?> all = (List<?>) browser.executeCdpCommand("Accessibility.getFullAXTree", Map.of())
                .get("nodes");
        all.forEach(node -> tree.nodes.put((String) ((Map<?, ?>) node).get("nodeId"), (Map<?, ?>) node));
        tree.walk((Map<?, ?>) all.get(0), "", false);
        return tree.faults;
    }

    /** @param problem id of the region around; @param code whether this is text for a program */
    private void walk(Map<?, ?> node, String problem, boolean code) {
        String role = text(node.get("role"));
        boolean heard = !Boolean.TRUE.equals(node.get("ignored"));
        if (heard) {
            look(node, role, text(node.get("name")), problem, code);
        }
        String region = heard && role.equals("region") ? (String) node.get("nodeId") : problem;
        boolean inCode = code || CODE.contains(role);
        if (node.get("childIds") instanceof List<?> children) {
            children.stream()
                    .map(nodes::get)
                    .filter(child -> child != null)
                    .forEach(child -> walk(child, region, inCode));
        }
    }

    private void look(Map<?, ?> node, String role, String name, String problem, boolean code) {
        String description = text(node.get("description"));
        String what = role + " «" + name + "»";
        boolean named = !name.isBlank();
        if (!named && (CONTROLS.contains(role) || isFocusable(node) && !PLACES.contains(role))) {
            faults.add(what + " can be reached and has no name" + path(node));
        }
        if (IMAGES.contains(role) && !named) {
            faults.add(what + " is a picture without a name" + path(node));
        }
        if (IMAGES.contains(role)
                && named
                && !description.isBlank()
                && (name.contains(description) || description.contains(name))) {
            faults.add(what + " is described by the same words: " + description);
        }
        if ((role.equals("MathMLMath") || role.equals("math")) && !named) {
            faults.add(what + " is a formula without words" + path(node));
        }
        if (role.equals("heading")) {
            heading(what, name, Integer.parseInt(property(node, "level")), problem);
        }
        if (!code && role.equals("StaticText") && name.matches(".*\\p{L}_[\\p{L}\\p{N}].*")) {
            faults.add("a symbol is read with its underscore: " + name);
        }
    }

    private void heading(String what, String name, int its, String problem) {
        if (level > 0 && its > level + 1) {
            faults.add(what + " of level " + its + " follows one of level " + level);
        }
        level = its;
        if (!problem.isEmpty()
                && !headings.computeIfAbsent(problem, key -> new HashSet<>()).add(its + name)) {
            faults.add(what + " of level " + its + " stands twice in one problem");
        }
    }

    private static boolean isFocusable(Map<?, ?> node) {
        return property(node, "focusable").equals("true");
    }

    private static String property(Map<?, ?> node, String name) {
        if (node.get("properties") instanceof List<?> properties) {
            for (Object property : properties) {
                if (name.equals(((Map<?, ?>) property).get("name"))) {
                    return text(((Map<?, ?>) property).get("value"));
                }
            }
        }
        return "";
    }

    private String path(Map<?, ?> node) {
        StringBuilder path = new StringBuilder();
        Map<?, ?> above = nodes.get((String) node.get("parentId"));
        for (int i = 0; i < 4 && above != null; i++) {
            path.append(" in ")
                    .append(text(above.get("role")))
                    .append(" «")
                    .append(text(above.get("name")))
                    .append('»');
            above = nodes.get((String) above.get("parentId"));
        }
        return path.toString();
    }

    private static String text(Object value) {
        return value instanceof Map<?, ?> map && map.get("value") != null ? String.valueOf(map.get("value")) : "";
    }
}
