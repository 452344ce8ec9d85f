/** What every page format shares: the limited Markdown of prose, the words printed around the content, safe links. */
package ampersheet.render;
