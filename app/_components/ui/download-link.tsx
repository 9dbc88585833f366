import { buttonLook } from './button-look'

/** A plain link that looks like a button: the router must not fetch a file as if it were a page. */
export function DownloadLink({ href, children }: { readonly href: string; readonly children: string }) {
  return <a href={href} download className={buttonLook('secondary', 'shop', false)}>{children}</a>
}
