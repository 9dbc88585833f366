import { messages } from './say'

/** What the server says when something cannot be done and no single box is to blame. */
export const refusals = messages({
  en: {
    notHere: 'This is not here, or not yours to see.',
    lookAgain: 'Some of this needs another look.',
    signedOut: 'You are signed out. Sign in again; nothing you typed is lost.',
    newPassword: 'Someone else chose your password. Choose your own on the account page first; then send this again.',
    classArchived: 'This class has been archived, so nothing new is logged in it. What you typed is kept on this device: show it to your instructor.',
    offList: 'This exercise is no longer on the list of your class. What you typed is kept on this device: show it to your instructor.',
    cautionsFirst: 'Read and confirm the cautions of this exercise first. What you typed is kept.',
    photosPerCoupon: 'A coupon holds up to {most} photos.',
    photosPerDay: 'You have added {most} photos since yesterday. Try again tomorrow.',
    photoTooLarge: 'This photo is over {most} MB. Take it again at a smaller size.',
    photoKind: 'This file is not a JPEG, PNG or WebP picture. Choose a photo.',
    photoDamaged: 'This picture is damaged or far too large to open. Take it again.',
    photoStoreDown: 'Photos cannot be kept or shown just now. Nothing is lost; try again in a few minutes.',
  },
  es: {
    notHere: 'Esto no está aquí, o no te corresponde verlo.',
    lookAgain: 'Algo de esto necesita otra mirada.',
    signedOut: 'Tu sesión terminó. Entra otra vez; no se pierde nada de lo que escribiste.',
    newPassword: 'Otra persona eligió tu contraseña. Primero elige la tuya en la página de tu cuenta; después envía esto otra vez.',
    classArchived: 'Esta clase se archivó y ya no se registra nada nuevo en ella. Lo que escribiste se conserva en este dispositivo: muéstraselo a tu instructor.',
    offList: 'Este ejercicio ya no está en la lista de tu clase. Lo que escribiste se conserva en este dispositivo: muéstraselo a tu instructor.',
    cautionsFirst: 'Primero lee y confirma las precauciones de este ejercicio. Lo que escribiste se conserva.',
    photosPerCoupon: 'Una probeta admite hasta {most} fotos.',
    photosPerDay: 'Agregaste {most} fotos desde ayer. Intenta de nuevo mañana.',
    photoTooLarge: 'Esta foto pasa de {most} MB. Tómala otra vez más chica.',
    photoKind: 'Este archivo no es una imagen JPEG, PNG o WebP. Elige una foto.',
    photoDamaged: 'Esta imagen está dañada o es demasiado grande para abrirla. Tómala otra vez.',
    photoStoreDown: 'Por ahora no se pueden guardar ni mostrar fotos. No se perdió nada; intenta de nuevo en unos minutos.',
  },
})
