import { asOnesAndZeros, type Outcome } from './outcome'
import { requireSameLength, requireShare } from './preconditions'

export type JudgedForecast = { readonly forecast: number; readonly outcome: 0 | 1 }

/** Forecasts paired with what happened. Throws RangeError when there are none, the lists differ in length, or a forecast is not from 0 to 1. */
export function judgedForecasts(forecasts: readonly number[], outcomes: readonly Outcome[]): JudgedForecast[] {
  requireSameLength(forecasts, 'The forecasts', outcomes, 'the outcomes')
  if (forecasts.length === 0) throw new RangeError('There are no forecasts with a known outcome yet.')
  const happened = asOnesAndZeros(outcomes, 'Outcomes')
  return forecasts.map((forecast, i) => {
    requireShare(forecast, `Forecast ${i + 1}`)
    return { forecast, outcome: happened[i] ?? 0 }
  })
}
