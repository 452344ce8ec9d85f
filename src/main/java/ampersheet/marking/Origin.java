package ampersheet.marking;

/**
 * What a file says of whose answers these are, and of their order.
 *
 * @param sheet the sheet's ID as written there; may be empty
 * @param seat as written there; may be empty
 * @param name as written there; may be empty
 * @param browser a few letters by which a page knows its browser; empty in files that no page saved
 * @param save how many times that page had been saved with other answers; 0 where nothing tells
 */
record Origin(String sheet, String seat, String name, String browser, int save) {
    static Origin ofSheet(String sheet) {
        return new Origin(sheet, "", "", "", 0);
    }
}
