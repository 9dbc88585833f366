import { messages } from './say'

/** What is said where a page is not found, or not the reader's. */
export const deadEnds = messages({
  en: {
    lostTitle: 'Not here, or not yours to see',
    lostText: 'The address may have a slip in it, the page may be gone, or it belongs to another class or program.',
  },
  es: {
    lostTitle: 'No está aquí, o no te corresponde verlo',
    lostText: 'La dirección puede tener un error, la página puede haberse quitado, o es de otra clase u otro programa.',
  },
})
