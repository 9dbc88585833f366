import type { Scorecard } from '@/lib/scoring/types'
import { formatForReader } from '@/lib/units/display'
import type { Dice } from './dice'

/** What the invented instructors say, by what was found. '{at}' is the place on the weld. */
const ABOUT: Readonly<Record<string, readonly string[]>> = {
  'width-in-band': ['Width goes off at {at}. Same travel all the way, please.', 'You sped up near {at}. Count it out loud if it helps.', 'Too wide at {at}: you stopped to look.', 'Bead wanders at {at}. Brace your elbow on the table.'],
  'width-consistency': ['Fat start, thin finish. One speed from end to end.', 'Toes are not parallel. Watch the back of the puddle, not the arc.', 'Nice in the middle, then it runs away from you.'],
  'leg-size': ['Short leg at {at}. Slow down a touch there.', 'Undersize at {at}. Let the puddle reach the line before you move on.', 'Legs are thin. You are outrunning it.', 'I measured {at} twice: it is short. Good everywhere else.'],
  'leg-balance': ['Bottom leg is winning. Aim a little higher.', 'Uneven legs at {at}. Check your work angle before you strike.', 'Point the wire at the root, not at the bottom plate.'],
  convexity: ['Ropey. A bit more volts or a bit more travel.', 'Too much crown around {at}.', 'It piled up. Shorten the stick-out and try again.'],
  undercut: ['Undercut at the toe around {at}. Pause there and let it fill.', 'Look at {at} with the light behind it: that is undercut.', 'Top toe is cut. Angle down and shorten the arc.', 'Undercut again. We will watch it together on the next one.'],
  porosity: ['Pores at {at}. Was the curtain open?', 'Wormy patch near {at}. Check your stick-out.', 'One pore at {at} is still one too many here.'],
  crater: ['Fill the crater. Back up a little before you break the arc.', 'Crater left hollow at the end. That is where cracks start.', 'End of the weld is low. Hold it a second longer.'],
  fusion: ['Cold at {at}. It is lying on the plate, not in it.', 'Not tied in. Come in hotter and stay on the leading edge.', 'Lap at {at} is rolled over. That will not hold.'],
  overlap: ['Rolled over the toe at {at}. Less weave.', 'Overlap on the bottom. Gravity won.'],
  reinforcement: ['Cover is too tall at {at}. One pass fewer would do.', 'Too much on top. Leave the last fill lower.', 'Good tie-in, but the cap stands too high.'],
  restart: ['Restart at {at} shows. Grind the start, strike ahead, come back.', 'Lump where you picked it up again.'],
  cleaning: ['Chip it before you show me.', 'Slag still on at {at}. I cannot look through slag.', 'Strike mark beside the weld. Strike in the joint.'],
  crack: ['There is a crack in the crater. Come and see me before the next one.', 'Crack at {at}. We stop here and find out why.'],
}
const PRAISE = [
  'That is the one. Do it again.', 'Straight as a rule. Well done.', 'Much better than last week. Keep this setting.', 'Toes are lovely. Same again, three times.',
  'Good. Now without looking at your feet.', 'I would put my name on this.', 'Steady hand today.', 'Nothing to say. Next plate.', 'Best one yet. Write down the settings.',
]
const INCOMPLETE = ['I ran out of time on this one. I will finish measuring it next class.', 'Not all measured: the plate was still too hot.']
const REPLIES: Readonly<Record<'en' | 'es', readonly string[]>> = {
  en: ['OK, will slow down.', 'I saw it after I chipped it.', 'Can you show me once more?', 'Thanks, changed the angle on the next one.', 'Drive roll was slipping, fixed now.'],
  es: ['Gracias, ya lo vi.', '¿Me lo muestra otra vez?', 'Voy más despacio en la próxima.', 'Cambié el ángulo, salió mejor.'],
}
const NOTES: Readonly<Record<'en' | 'es', readonly string[]>> = {
  en: ['New tip.', 'Ran a bit hot.', 'Had to stop in the middle.', 'Felt good.', 'Gun kept sputtering.', 'Tried a longer stick-out.', 'Last plate of the bin, rusty.', 'Left-handed this time.'],
  es: ['Cambié la boquilla.', 'Se me pegó al principio.', 'Creo que iba muy rápido.', 'Placa con óxido.', 'Salió pareja.'],
}

/** An instructor's comment on a scorecard: about the finding that is furthest out, or praise. */
export function commentOn(scorecard: Scorecard, dice: Dice): string {
  if (scorecard.verdict === 'accept') return dice.pick(PRAISE)
  const rejected = scorecard.findings.filter((finding) => finding.verdict === 'reject').sort((a, b) => (a.margin ?? 0) - (b.margin ?? 0))
  const worst = rejected[0]
  if (!worst) return dice.pick(INCOMPLETE)
  const lines = ABOUT[worst.rule] ?? ['Not there yet. Look at it with me.']
  const placed = worst.where ? lines : lines.filter((line) => !line.includes('{at}'))
  const at = worst.where ? formatForReader((worst.where.fromMm + worst.where.toMm) / 2, 'in') : ''
  return dice.pick(placed.length > 0 ? placed : lines).replace('{at}', at)
}

export const replyIn = (locale: 'en' | 'es', dice: Dice): string => dice.pick(REPLIES[locale])
export const noteIn = (locale: 'en' | 'es', dice: Dice): string => dice.pick(NOTES[locale])
