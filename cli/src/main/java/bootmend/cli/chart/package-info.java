/** A board's trials as a picture in a file. */
package bootmend.cli.chart;
