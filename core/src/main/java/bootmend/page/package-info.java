/** What jobs found, in words and in documents to print or keep; no screen is known here. */
package bootmend.page;
