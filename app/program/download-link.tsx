import { buttonLook } from '@/app/_components/ui/button-look'

/** A plain link: the router must not fetch a file as if it were a page. */
export function DownloadLink({ term, children }: { readonly term: string; readonly children: string }) {
  return <a href={`/api/exports/pass-rates?term=${encodeURIComponent(term)}`} download className={buttonLook('secondary', 'shop', false)}>{children}</a>
}
