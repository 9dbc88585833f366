import { messages } from './say'

/** What follows from the boxes of a pass. */
export const passFigureWords = messages({
  en: {
    travel: 'Travel {speed}', arcEnergy: 'Arc energy {energy}', heatInput: 'Heat input {heat} (arc energy × {k})',
    computed: 'Worked out from length, time, volts and amps:',
  },
  es: {
    travel: 'Avance {speed}', arcEnergy: 'Energía de arco {energy}', heatInput: 'Calor aportado {heat} (energía de arco × {k})',
    computed: 'Calculado con el largo, el tiempo, los voltios y los amperios:',
  },
})
