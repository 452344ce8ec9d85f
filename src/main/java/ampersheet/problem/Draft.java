package ampersheet.problem;

import ampersheet.answer.KnownMistake;
import ampersheet.formula.Values;
import java.util.List;
import java.util.Map;

/**
 * What the first route alone gives.
 *
 * @param givens with constants
 * @param values givens and steps
 * @param mistakes that can be made, by step
 * @param chosen index of the right option, by choice
 */
record Draft(Values givens, Values values, Map<String, List<KnownMistake>> mistakes, Map<String, Integer> chosen) {}
