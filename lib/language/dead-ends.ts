import { messages } from './say'

/** What is said where a page ends: not found (or not the reader's), failed, or still on its way. */
export const deadEnds = messages({
  en: {
    lostTitle: 'Not here, or not yours to see',
    lostText: 'The address may have a slip in it, the page may be gone, or it belongs to another class or program.',
    failedTitle: 'This page could not be shown',
    failedText: 'Something failed on our side. What was already saved is safe. Try again; if it fails twice, tell your instructor or coordinator.',
    reference: 'Reference for whoever looks into it: {digest}',
    tryAgain: 'Try again',
    toStart: 'To the start page',
    loading: 'Loading',
  },
  es: {
    lostTitle: 'No está aquí, o no te corresponde verlo',
    lostText: 'La dirección puede tener un error, la página puede haberse quitado, o es de otra clase u otro programa.',
    failedTitle: 'No se pudo mostrar esta página',
    failedText: 'Algo falló de nuestro lado. Lo que ya se guardó está a salvo. Intenta de nuevo; si falla dos veces, avisa a tu instructor o coordinador.',
    reference: 'Referencia para quien lo revise: {digest}',
    tryAgain: 'Intentar de nuevo',
    toStart: 'Ir al inicio',
    loading: 'Cargando',
  },
})
