/** A photo the server keeps, for whoever may see it. @throws when it does not come */
export async function photoOf(id: string): Promise<Blob> {
  const response = await fetch(`/api/photos/${id}`)
  if (!response.ok) throw new Error('The photo did not come.')
  return response.blob()
}
