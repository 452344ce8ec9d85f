package ampersheet.model;

import ampersheet.formula.Expression;

/** A place of a chain's or an arm's drawing that gets a label; no value of the model. */
public record PlannedMark(Expression x, Expression y, String label) {}
