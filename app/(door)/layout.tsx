import type { ReactNode } from 'react'
import { ProductMark } from '@/app/_components/ui/product-mark'

/** Outside the door: the name, and one form. */
export default function DoorLayout({ children }: { children: ReactNode }) {
  return (
    <main id="main" className="mx-auto grid min-h-dvh w-full max-w-xl content-center gap-6 px-4 py-10 sm:px-6">
      <ProductMark />
      {children}
    </main>
  )
}
