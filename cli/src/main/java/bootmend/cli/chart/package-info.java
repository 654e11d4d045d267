/** Charts in pixels. */
package bootmend.cli.chart;
