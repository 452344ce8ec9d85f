package ampersheet.model;

/** What a model is a model of; a template has at most one of each. */
public enum ModelKind {
    CIRCUIT("circuit", "a circuit"),
    HEAT("heat", "a heat network"),
    CHAIN("chain", "a chain"),
    EDGE("edge", "an edge"),
    BRANCHES("branches", "branches"),
    ROW("row", "a row"),
    NET("net", "a net");

    private final String key;
    private final String told;

    ModelKind(String key, String told) {
        this.key = key;
        this.told = told;
    }

    /** Under which a template plans it. */
    public String key() {
        return key;
    }

    /** With its article. */
    public String told() {
        return told;
    }
}
