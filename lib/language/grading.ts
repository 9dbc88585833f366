import { messages } from './say'

/** A verdict an instructor decided over the computed one, wherever it is shown. */
export const gradingWords = messages({
  en: {
    byDecisionEvidence: 'by the instructor’s decision', decidedCount: '{n} of {of} coupons count by the instructor’s decision over the readings: their verdict alone, without margins.',
    byDecision: 'By the instructor’s decision', computedWas: 'The readings by themselves: {verdict}.', reason: 'Reason: {reason}', decidedBy: '{name}, {date}',
    markStays: 'The mark is the one the readings give.', short: 'decided', decidedOne: 'One of these verdicts stands by the instructor’s decision, not by the readings.', decidedSome: '{n} of these verdicts stand by the instructor’s decision, not by the readings.',
    decidedOver: '{verdict}, by the instructor’s decision; the readings by themselves: {computed}',
  },
  es: {
    byDecisionEvidence: 'por decisión del instructor', decidedCount: '{n} de {of} probetas cuentan por decisión del instructor sobre las lecturas: solo su veredicto, sin márgenes.',
    byDecision: 'Por decisión del instructor', computedWas: 'Las lecturas por sí solas: {verdict}.', reason: 'Motivo: {reason}', decidedBy: '{name}, {date}',
    markStays: 'La nota es la que dan las lecturas.', short: 'por decisión', decidedOne: 'Uno de estos veredictos vale por decisión del instructor, no por las lecturas.', decidedSome: '{n} de estos veredictos valen por decisión del instructor, no por las lecturas.',
    decidedOver: '{verdict}, por decisión del instructor; las lecturas por sí solas: {computed}',
  },
})
