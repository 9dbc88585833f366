import { later } from '../later'

/** The button that opens the measuring, fetched where a photo to measure is shown. */
export const MeasureButtonLater = later(() => import('./measure-button').then((module) => module.MeasureButton))
