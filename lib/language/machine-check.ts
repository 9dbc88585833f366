import { messages } from './say'

/** What a student finds at the machine and the positioner before the arc. */
export const machineCheck = messages({
  en: {
    wireOn: 'Wire on the machine', rodOn: 'Rod in the holder', rolls: 'Drive rolls for', groove: 'Groove of the rolls', positionSet: 'Coupon set in',
    notLooked: 'Not looked', 'groove-v': 'smooth V', 'groove-u': 'smooth U', 'groove-knurled': 'knurled',
  },
  es: {
    wireOn: 'Alambre en la máquina', rodOn: 'Electrodo en el portaelectrodo', rolls: 'Rodillos para', groove: 'Ranura de los rodillos',
    positionSet: 'Probeta puesta en', notLooked: 'No miré', 'groove-v': 'lisa en V', 'groove-u': 'lisa en U', 'groove-knurled': 'moleteada',
  },
})
