import type { Metadata } from 'next'
import { notFound } from 'next/navigation'
import { classPaper } from '@/lib/language/class-paper'
import { say, type Locale } from '@/lib/language/say'
import { paperFor } from '@/lib/reports/paper'
import { PaperPages } from '@/app/print/_parts/paper-pages'
import { requireRole } from '@/app/_server/auth/require-role'
import { pageId } from '@/app/_server/page-id'
import { readerLocale } from '@/app/_server/reader'
import { couponTags, type CouponTag, type CouponTags } from '@/app/_server/views/coupon-tags'

export const generateMetadata = async (): Promise<Metadata> => ({ title: say(classPaper, await readerLocale(), 'tags') })

type Props = { params: Promise<{ classId: string; exerciseId: string }>; searchParams: Promise<Record<string, string | string[] | undefined>> }

/** A tag for every student's next coupon of one exercise, to cut out; its symbol opens the log of that exercise. */
export default async function CouponTagsPage({ params, searchParams }: Props) {
  const viewer = await requireRole('instructor', 'coordinator')
  const { locale } = viewer
  const { classId, exerciseId } = await params
  const { paper } = await searchParams
  const tags = (await couponTags(viewer, pageId(classId), pageId(exerciseId), new Date())) ?? notFound()
  const head = <h1 className="text-xl leading-none">{say(classPaper, locale, 'tags')}, {tags.title}</h1>
  const bodies = tags.pages.length === 0 ? [<div key="none">{head}<p>{say(classPaper, locale, 'noStudents')}</p></div>] : tags.pages.map((page, i) => (
    <div key={page[0]?.key} className="grid gap-2">
      {i === 0 ? head : <p className="font-head text-xl leading-none font-semibold">{say(classPaper, locale, 'tags')}, {tags.title}</p>}
      <ul className="grid sm:grid-cols-2 print:grid-cols-2">{page.map((tag) => <Tag key={tag.key} tag={tag} tags={tags} locale={locale} />)}</ul>
    </div>
  ))
  return (
    <PaperPages
      paper={paperFor(typeof paper === 'string' ? paper : undefined, viewer.units)} locale={locale} printedAt={tags.printedAt}
      pages={bodies.map((body, i) => ({ key: String(i), body }))}
    />
  )
}

function Tag({ tag, tags, locale }: { readonly tag: CouponTag; readonly tags: CouponTags; readonly locale: Locale }) {
  const told = (key: keyof typeof classPaper.en): string => say(classPaper, locale, key)
  return (
    <li className="flex h-[43mm] gap-2 overflow-hidden border border-dashed border-ink p-[2.5mm] leading-tight break-inside-avoid">
      <div className="flex min-w-0 flex-1 flex-col gap-1">
        <p className="truncate text-xl font-bold print:text-[13pt]">{tag.name}</p>
        <p className="text-base print:text-[10pt]">{tag.booth === null ? told('noBooth') : `${told('booth')} ${tag.booth}`} · {tags.className}</p>
        <p className="text-base font-bold print:text-[10pt]">{tags.title}</p>
        <p className="mt-auto flex gap-3 text-base print:text-[10pt]"><span className="flex-1 border-b border-ink">{told('number')}</span><span className="flex-1 border-b border-ink">{told('date')}</span></p>
      </div>
      <svg viewBox={`0 0 ${tags.qr.size} ${tags.qr.size}`} role="img" aria-label={`${told('scan')}: ${tags.address}`} className="h-[37mm] w-[37mm] shrink-0 self-center bg-white text-black" shapeRendering="crispEdges">
        <path d={tags.qr.path} fill="currentColor" />
      </svg>
    </li>
  )
}
