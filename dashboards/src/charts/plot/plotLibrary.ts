/** The chart library and its sheet, in a chunk of their own that only pages with charts fetch. */
import 'uplot/dist/uPlot.min.css';

export { default } from 'uplot';
