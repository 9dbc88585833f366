import { messages } from './say'

/** What a page says that failed; every screen carries it, so no more than that. */
export const pageFailed = messages({
  en: {
    failedTitle: 'This page could not be shown',
    failedText: 'Something failed on our side. What was already saved is safe. Try again; if it fails twice, tell your instructor or coordinator.',
    reference: 'Reference for whoever looks into it: {digest}',
    tryAgain: 'Try again',
    toStart: 'To the start page',
  },
  es: {
    failedTitle: 'No se pudo mostrar esta página',
    failedText: 'Algo falló de nuestro lado. Lo que ya se guardó está a salvo. Intenta de nuevo; si falla dos veces, avisa a tu instructor o coordinador.',
    reference: 'Referencia para quien lo revise: {digest}',
    tryAgain: 'Intentar de nuevo',
    toStart: 'Ir al inicio',
  },
})
