import { createHash } from 'node:crypto'
import { mkdir, writeFile } from 'node:fs/promises'
import path from 'node:path'
import sharp from 'sharp'
import type { Inspection } from '@/lib/scoring/types'
import { minutesLater } from './calendar'
import { diceOf, type Dice } from './dice'
import { drawCoupon } from './drawing'
import type { Rows } from './rows'

/** At most so many of one student's, so that many students have one. */
const MOST_EACH = 3
const AT_ONCE = 4

type Wanted = { readonly coupon: Rows['Coupon'][number]; readonly inspection: Inspection; readonly lengthMm: number }

function latest(rows: Rows, count: number): Wanted[] {
  const lengths = new Map(rows.ExerciseVersion.map((version) => [`${version.exerciseId} ${version.version}`, version.lengthMm]))
  const looks = new Map(rows.Inspection.filter(({ kind, supersededAt }) => kind !== 'second' && supersededAt === null).map((inspection) => [inspection.couponId, inspection]))
  const each = new Map<string, number>()
  const wanted: Wanted[] = []
  for (const coupon of [...rows.Coupon].sort((a, b) => b.receivedAt.getTime() - a.receivedAt.getTime() || a.id.localeCompare(b.id))) {
    const have = each.get(coupon.studentId) ?? 0
    const look = looks.get(coupon.id)
    const lengthMm = lengths.get(`${coupon.exerciseId} ${coupon.exerciseVersion}`)
    if (have >= MOST_EACH || !look || lengthMm === undefined) continue
    each.set(coupon.studentId, have + 1)
    wanted.push({ coupon, inspection: look.readings.inspection, lengthMm })
    if (wanted.length === count) break
  }
  return wanted
}

async function keep({ coupon, inspection, lengthMm }: Wanted, folder: string, dice: Dice): Promise<Rows['Photo'][number]> {
  const svg = drawCoupon({ ...inspection, lengthMm, booth: coupon.booth ?? 0, number: coupon.number }, dice)
  const { data, info } = await sharp(Buffer.from(svg)).webp({ quality: 80 }).toBuffer({ resolveWithObject: true })
  const sha256 = createHash('sha256').update(data).digest('hex')
  const place = path.join(folder, 'photos', sha256.slice(0, 2), `${sha256}.webp`)
  await mkdir(path.dirname(place), { recursive: true })
  await writeFile(place, data)
  const createdAt = minutesLater(coupon.receivedAt, 0.5)
  return {
    programId: coupon.programId, id: dice.id(createdAt), couponId: coupon.id, uploaderId: coupon.studentId,
    sha256, widthPx: info.width, heightPx: info.height, byteSize: data.length, createdAt,
  }
}

/** Draws the latest coupons as they were measured and keeps the drawings where the application keeps photos. */
export async function addPhotos(rows: Rows, count: number, folder: string): Promise<void> {
  const wanted = latest(rows, count)
  for (let from = 0; from < wanted.length; from += AT_ONCE) {
    const batch = wanted.slice(from, from + AT_ONCE)
    rows.Photo.push(...await Promise.all(batch.map((each) => keep(each, folder, diceOf(`toeline/photo/${each.coupon.id}`)))))
  }
}
