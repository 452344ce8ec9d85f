/**
 * Judging an answer: key, modelled mistakes, and the ladder of verdicts. Portable: {@code java.lang} and
 * {@code java.util} only. Start reading at {@link ampersheet.answer.Judge}.
 */
package ampersheet.answer;
