/** Charts as plain data: which shapes and words stand where; windows and picture files show the same ones. */
package bootmend.chart;
