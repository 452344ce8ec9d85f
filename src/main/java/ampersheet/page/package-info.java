/**
 * Pages a learner opens without a network: to practise, with the keys inside, or to hand in answers, without any. Each
 * is one file with the checker's script in it. Start reading at {@link ampersheet.page.PracticePage}.
 */
package ampersheet.page;
