import { messages } from './say'

/** Placing and naming what was seen on a bead. */
export const indicationWords = messages({
  en: {
    whereSeen: 'Where on the bead?', whatSeen: 'What is it?', placed: 'At {place}. Now tap what it is.', cancel: 'Never mind',
    changeIndication: 'Change indication {n}', closeIndication: 'Done with indication {n}', indicationLine: '{kind}, {at} from the start',
    noPlace: '{kind}, place not said', movePlace: 'Place it on the bead',
  },
  es: {
    whereSeen: '¿En qué parte del cordón?', whatSeen: '¿Qué es?', placed: 'En {place}. Ahora toca qué es.', cancel: 'Mejor no',
    changeIndication: 'Cambiar la indicación {n}', closeIndication: 'Lista la indicación {n}', indicationLine: '{kind}, a {at} del inicio',
    noPlace: '{kind}, sin lugar', movePlace: 'Marcarla en el cordón',
  },
})
