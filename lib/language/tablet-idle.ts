import { messages } from './say'

/** The shared tablet's last minute before it goes back to the names; in every page of the student's room, so no more than that. */
export const tabletIdle = messages({
  en: {
    stillThere: 'Still there?',
    backIn: 'Back to the names in {seconds} s. What you typed is kept for you.',
    stay: 'I am still here',
  },
  es: {
    stillThere: '¿Sigues ahí?',
    backIn: 'Vuelve a los nombres en {seconds} s. Lo que escribiste se te guarda.',
    stay: 'Sigo aquí',
  },
})
