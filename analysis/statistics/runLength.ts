/** Average run lengths of the three charts, and the limits that give a wanted one: one place to import from. */
export {
  type CusumChart,
  cusumRunLength,
  cusumSteadyStateRunLength,
  designCusum,
} from './cusumRunLength.ts';
export { designEwma, type EwmaChart, ewmaRunLength } from './ewmaRunLength.ts';
export { NORMAL_OBSERVATIONS, type Observations, studentObservations } from './observations.ts';
export { designShewhart, type ShewhartChart, shewhartRunLength } from './shewhartRunLength.ts';
