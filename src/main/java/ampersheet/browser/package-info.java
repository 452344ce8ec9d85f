/**
 * What a page calls: the portable rooms as a script. Only this room knows the compiler that makes it. Start reading at
 * {@link ampersheet.browser.Checker}.
 */
package ampersheet.browser;
